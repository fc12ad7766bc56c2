import { DiagnosticSeverity, DiagnosticTag, type Diagnostic } from 'vscode-languageserver-types';
import { type Problem, speaking, t } from '../../grammar/index.js';
import { NEEDLESS_EXCEPTION } from '../findings/check.js';
import type { Finding } from '../findings/finding.js';
import type { OwnLocation, PlanProblem } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { findingPage, slugOf } from './reference.js';
import type { Snapshot } from './snapshot.js';
import { uriBeside } from './paths.js';
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

/**
 * Gravest first, as `gravestFirst` tells it: of one severity what is wrong with the text, in its order, before the
 * findings.
 */
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
  const { code, message } = problem;
  return {
    ...diagnostic(problem.location, code, problem.severity, message, abilities),
    ...relatedPlaces(problem, uri, abilities),
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
    ...relatedPlaces(finding, uri, abilities),
    ...(finding.rule === NEEDLESS_EXCEPTION ? faded(abilities) : {}),
  };
}

function diagnostic(
  location: OwnLocation,
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
  { from, related }: Pick<Finding, 'from' | 'related'>,
  uri: string,
  abilities: Abilities,
): Pick<Diagnostic, 'relatedInformation'> {
  const isLedTo = related.some(
    ({ location }) => from?.file === location.file && from?.line === location.line,
  );
  const places = [
    ...(from && !isLedTo
      ? [{ location: from, message: speaking(abilities.language, () => t('It stands here.')) }]
      : []),
    ...related,
  ];
  if (!abilities.relatedPlaces || places.length === 0) return {};
  return {
    relatedInformation: places.map(({ location: { file, ...place }, message }) => ({
      location: { uri: file === undefined ? uri : uriBeside(uri, file), range: rangeOf(place) },
      message,
    })),
  };
}
