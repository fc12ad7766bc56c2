import type { Cue, Plan } from '../../plan/plan.js';
import { type Block, EMPTY_BLOCK, stacked } from './block.js';
import { textMark } from '../marks.js';
import { lines } from './title.js';
import { listed } from './words.js';

/** More than this of a kind would push the drawing off its sheet. */
const MOST_CUES = 6;
const MOST_LINES = 3;

/** What the picture is to feel like: its mood, the cues that tell its story with what carries them, what to avoid. */
export function conceptBlock(plan: Plan, width: number, em: number): Block {
  const { mood, cues, avoids } = plan;
  const paragraphs = [
    ...(mood === undefined ? [] : [{ key: 'mood', text: `Mood: ${mood.value}` }]),
    ...cues.slice(0, MOST_CUES).map((cue, index) => ({ key: `cue:${index}`, text: cueLine(cue, plan) })),
    ...(cues.length > MOST_CUES
      ? [{ key: 'cue:more', text: `and ${cues.length - MOST_CUES} more cues` }]
      : []),
    ...(avoids.length === 0
      ? []
      : [{ key: 'avoid', text: `To avoid: ${avoids.map(({ value }) => value).join('; ')}` }]),
  ];
  if (paragraphs.length === 0) return EMPTY_BLOCK;
  return stacked(
    paragraphs.map(({ key, text }) =>
      lines(key, text, MOST_LINES, { size: 0.86 * em, leading: 1.25 * em, width }, (id, line, x, y, size) =>
        textMark(id, line, x, y, { size, ink: 'quiet' }),
      ),
    ),
    0.12 * em,
  );
}

/** `“the smell of rain”, carried by cloud and puddle` */
export function cueLine({ value, carriedBy }: Cue, { objects }: Plan): string {
  const carriers = carriedBy.flatMap((index) => objects[index]?.name ?? []);
  return `“${value}”, ${carriers.length === 0 ? 'which nothing carries yet' : `carried by ${listed(carriers)}`}`;
}
