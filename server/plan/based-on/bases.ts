import { type Node, type NodeOf, reasonInWords, type SyntaxTree, t } from '../../../grammar/index.js';
import type { OwnLocation, PlanProblemCode, ReadFile } from '../plan.js';
import { inWords, locate, type Problems } from '../problems.js';
import { every, lastOf } from '../select.js';
import { type BasePlan, basePlan } from './base-plans.js';
import { pathFrom } from './paths.js';

/** A plan that builds on one that builds on another, and so on, this far. */
const MOST_BASES = 10;
/** Of all of them together. */
const MOST_CHARACTERS = 10_000_000;

/** What a plan builds on. */
export interface Bases {
  /** Where the plan says what it builds on: the file's name. */
  readonly location: OwnLocation;
  /** The nearest first. */
  readonly plans: readonly BasePlan[];
  /** Set while one of them is on its way, or where one can't be had, which has been told. */
  readonly lacking?: 'on its way' | 'not to be had';
}

/** The lines of a plan that one builds on, by its path from there. */
export function linesOfBase(bases: Bases | undefined, file: string | undefined): readonly string[] {
  return bases?.plans.find((base) => base.file === file)?.lines ?? [];
}

type BasedOn = Node & NodeOf<'based on'>;

/**
 * Reads the plans that a plan builds on, one by the next; nothing for a plan that builds on none. What can't be had is
 * one error, where the plan says `based on`.
 */
export function readBases(
  { nodes }: SyntaxTree,
  readFile: ReadFile | undefined,
  problems: Problems,
): Bases | undefined {
  const stated = lastOf(every(nodes, 'based on'), problems);
  if (!stated) return undefined;
  const { start, end } = stated.statement.file;
  const location = { line: stated.line, start, end };
  const plans: BasePlan[] = [];
  const refuse = (message: string, at: BasedOn, code: PlanProblemCode = 'unreadable file'): Bases => {
    const related =
      at === stated
        ? []
        : [{ location: locate(at, at.statement.file), message: t('This says what it is based on.') }];
    problems.error(code, message, location, { related });
    return { location, plans: [], lacking: 'not to be had' };
  };
  let characters = 0;
  let link: BasedOn | undefined = stated;
  while (link) {
    const heir = link.file;
    const file = pathFrom(heir, link.statement.file.value);
    const ring = plans.findIndex((plan) => plan.file === file);
    if (ring >= 0) {
      return refuse(ringWords(plans.slice(ring).map((plan) => plan.file)), link, 'circular reference');
    }
    if (plans.length === MOST_BASES) {
      return refuse(
        t(
          'This builds on more than {0} plans, one on the next. Let it begin nearer to the first.',
          MOST_BASES,
        ),
        link,
      );
    }
    const answer = readFile?.(file);
    if (!answer) return { location, plans: [], lacking: 'on its way' };
    const who = heir === undefined ? `\`${file}\`` : t('`{0}`, on which `{1}` is based,', file, heir);
    if (!answer.ok) {
      const reason = reasonInWords(answer.reason);
      return refuse(file === '' ? reason : `${t('{0} cannot be read.', who)} ${reason}`, link);
    }
    characters += answer.text.length;
    if (characters > MOST_CHARACTERS) {
      return refuse(
        t('The plans that this builds on are too long together: 10 million characters are the most.'),
        link,
      );
    }
    const plan = basePlan(file, answer.text);
    if (plan.nodes.length === 0 && plan.tree.problems.length > 0) {
      return refuse(t('{0} is no plan: not one line of it can be read as a statement.', who), link);
    }
    plans.push(plan);
    link = every(plan.nodes, 'based on').at(-1);
  }
  return { location, plans };
}

/** `a` on `b`, `b` on `c` and `c` on `a` again. */
function ringWords(files: readonly string[]): string {
  const [first = '', ...others] = files.map((file) => `\`${file}\``);
  if (others.length === 0)
    return t('{0} is based on itself. Let it begin without `based on`, or from another plan.', first);
  const steps = [...others, t('{0} again', first)].map((file, index) =>
    index === 0 ? t('{0} is based on {1}', first, file) : t('that on {0}', file),
  );
  return t('{0}: a ring without a beginning. Let one of them begin without `based on`.', inWords(steps));
}
