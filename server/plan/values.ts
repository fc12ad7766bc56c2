import type { Node, StatementOf } from '../../grammar/index.js';
import { nameKey, t } from '../../grammar/index.js';
import type { Budget, BudgetEntry, StepGroup, ValueScale } from './plan.js';
import { inWords, locate, plainNumber, type Problems } from './problems.js';
import { every, lastOf, single, statementLocation } from './select.js';
import { partOfWhole } from './shares.js';

const FEWEST_STEPS = 2;
const MOST_STEPS = 11;
const USUAL_STEPS = 5;
const USUAL_TOLERANCE = 0.05;

/** 70 : 20 : 10 by area: common practice, no source. */
const USUAL_COLOUR_BUDGET: readonly BudgetEntry[] = [
  { key: 'dominant', name: 'dominant', target: 0.7 },
  { key: 'complement', name: 'complement', target: 0.2 },
  { key: 'discord', name: 'discord', target: 0.1 },
];

const ROLES = ['dominant', 'complement', 'discord', 'neutral'];

/** The value scale, five steps in the groups dark, middle and light unless the plan says otherwise. */
export function resolveScale(nodes: readonly Node[], problems: Problems): ValueScale {
  const node = single(nodes, 'scale', problems);
  if (!node) return { steps: USUAL_STEPS, groups: usualGroups(USUAL_STEPS) };
  const steps = stepCount(node.statement, node, problems);
  const stated = statedGroups(node.children, steps, problems);
  const trend = single(node.children, 'planes', problems);
  return {
    steps,
    groups: stated.length > 0 ? stated : usualGroups(steps),
    location: statementLocation(node),
    ...(trend ? { trend: { value: trend.statement.trend.choice, location: statementLocation(trend) } } : {}),
  };
}

function stepCount(statement: StatementOf<'scale'>, node: Node, problems: Problems): number {
  const { value } = statement.steps;
  if (Number.isInteger(value) && value >= FEWEST_STEPS && value <= MOST_STEPS) return value;
  problems.error(
    'number out of range',
    t(
      'A value scale has {0} to {1} whole steps; {2} are taken instead.',
      FEWEST_STEPS,
      MOST_STEPS,
      USUAL_STEPS,
    ),
    locate(node, statement.steps),
  );
  return USUAL_STEPS;
}

/** Dark, middle and light: 1-2, 3 and 4-5 of five steps, else thirds of the scale; two steps have no middle. */
export function usualGroups(steps: number): readonly StepGroup[] {
  const outer = steps === USUAL_STEPS ? 2 : Math.round(steps / 3);
  const groups: readonly StepGroup[] = [
    { name: 'dark', key: 'dark', from: 1, to: outer },
    { name: 'middle', key: 'middle', from: outer + 1, to: steps - outer },
    { name: 'light', key: 'light', from: steps - outer + 1, to: steps },
  ];
  return groups.filter(({ from, to }) => from <= to);
}

function statedGroups(children: readonly Node[], steps: number, problems: Problems): readonly StepGroup[] {
  const groups: StepGroup[] = [];
  for (const node of every(children, 'group')) {
    for (const group of node.statement.groups) {
      const location = locate(node, group);
      const from = Math.min(group.from.value, group.to.value);
      const to = Math.max(group.from.value, group.to.value);
      if (!Number.isInteger(from) || !Number.isInteger(to) || from < 1 || to > steps) {
        problems.error(
          'number out of range',
          t(
            "The scale has steps 1 to {0}, so `{1}` can't take {2}.",
            steps,
            group.name.text,
            from === to ? plainNumber(from) : t('{0} to {1}', plainNumber(from), plainNumber(to)),
          ),
          location,
        );
        continue;
      }
      const key = nameKey(group.name.text);
      const namesake = groups.find((other) => other.key === key);
      if (namesake?.location) {
        problems.repeatedName('group', group.name.text, locate(node, group.name), namesake.location);
        continue;
      }
      const clash = groups.find((other) => from <= other.to && to >= other.from);
      if (clash) {
        problems.warn(
          'number out of range',
          t(
            '`{0}` shares a step with `{1}`; an area on that step counts in both.',
            group.name.text,
            clash.name,
          ),
          location,
        );
      }
      groups.push({ name: group.name.text, key, from, to, location });
    }
  }
  return groups;
}

export interface Budgets {
  readonly valueBudget?: Budget;
  readonly colourBudget?: Budget;
}

/** Both budgets; a colour budget of 70 : 20 : 10 is taken when colours have roles and none is stated. */
export function resolveBudgets(
  nodes: readonly Node[],
  scale: ValueScale,
  rolesInUse: boolean,
  problems: Problems,
): Budgets {
  const all = every(nodes, 'budget');
  const value = lastOf(
    all.filter(({ statement }) => statement.of.choice === 'value'),
    problems,
  );
  const colour = lastOf(
    all.filter(({ statement }) => statement.of.choice === 'colour'),
    problems,
  );
  const steps = Array.from({ length: scale.steps }, (_, index) => String(index + 1));
  const valueNames = [...scale.groups.map(({ name }) => name), ...steps];
  return {
    ...(value ? { valueBudget: budget(value, 'value', valueNames, groupKeys(nodes), problems) } : {}),
    ...(colour
      ? { colourBudget: budget(colour, 'colour', ROLES, new Set(), problems) }
      : rolesInUse
        ? { colourBudget: { shares: USUAL_COLOUR_BUDGET, tolerance: USUAL_TOLERANCE } }
        : {}),
  };
}

/** The keys of all groups in the text: one that has been refused is not unknown as well. */
function groupKeys(nodes: readonly Node[]): ReadonlySet<string> {
  const groups = every(nodes, 'scale').flatMap(({ children }) => every(children, 'group'));
  return new Set(groups.flatMap(({ statement }) => statement.groups.map(({ name }) => nameKey(name.text))));
}

function budget(
  node: { readonly line: number; readonly statement: StatementOf<'budget'> },
  of: 'value' | 'colour',
  known: readonly string[],
  refused: ReadonlySet<string>,
  problems: Problems,
): Budget {
  const shares: BudgetEntry[] = [];
  const keys = new Map(known.map((name) => [nameKey(name), name]));
  for (const share of node.statement.shares) {
    const location = locate(node, share);
    const key = nameKey(share.name.text);
    if (!keys.has(key)) {
      if (refused.has(key)) continue;
      problems.unknownName(
        of === 'value' ? 'value group or step' : 'colour role',
        share.name.text,
        known,
        locate(node, share.name),
      );
      continue;
    }
    if (shares.some((other) => other.key === key)) {
      problems.warn(
        'repeated name',
        t('`{0}` is in this budget twice; the first counts.', share.name.text),
        location,
      );
      continue;
    }
    const target = partOfWhole(share.share, node, problems);
    if (target !== undefined) shares.push({ key, name: keys.get(key) ?? share.name.text, target, location });
  }
  const total = shares.reduce((sum, { target }) => sum + target, 0);
  if (total > 1 + 1e-9) {
    problems.warn(
      'number out of range',
      t(
        '{0} add up to {1} %, more than the whole picture.',
        inWords(shares.map(({ name }) => name)),
        Math.round(total * 1000) / 10,
      ),
      statementLocation(node),
    );
  }
  const { within } = node.statement;
  return {
    shares,
    tolerance: (within && partOfWhole(within, node, problems)) ?? USUAL_TOLERANCE,
    location: statementLocation(node),
  };
}
