import { type Sentences, speaking, t } from '../../grammar/index.js';
import { comparedScenes } from '../drawing/comparison/scenes.js';
import { differenceInShort, wallCard } from '../drawing/wall/card.js';
import { comparePlans, noChangeInWords, sizesRemark } from '../findings/comparison/compare.js';
import type {
  CardParams,
  CardResult,
  CompareParams,
  ComparedPlans,
  NeededFiles,
} from './comparison-protocol.js';
import { errorCount, errorsSentence } from './errors.js';
import type { LanguageService } from './language-service.js';
import { resolvePath } from './paths.js';
import type { Snapshot } from './snapshot.js';

/**
 * What differs between two plans that need not be open.
 * @param goOn lets others have their turn, and says whether the answer is still wanted
 * @param language what the remarks are told in; what differs is told in English
 * @returns nothing once it is not
 */
export async function compareTwo(
  service: LanguageService,
  { earlier, later, view: shown }: CompareParams,
  goOn: () => Promise<boolean>,
  language?: Sentences,
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
  const { changes, frame } = comparison;
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
    // They tell the reader about the comparison and are no part of it.
    remarks: speaking(language, () => [
      ...(changes.length === 0 ? [noChangeInWords(earlier.text === later.text)] : []),
      ...(frame.isSameSize ? [] : [sizesRemark(before.snapshot.plan.canvas, now.snapshot.plan.canvas)]),
      ...errorRemark(t('The earlier plan'), before.snapshot),
      ...errorRemark(t('The later plan'), now.snapshot),
    ]),
  };
}

function widthOf({ plan: { canvas } }: Snapshot): number {
  return canvas.width * canvas.millimetresPerUnit;
}

function errorRemark(which: string, snapshot: Snapshot): readonly string[] {
  const errors = errorCount(snapshot);
  return errors === 0 ? [] : [errorsSentence(which, errors, 'not compared')];
}

/**
 * How a plan that need not be open hangs on the wall, and how it differs from the one that it builds on.
 * @param goOn as above
 * @param language what its words are told in, besides the picture
 */
export async function cardOf(
  service: LanguageService,
  { plan: asked, view: shown }: CardParams,
  folders: readonly string[],
  goOn: () => Promise<boolean>,
  language?: Sentences,
): Promise<CardResult | undefined> {
  const aside = await service.readAside(asked, goOn);
  if (aside === undefined || 'needs' in aside) return undefined;
  const { snapshot } = aside;
  const card = wallCard(snapshot, shown, errorCount(snapshot), language);
  const [nearest] = snapshot.plan.basedOn?.plans ?? [];
  const target = nearest && resolvePath(asked.uri, nearest.file, folders);
  if (nearest === undefined || target?.ok !== true) return { card };
  const base = await service.readAside({ uri: target.uri, text: nearest.text }, goOn);
  if (base === undefined || 'needs' in base) return undefined;
  const comparison = comparePlans(base.snapshot, snapshot);
  return { card, differs: speaking(language, () => differenceInShort(comparison)) };
}
