import type { BudgetMeasure } from '../../measure/measures.js';
import { totalShare } from '../../measure/objects/objects.js';
import { stepValue } from '../../plan/colour/value.js';
import { greyOf, hexOf } from '../picture/ink.js';
import type { Severity } from '../../findings/finding.js';
import { type Reading, oncePerReading } from '../views/reading.js';
import type { BudgetBars } from '../scene.js';
import { type Tone, addedUp, tonesOf } from './tones.js';
import { capitalised } from '../../plan/problems.js';

/** The finding that says a share is out of its budget. */
export interface OffBudget {
  readonly severity: Severity;
  readonly message: string;
  readonly subject: string;
}

/** One row of bars: what is measured, in which colours, and what was wanted where the plan says so. */
export interface BarRow {
  readonly key: string;
  readonly name: string;
  readonly share: number;
  /** What the share is made of, largest first; their shares add up to no more than it. */
  readonly parts: readonly Tone[];
  readonly wanted?: {
    readonly target: number;
    readonly tolerance: number;
    readonly within: boolean;
    readonly off?: OffBudget;
  };
}

/** The entries of the value budget, or the groups of the scale when the plan budgets none. */
export const valueRows = oncePerReading(findValueRows);

function findValueRows(reading: Reading): readonly BarRow[] {
  const { plan, measures } = reading;
  const { steps, groups, budget } = measures.values;
  const parts = (from: number, to: number) =>
    steps
      .filter(({ step, share }) => step >= from && step <= to && share > 0)
      .map(({ step, share }) => ({ hex: hexOf(greyOf(stepValue(step, plan.scale.steps))), share }))
      .sort((a, b) => b.share - a.share);
  if (budget.length === 0) {
    return groups.map(({ key, name, share, from, to }) => ({ key, name, share, parts: parts(from, to) }));
  }
  return budget.map((entry) => {
    const group = groups.find(({ key }) => key === entry.key);
    const step = Number(entry.key);
    const name = group === undefined ? `step ${entry.name}` : entry.name;
    return {
      ...budgetRow(entry, 'value', reading),
      name,
      parts: parts(group?.from ?? step, group?.to ?? step),
    };
  });
}

/** The entries of the colour budget, or the roles in use when the plan budgets none. */
export const colourRows = oncePerReading(findColourRows);

function findColourRows(reading: Reading): readonly BarRow[] {
  const { plan, measures } = reading;
  const { roles, budget } = measures.colours;
  const partsOf = (key: string) => {
    const role = roles.find((each) => each.role === key);
    const objects = role?.objects ?? [];
    const painted = tonesOf(objects, plan);
    const { ground } = plan.canvas;
    if (ground.role !== key) return painted;
    const bare = Math.max(0, (role?.share ?? 0) - totalShare(objects));
    return addedUp([...painted, { hex: hexOf(ground.colour), share: bare }]);
  };
  if (budget.length === 0) {
    return roles
      .filter(({ share }) => share > 0)
      .map(({ role, share }) => ({ key: role, name: role, share, parts: partsOf(role) }));
  }
  return budget.map((entry) => ({ ...budgetRow(entry, 'colour', reading), parts: partsOf(entry.key) }));
}

/** The budgets as data, the same figures as the bars. */
export function budgetBars(reading: Reading): readonly BudgetBars[] {
  const of = (
    kind: BudgetBars['of'],
    rows: readonly BarRow[],
    tolerance: number | undefined,
  ): BudgetBars[] => {
    const bars = rows.flatMap(({ key, name, share, parts, wanted }) =>
      wanted === undefined
        ? []
        : [
            {
              key,
              name,
              share,
              target: wanted.target,
              within: wanted.within,
              swatches: parts.map(({ hex }) => hex),
            },
          ],
    );
    return bars.length === 0 || tolerance === undefined ? [] : [{ of: kind, tolerance, bars }];
  };
  return [
    ...of('value', valueRows(reading), reading.plan.valueBudget?.tolerance),
    ...of('colour', colourRows(reading), reading.plan.colourBudget?.tolerance),
  ];
}

/** The rules whose findings the bars show themselves, at the share concerned. */
export const budgetRules: Readonly<Record<BudgetBars['of'], readonly string[]>> = {
  value: ['value budget'],
  colour: ['colour budget', 'usual colour shares'],
};

function budgetRow(entry: BudgetMeasure, of: BudgetBars['of'], reading: Reading): Omit<BarRow, 'parts'> {
  const { key, name, share, target, tolerance, within } = entry;
  const off = within ? undefined : offBudget(entry, of, reading);
  const wanted = { target, tolerance, within, ...(off === undefined ? {} : { off }) };
  return { key, name: capitalised(name), share, wanted };
}

/** None when the painter has set the rule aside. */
function offBudget(
  { location }: BudgetMeasure,
  of: BudgetBars['of'],
  { findings, subjects }: Reading,
): OffBudget | undefined {
  const index = findings.findIndex(
    ({ rule, location: at }) =>
      budgetRules[of].includes(rule) &&
      (location === undefined || (at.line === location.line && at.start === location.start)),
  );
  const finding = findings[index];
  const subject = subjects.findings[index];
  if (finding === undefined || subject === undefined) return undefined;
  return { severity: finding.severity, message: finding.message, subject };
}
