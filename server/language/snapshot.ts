import { parse as parseText, type Sentences, speaking, type SyntaxTree } from '../../grammar/index.js';
import { check } from '../findings/check.js';
import type { Finding } from '../findings/finding.js';
import type { Reading } from '../findings/fix-trial.js';
import type { RuleSettings } from '../findings/settings.js';
import { measure } from '../measure/measure.js';
import type { Measures } from '../measure/measures.js';
import { type Memory, once } from '../measure/memory.js';
import type { Mixer } from '../measure/mixing/mixer.js';
import type { Photographs } from '../measure/photograph/photographs.js';
import { keptWordless } from '../measure/wordless.js';
import type { OutlineCache } from '../plan/outline-cache.js';
import type { Plan, ReadFile } from '../plan/plan.js';
import { resolvePlan } from '../plan/resolve.js';
import { namesOf, type Names } from './names.js';
import { gravestFirst } from './telling-order.js';
import { linesOf } from './text.js';

/**
 * A document at one version, with all that follows from its text. Each part is computed when it is first asked
 * for, and once. A part may throw when there is a fault in the computation; the parts before it still stand.
 */
export interface Snapshot {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
  readonly lines: readonly string[];
  readonly tree: SyntaxTree;
  readonly names: Names;
  readonly plan: Plan;
  readonly measures: Measures;
  /** In the order in which they are told, those set aside included. */
  readonly findings: readonly Finding[];
  /** The same for what leaves the editor: drawings, sheets and comparisons are English in all they say. */
  readonly findingsInEnglish: readonly Finding[];
  /** What problems and findings are told in, besides English. */
  readonly language: Sentences | undefined;
  /** The files beside the plan, as far as they are known. */
  readonly readFile: ReadFile;
  /** Another text in this one's place, which is only tried: what is kept of the document stays as it is. */
  readonly readInstead: (text: string) => TriedReading;
}

/** What follows from a text that is only tried; measures and findings are worked out when they are first asked for. */
export interface TriedReading extends Reading {
  readonly measures: Measures;
}

export interface SnapshotSource {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
  readonly parse: () => SyntaxTree;
  /** A reader for one computation of the plan. */
  readonly reader: () => ReadFile;
  /** Kept from snapshot to snapshot of a document. */
  readonly outlines: OutlineCache;
  readonly memory: Memory;
  /** Finds mixtures, at once or beside the typing; what it knows is kept from snapshot to snapshot too. */
  readonly mixer: Mixer;
  /** The pictures beside the plan, as far as they are known; without it they stay on their way. */
  readonly photographs?: Photographs & { readonly aside?: Photographs };
  /** What is set of rules outside of the plan. */
  readonly ruleSettings?: RuleSettings;
  /** What problems and findings are told in, besides English. */
  readonly language?: Sentences;
}

/** A snapshot of which nothing has been computed yet. */
export function takeSnapshot({
  uri,
  version,
  text,
  parse,
  reader,
  outlines,
  memory,
  mixer,
  photographs,
  ruleSettings,
  language,
}: SnapshotSource): Snapshot {
  const lines = once(() => linesOf(text));
  const tree = once(() => speaking(language, parse));
  const names = once(() => namesOf(tree()));
  const readFile = once(reader);
  const plan = once(() => speaking(language, () => resolvePlan(tree(), { readFile: readFile(), outlines })));
  const measures = once(() => measure(plan(), memory, mixer, photographs));
  const findingsIn = (spoken: Sentences | undefined): readonly Finding[] => {
    const inputs = [measures(), keptWordless(plan(), memory), ruleSettings, spoken];
    return memory.recall('findings', spoken === undefined ? 'in English' : '', inputs, () =>
      gravestFirst(speaking(spoken, () => check(plan(), measures(), ruleSettings))),
    );
  };
  const findings = once(() => findingsIn(language));
  const findingsInEnglish = once(() => findingsIn(undefined));
  const readInstead = (other: string): TriedReading => {
    const otherTree = speaking(language, () => parseText(other, tree()));
    const otherPlan = speaking(language, () =>
      resolvePlan(otherTree, { readFile: readFile(), outlines: outlines.aside() }),
    );
    const otherMeasures = once(() =>
      measure(otherPlan, memory.aside(), mixer.aside(), photographs?.aside ?? photographs),
    );
    const otherFindings = once(() =>
      speaking(language, () => check(otherPlan, otherMeasures(), ruleSettings)),
    );
    return {
      tree: otherTree,
      plan: otherPlan,
      get measures() {
        return otherMeasures();
      },
      get findings() {
        return otherFindings();
      },
    };
  };
  return {
    uri,
    version,
    text,
    get lines() {
      return lines();
    },
    get tree() {
      return tree();
    },
    get names() {
      return names();
    },
    get plan() {
      return plan();
    },
    get measures() {
      return measures();
    },
    get findings() {
      return findings();
    },
    get findingsInEnglish() {
      return findingsInEnglish();
    },
    language,
    get readFile() {
      return readFile();
    },
    readInstead,
  };
}
