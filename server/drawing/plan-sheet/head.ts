import { type Block, EMPTY_BLOCK, stacked } from '../captions/block.js';
import { conceptBlock } from '../captions/concept.js';
import { canvasLine, lines } from '../captions/title.js';
import { planTitle } from '../captions/words.js';
import { textMark } from '../marks.js';
import type { Reading } from '../views/reading.js';

/** Title, canvas, painter and what the picture is about. */
export function headBlock({ plan, layout }: Reading, width: number): Block {
  const { em } = layout;
  const title = lines(
    'title',
    planTitle(plan),
    2,
    { size: 2.3 * em, leading: 2.7 * em, width },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink' }),
  );
  const due = plan.due === undefined ? '' : `. Due ${plan.due.value}`;
  const canvas = lines(
    'canvas',
    `${canvasLine(plan)}${due}`,
    2,
    { size: 0.95 * em, leading: 1.4 * em, width },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'quiet' }),
  );
  const concept =
    plan.concept === undefined
      ? EMPTY_BLOCK
      : lines(
          'concept',
          plan.concept.value,
          3,
          { size: 1.25 * em, leading: 1.75 * em, width },
          (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink' }),
        );
  return stacked([title, canvas, concept], 0.5 * em);
}

/** Mood, cues and what to avoid. */
export function feelingBlock(reading: Reading, width: number): Block {
  const { layout } = reading;
  return conceptBlock({ ...reading, layout: { ...layout, column: { ...layout.column, width } } });
}
