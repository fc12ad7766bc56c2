import { t } from '../../../grammar/index.js';
import type { OwnLocation, PlanProblem } from '../plan.js';
import type { FoundProblem } from '../problems.js';
import type { Bases } from './bases.js';
import { isOwn, withOrigin } from './here.js';

/** So many places of errors in another plan are led to. */
const MOST_RELATED = 20;

/**
 * The problems of a plan with what it builds on, each at a place of its own text. The errors in the text of a base are
 * one error where the plan names it; of its warnings only those that can be the plan's own doing are told here.
 */
export function toldHere(found: readonly FoundProblem[], bases: Bases | undefined): readonly PlanProblem[] {
  const own = found.flatMap((problem): readonly PlanProblem[] =>
    isOwn(problem.location) ? [{ ...problem, location: problem.location }] : [],
  );
  if (!bases) return own;
  const { location, plans } = bases;
  const faults = plans.flatMap(({ file, tree }) => {
    const errors = [
      ...tree.problems.map(({ line, start, end, message }) => ({
        location: { line, start, end, file },
        message,
      })),
      ...found.filter((problem) => problem.severity === 'error' && problem.location.file === file),
    ].sort((a, b) => a.location.line - b.location.line || a.location.start - b.location.start);
    const [first] = errors;
    return first ? [faultsOf(file, first, errors, location)] : [];
  });
  const warnings = found.flatMap((problem): readonly PlanProblem[] =>
    problem.severity === 'warning' && problem.code !== 'repeated statement' && !isOwn(problem.location)
      ? [fromBase(problem, location)]
      : [],
  );
  return [...faults, ...warnings, ...own];
}

type Fault = Pick<FoundProblem, 'location' | 'message'>;

function faultsOf(file: string, first: Fault, all: readonly Fault[], location: OwnLocation): PlanProblem {
  const line = first.location.line + 1;
  return {
    code: 'error in another plan',
    severity: 'error',
    message:
      all.length === 1
        ? t('`{0}`, on which this builds, has an error on line {1}: {2}', file, line, first.message)
        : t(
            '`{0}`, on which this builds, has {1} errors, the first on line {2}: {3}',
            file,
            all.length,
            line,
            first.message,
          ),
    location,
    from: first.location,
    related: all
      .slice(0, MOST_RELATED)
      .map((fault) => ({ location: fault.location, message: fault.message })),
  };
}

function fromBase(
  { code, severity, message, location: from, related }: FoundProblem,
  location: OwnLocation,
): PlanProblem {
  return { code, severity, message: withOrigin(message, from), location, from, related };
}
