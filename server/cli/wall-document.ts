import type { WallCard } from '../drawing/wall/card.js';
import type { Strip } from '../drawing/wall/figures.js';
import type { Hung } from '../drawing/wall/page.js';
import { countsInWords, stripInWords } from '../drawing/wall/words.js';
import { inks, shown } from './display.js';
import { round } from './figures.js';
import { type WallDocument, wallSchemaId } from './schema/wall.js';
import { wrapped } from './wrapped.js';

type Entry = WallDocument['plans'][number];
type StripEntry = NonNullable<Extract<Entry, { readonly read: true }>['values']>;

/** Plans side by side, for programs; its schema is `schema/wall-1.json`. */
export function wallDocument(hung: readonly Hung[], left: number): WallDocument {
  return { schema: wallSchemaId, version: 1, plans: hung.map(entryOf), left };
}

function entryOf(hung: Hung): Entry {
  if (!('card' in hung)) return { file: hung.name, read: false, reason: hung.unreadable };
  const { name, card, differs } = hung;
  return {
    file: name,
    read: true,
    title: card.title,
    canvas: card.canvas,
    ...stripOf(card, 'value', 'values'),
    ...stripOf(card, 'colour', 'colours'),
    ...(card.key === undefined ? {} : { key: card.key }),
    ...card.counts,
    ...(differs === undefined ? {} : { differs }),
  };
}

function stripOf<K extends 'values' | 'colours'>(
  { strips }: WallCard,
  of: Strip['of'],
  key: K,
): { readonly [P in K]?: StripEntry } {
  const strip = strips.find((each) => each.of === of);
  if (strip === undefined) return {};
  const entries = strip.parts.map(({ name, share, target, within }) => ({
    name,
    share: round(share),
    ...(target === undefined ? {} : { target: round(target) }),
    ...(within === undefined ? {} : { within }),
  }));
  return { [key]: entries } as { readonly [P in K]?: StripEntry };
}

/** Plans side by side, for people. */
export function wallText({ plans, left }: WallDocument, coloured: boolean): string {
  const ink = inks(coloured);
  const told = plans.map((plan) => {
    if (!plan.read) return `${ink.strong(shown(plan.file))}: ${shown(plan.reason)}\n`;
    const lines = [
      ...(plan.values ? [`Values: ${stripInWords({ parts: plan.values })}`] : []),
      ...(plan.colours ? [`Colours: ${stripInWords({ parts: plan.colours })}`] : []),
      [plan.key, countsInWords(plan)].filter(Boolean).join('; '),
      ...(plan.differs === undefined ? [] : [plan.differs]),
    ];
    const head = `${ink.strong(shown(plan.file))}: “${shown(plan.title)}”, ${plan.canvas}\n`;
    return `${head}${lines.map((line) => wrapped(shown(line), '  ')).join('')}`;
  });
  return `${told.join('\n')}${left > 0 ? `\nand ${left} more\n` : ''}`;
}
