import { DiagnosticSeverity, DiagnosticTag, type Diagnostic } from 'vscode-languageserver-types';
import type { Problem } from '../../grammar/index.js';
import { NEEDLESS_EXCEPTION } from '../findings/check.js';
import type { Finding } from '../findings/finding.js';
import type { Location, PlanProblem } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { findingPage, slugOf } from './reference.js';
import type { Snapshot } from './snapshot.js';
import { rangeOf } from './text.js';

const diagnosticSource = 'mahlstick';

/** What the text of the plan gets wrong, line by line. */
export function syntaxDiagnostics(snapshot: Snapshot, abilities: Abilities): readonly Diagnostic[] {
  return snapshot.tree.problems.map((problem) => syntaxDiagnostic(problem, abilities));
}

/** What could not be resolved: names, colours, files, numbers. */
export function planDiagnostics(snapshot: Snapshot, abilities: Abilities): readonly Diagnostic[] {
  return snapshot.plan.problems.map((problem) => planDiagnostic(problem, snapshot.uri, abilities));
}

/** Where the plan breaks its intentions and the rules of thumb, without what it sets aside. */
export function findingDiagnostics(snapshot: Snapshot, abilities: Abilities): readonly Diagnostic[] {
  return snapshot.findings
    .filter(({ allowed }) => allowed === undefined)
    .map((finding) => findingDiagnostic(finding, snapshot.uri, abilities));
}

/** Gravest first, as `gravestFirst` tells it: of one severity what is wrong with the text, in its order, before the findings. */
export function inTellingOrder(
  problems: readonly Diagnostic[],
  findings: readonly Diagnostic[],
): readonly Diagnostic[] {
  const inText = [...problems].sort(
    ({ range: { start: a } }, { range: { start: b } }) => a.line - b.line || a.character - b.character,
  );
  const rank = ({ severity = DiagnosticSeverity.Error }: Diagnostic) => severity;
  return [...inText, ...findings].sort((a, b) => rank(a) - rank(b));
}

/** One thing that the text gets wrong, as an editor shows it. */
export function syntaxDiagnostic(problem: Problem, abilities: Abilities): Diagnostic {
  return diagnostic(problem, problem.code, 'error', problem.message, abilities);
}

/** One thing that could not be resolved, as an editor shows it. */
export function planDiagnostic(problem: PlanProblem, uri: string, abilities: Abilities): Diagnostic {
  const { code, message, related } = problem;
  return {
    ...diagnostic(problem.location, code, problem.severity, message, abilities),
    // A hint of the plan asks nothing of the painter, unlike a hint of the trade.
    ...(code === 'not computed yet' ? { severity: DiagnosticSeverity.Hint } : {}),
    ...relatedPlaces(related, uri, abilities),
    ...(code === 'repeated statement' && abilities.fadedDiagnostics
      ? { tags: [DiagnosticTag.Unnecessary] }
      : {}),
  };
}

/** One finding with what to try, as an editor shows it. */
export function findingDiagnostic(finding: Finding, uri: string, abilities: Abilities): Diagnostic {
  const message = finding.advice === undefined ? finding.message : `${finding.message} ${finding.advice}`;
  return {
    ...diagnostic(finding.location, finding.rule, finding.severity, message, abilities),
    ...relatedPlaces(finding.related, uri, abilities),
    ...(finding.rule === NEEDLESS_EXCEPTION ? faded(abilities) : {}),
  };
}

function diagnostic(
  location: Location,
  code: string,
  severity: Finding['severity'],
  message: string,
  abilities: Abilities,
): Diagnostic {
  return {
    range: rangeOf(location),
    severity: severities[severity],
    source: diagnosticSource,
    code: slugOf(code),
    message,
    ...linkTo(code, abilities),
  };
}

function linkTo(
  code: string,
  { diagnosticLinks, reference }: Abilities,
): Pick<Diagnostic, 'codeDescription'> {
  const href = diagnosticLinks ? findingPage(reference, code) : undefined;
  return href === undefined ? {} : { codeDescription: { href } };
}

/** What counts for nothing is shown as such. */
function faded(abilities: Abilities): Pick<Diagnostic, 'tags'> {
  return abilities.fadedDiagnostics ? { tags: [DiagnosticTag.Unnecessary] } : {};
}

const severities: Readonly<Record<Finding['severity'], DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  hint: DiagnosticSeverity.Information,
};

function relatedPlaces(
  related: Finding['related'],
  uri: string,
  abilities: Abilities,
): Pick<Diagnostic, 'relatedInformation'> {
  if (!abilities.relatedPlaces || related.length === 0) return {};
  return {
    relatedInformation: related.map(({ location, message }) => ({
      location: { uri, range: rangeOf(location) },
      message,
    })),
  };
}
