import { t } from '../../../grammar/index.js';
import { percent } from '../../findings/words/words.js';
import { isOnLine } from '../../plan/based-on/here.js';
import type { Cue, Plan } from '../../plan/plan.js';
import { inWords, capitalised } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, prose } from './paragraphs.js';

/** What the picture is about, on one page: concept, mood, the cues with what carries them, and what to avoid. */
export function conceptFigures(snapshot: Snapshot, style: Style): Paragraphs {
  const { concept, mood, cues, avoids } = snapshot.plan;
  return [
    ...(concept === undefined ? [] : [style.text(concept.value)]),
    ...(mood === undefined ? [] : [`${style.strong(t('Mood'))} ${style.text(mood.value)}`]),
    ...(cues.length === 0
      ? []
      : [
          style.list(
            cues.map((cue) => `${style.text(t('“{0}”', cue.value))} ${prose(carried(snapshot, cue), style)}`),
          ),
        ]),
    ...(avoids.length === 0
      ? []
      : [`${style.strong(t('Not'))} ${style.text(avoids.map(({ value }) => value).join('; '))}`]),
  ];
}

/** What carries the cue of a line, with how much of it is seen. */
export function cueFigures(snapshot: Snapshot, line: number, style: Style): Paragraphs {
  const cue = snapshot.plan.cues.find(({ location }) => isOnLine(location, line));
  if (cue === undefined) return [];
  return [prose(`${capitalised(carried(snapshot, cue))}.`, style)];
}

function carried({ plan, measures }: Snapshot, { carriedBy }: Cue): string {
  if (carriedBy.length === 0) return t('nothing carries it yet');
  return t(
    'carried by {0}',
    inWords(carriedBy.map((object) => seenShare(plan, object, measures.objects[object]?.share ?? 0))),
  );
}

function seenShare(plan: Plan, object: number, share: number): string {
  const name = `\`${plan.objects[object]?.name ?? ''}\``;
  return share > 0 ? `${name} (${percent(share)})` : t('{0}, of which nothing is seen', name);
}
