import type { Measures } from '../../measure/measures.js';
import type { Cue, Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Reading } from '../views/reading.js';
import { type Block, EMPTY_BLOCK, stacked } from './block.js';
import { textMark } from '../marks.js';
import { lines } from './title.js';
import { andMore } from './words.js';

/** More than this of a kind would push the drawing off its sheet. */
const MOST_CUES = 6;
const MOST_LINES = 3;

/** What the picture is to feel like: its mood, the cues that tell its story with what carries them, what to avoid. */
export function conceptBlock({
  plan,
  measures,
  layout,
}: Pick<Reading, 'plan' | 'measures' | 'layout'>): Block {
  const { em, column } = layout;
  const { mood, cues, avoids } = plan;
  const paragraphs = [
    ...(mood === undefined ? [] : [{ key: 'mood', text: `Mood: ${mood.value}` }]),
    ...cues
      .slice(0, MOST_CUES)
      .map((cue, index) => ({ key: `cue:${index}`, text: cueLine(cue, plan, measures) })),
    ...(cues.length > MOST_CUES
      ? [{ key: 'cue:more', text: andMore(cues.length - MOST_CUES, 'cue', 'cues') }]
      : []),
    ...(avoids.length === 0
      ? []
      : [{ key: 'avoid', text: `To avoid: ${avoids.map(({ value }) => value).join('; ')}` }]),
  ];
  if (paragraphs.length === 0) return EMPTY_BLOCK;
  return stacked(
    paragraphs.map(({ key, text }) =>
      lines(
        key,
        text,
        MOST_LINES,
        { size: 0.86 * em, leading: 1.25 * em, width: column.width },
        (id, line, x, y, size) => textMark(id, line, x, y, { size, ink: 'quiet' }),
      ),
    ),
    0.12 * em,
  );
}

/** `“the smell of rain”, carried by cloud and puddle` */
function cueLine({ value, carriedBy }: Cue, { objects }: Plan, measures: Measures): string {
  if (carriedBy.length === 0) return `“${value}”, which nothing carries yet`;
  const carriers = carriedBy.flatMap((index) => objects[index]?.name ?? []);
  const isSeen = carriedBy.some((index) => (measures.objects[index]?.share ?? 0) > 0);
  return `“${value}”, carried by ${inWords(carriers)}${isSeen ? '' : ', of which nothing is seen'}`;
}
