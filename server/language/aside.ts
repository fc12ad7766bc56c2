import { marked, parse } from '../../grammar/index.js';
import type { RuleSettings } from '../findings/settings.js';
import { Memory } from '../measure/memory.js';
import { Mixer, type MixingStore } from '../measure/mixing/mixer.js';
import { OutlineCache } from '../plan/outline-cache.js';
import type { FileAnswer } from '../plan/plan.js';
import type { PlanText } from './comparison-protocol.js';
import { filesPerPlan, tooManyFiles } from './files.js';
import { resolvePath, usualSpelling } from './paths.js';
import { type Snapshot, takeSnapshot } from './snapshot.js';

/** What a plan that is looked at beside the open ones is read with. */
export interface AsideHost {
  readonly fetch: (uri: string, planUri: string) => Promise<FileAnswer>;
  /** The text of a document that is open goes before what is on the disk. */
  readonly openText: (uri: string) => string | undefined;
  readonly folders: () => readonly string[];
  readonly ruleSettings: () => RuleSettings | undefined;
  readonly store: MixingStore;
}

/**
 * A plan that is not kept; or the paths of files that have to be given with it, or nothing when it is wanted no more.
 */
export type Aside = { readonly snapshot: Snapshot } | { readonly needs: readonly string[] } | undefined;

/** A file may name files, and those others: as far as plans build on each other. */
const MOST_ROUNDS = 12;

/**
 * Reads, measures and checks a plan beside the open ones, with the files it names and its mixtures. It is told in
 * English, as comparisons and cards are, which it is read for.
 * @param goOn lets other work come between; false when the answer is wanted no more
 */
export async function readAside(
  { uri, text, files }: PlanText,
  host: AsideHost,
  goOn: () => Promise<boolean>,
): Promise<Aside> {
  const known = new Map<string, FileAnswer>(Object.entries(files ?? {}));
  const tree = parse(text);
  const kept = { outlines: new OutlineCache(), memory: new Memory(), mixer: Mixer.patient(host.store) };
  const ruleSettings = host.ruleSettings();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const missing = new Set<string>();
    const take = (): Snapshot =>
      takeSnapshot({
        uri,
        version: 0,
        text,
        parse: () => tree,
        reader: () => (path) => {
          const answer = known.get(path);
          if (answer === undefined) missing.add(path);
          return answer;
        },
        ...kept,
        ...(ruleSettings ? { ruleSettings } : {}),
      });
    const snapshot = take();
    // Working out the plan asks for the files that it names.
    void snapshot.plan;
    if (missing.size === 0) return mixed(snapshot, take, kept.mixer, goOn);
    if (files !== undefined) return { needs: [...missing] };
    for (const path of missing)
      known.set(path, known.size < filesPerPlan ? await answerFor(path, uri, host) : tooManyFiles);
    if (!(await goOn())) return undefined;
  }
  return undefined;
}

async function answerFor(path: string, planUri: string, host: AsideHost): Promise<FileAnswer> {
  const target = resolvePath(planUri, path, host.folders());
  if (!target.ok) return target;
  const open = host.openText(usualSpelling(target.uri));
  if (open !== undefined) return { ok: true, text: open };
  try {
    return await host.fetch(target.uri, planUri);
  } catch {
    return { ok: false, reason: marked('This file could not be read.') };
  }
}

/** The plan with its mixtures, a piece a turn. */
async function mixed(
  snapshot: Snapshot,
  take: () => Snapshot,
  mixer: Mixer,
  goOn: () => Promise<boolean>,
): Promise<Aside> {
  if (snapshot.plan.palette === undefined || snapshot.measures.palette === undefined || !mixer.hasWork)
    return { snapshot };
  do if (!(await goOn())) return undefined;
  while (mixer.step());
  return { snapshot: take() };
}
