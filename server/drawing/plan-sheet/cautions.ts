import { type Caution, CAUTION_FIRST, cautionsOf } from '../../plan/materials/cautions.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, inWords } from '../../plan/problems.js';
import type { Block } from '../captions/block.js';
import { BOLD_WIDTH } from '../captions/text-width.js';
import { lines } from '../captions/title.js';
import { inQuotes } from '../captions/words.js';
import { textMark } from '../marks.js';
import type { List } from './fitting.js';

/** A caution is told whole. */
const MOST_LINES = 14;

/**
 * What of the materials can hurt someone, with what comes before all of it; hazards that ask for the same care
 * together.
 */
export function cautionsList(plan: Plan, width: number, em: number): List {
  const told = cautionsInWords(cautionsOf(plan));
  return {
    key: 'cautions',
    heading: 'Cautions',
    remark: '',
    entries: (told.length === 0 ? [] : [CAUTION_FIRST, ...told]).map((text, index): Block =>
      lines(
        `caution:${index}`,
        inQuotes(text),
        MOST_LINES,
        { size: 0.82 * em, leading: 1.14 * em, width: index === 0 ? width / BOLD_WIDTH : width },
        (key, line, x, y, size) =>
          textMark(key, line, x, y, { size, ink: 'ink', face: index === 0 ? 'strong' : 'text' }),
      ),
    ),
    more: (count) => `and ${count} more: \`mahlstick check\` tells all of them`,
  };
}

/** `Cadmium in lemon (PY35) and chromium in viridian (PG18): no sanding …` */
export function cautionsInWords(cautions: readonly Caution[]): readonly string[] {
  const byCare = new Map<string, string[]>();
  const alone: string[] = [];
  for (const { about, materials, text } of cautions) {
    const opening = ['hold', 'holds']
      .map((holds) => `${inWords(materials)} ${holds} ${about}. `)
      .find((each) => text.startsWith(each));
    if (opening === undefined) {
      alone.push(text);
      continue;
    }
    const care = text.slice(opening.length);
    byCare.set(care, [...(byCare.get(care) ?? []), `${about} in ${inWords(materials)}`]);
  }
  return [
    ...[...byCare].map(([care, hazards]) => `${capitalised(inWords(hazards))}: ${lowered(care)}`),
    ...alone,
  ];
}

function lowered(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
