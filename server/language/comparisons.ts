import * as v from 'valibot';
import type { Connection, RequestType } from 'vscode-languageserver';
import { comparedScenes } from '../drawing/comparison/scenes.js';
import { comparedViews } from '../drawing/scene.js';
import { differenceInShort, wallCard } from '../drawing/wall/card.js';
import { comparePlans, noChangeInWords } from '../findings/comparison/compare.js';
import { answeringOn } from './answering.js';
import {
  cardRequest,
  type CardParams,
  type CardResult,
  compareRequest,
  type CompareParams,
  type ComparedPlans,
  type NeededFiles,
} from './comparison-protocol.js';
import { errorCount, errorsSentence } from './errors.js';
import type { Form } from './forms.js';
import { cancelled, type Guard, type Session } from './guard.js';
import { resolvePath } from './paths.js';
import { fileSizeLimitBytes } from './protocol.js';
import type { Snapshot } from './snapshot.js';
import { aTurn } from './turns.js';

const text = v.pipe(v.string(), v.maxLength(fileSizeLimitBytes));
const file = v.variant('ok', [
  v.object({ ok: v.literal(true), text }),
  v.object({ ok: v.literal(false), reason: v.pipe(v.string(), v.maxLength(10_000)) }),
]);
const planText = v.object({
  uri: v.string(),
  text,
  files: v.optional(v.pipe(v.record(v.string(), file), v.maxEntries(200))),
});
const view = v.picklist(comparedViews);
const ofComparison = v.object({ earlier: planText, later: planText, view });
const ofCard = v.object({ plan: planText, view });

/** Answers what is asked about plans that need not be open: what differs between two, and how one hangs on the wall. */
export function answerComparisons(
  connection: Connection,
  guard: Guard,
  folders: () => readonly string[],
): void {
  const { answerLater } = answeringOn(connection, guard);
  const answer = <P, R>(
    type: RequestType<P, R | null, void>,
    form: Form,
    feature: (session: Session, params: P, goOn: () => Promise<boolean>) => Promise<R | undefined>,
  ): void =>
    answerLater(type, form, null, async (session, params, lost) => {
      const goOn = async (): Promise<boolean> => {
        await aTurn();
        return lost() === undefined;
      };
      return (await feature(session, params, goOn)) ?? cancelled();
    });

  answer(compareRequest, ofComparison, compareTwo);
  answer(cardRequest, ofCard, (session, params, goOn) => cardOf(session, params, folders(), goOn));
}

async function compareTwo(
  { service }: Session,
  { earlier, later, view: shown }: CompareParams,
  goOn: () => Promise<boolean>,
): Promise<ComparedPlans | NeededFiles | undefined> {
  const before = await service.readAside(earlier, goOn);
  const now = await service.readAside(later, goOn);
  if (before === undefined || now === undefined) return undefined;
  if ('needs' in before || 'needs' in now) {
    const needs = (aside: typeof before) => ('needs' in aside ? aside.needs : []);
    return { needs: { earlier: needs(before), later: needs(now) } };
  }
  const comparison = comparePlans(before.snapshot, now.snapshot);
  const scenes = comparedScenes(comparison, shown);
  const { changes, remark } = comparison;
  return {
    earlier: { scene: scenes.earlier, widthMillimetres: widthOf(before.snapshot) },
    later: { scene: scenes.later, widthMillimetres: widthOf(now.snapshot) },
    changes: changes.map(({ topic, kind, message, earlier: was, later: is }) => ({
      topic,
      kind,
      message,
      ...(was ? { earlier: was } : {}),
      ...(is ? { later: is } : {}),
    })),
    remarks: [
      ...(changes.length === 0 ? [noChangeInWords(earlier.text === later.text)] : []),
      ...(remark === undefined ? [] : [remark]),
      ...errorRemark('The earlier plan', before.snapshot),
      ...errorRemark('The later plan', now.snapshot),
    ],
  };
}

function widthOf({ plan: { canvas } }: Snapshot): number {
  return canvas.width * canvas.millimetresPerUnit;
}

function errorRemark(which: string, snapshot: Snapshot): readonly string[] {
  const errors = errorCount(snapshot);
  return errors === 0 ? [] : [errorsSentence(which, errors, 'not compared')];
}

async function cardOf(
  { service }: Session,
  { plan: asked, view: shown }: CardParams,
  folders: readonly string[],
  goOn: () => Promise<boolean>,
): Promise<CardResult | undefined> {
  const aside = await service.readAside(asked, goOn);
  if (aside === undefined || 'needs' in aside) return undefined;
  const { snapshot } = aside;
  const card = wallCard(snapshot, shown, errorCount(snapshot));
  const [nearest] = snapshot.plan.basedOn?.plans ?? [];
  const target = nearest && resolvePath(asked.uri, nearest.file, folders);
  if (nearest === undefined || target?.ok !== true) return { card };
  const base = await service.readAside({ uri: target.uri, text: nearest.text }, goOn);
  if (base === undefined || 'needs' in base) return undefined;
  return { card, differs: differenceInShort(comparePlans(base.snapshot, snapshot)) };
}
