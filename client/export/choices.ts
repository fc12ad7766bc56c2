import type { Paper } from '../../server/drawing/paper.js';
import { type View, views } from '../../server/drawing/scene.js';
import type { Exportable } from '../../server/language/export-protocol.js';
import { viewDescriptions, viewLabels } from '../preview/views.js';
import { type Choice, askFor, choose } from '../questions.js';

/** What is to become a file, and how. */
export type Wanted = { readonly what: Exportable } & (
  | { readonly format: 'svg' | 'ics' }
  | { readonly format: 'png'; readonly width: number }
  | { readonly format: 'pdf'; readonly paper?: Paper }
);
export type Format = Wanted['format'];

const TITLE = 'Export drawing';
const WIDTHS = { least: 16, most: 12_000 } as const;

/** Asks what to export, the shown view first; `undefined` when the painter has thought better of it. */
export async function askWhat(shown: View): Promise<Wanted | undefined> {
  const what = await ask<View | 'sheet' | Pages>('What do you want to take out?', [
    {
      label: viewLabels[shown],
      description: 'the shown view',
      detail: viewDescriptions[shown],
      value: shown,
    },
    {
      label: 'Plan sheet',
      description: '',
      detail: 'The whole plan on one page, for a client, a gallery or a class.',
      value: 'sheet',
    },
    ...PAGES,
    ...views
      .filter((view) => view !== shown)
      .map((view) => ({
        label: viewLabels[view],
        description: '',
        detail: viewDescriptions[view],
        value: view,
      })),
  ]);
  if (what === undefined) return undefined;
  if (typeof what === 'object') return what;
  const format = await ask<Format>('As what?', [
    { label: 'PDF', description: '', detail: 'To print and to send; text can be searched.', value: 'pdf' },
    { label: 'PNG', description: '', detail: 'Pixels, for the web and for letters.', value: 'png' },
    { label: 'SVG', description: '', detail: 'Lines, to be worked on in a drawing program.', value: 'svg' },
    ...(what === 'sittings' ? [CALENDAR] : []),
  ]);
  switch (format) {
    case undefined:
      return undefined;
    case 'svg':
    case 'ics':
      return { what, format };
    case 'png': {
      const width = await askWidth();
      return width === undefined ? undefined : { what, format, width };
    }
    case 'pdf': {
      if (what === 'sheet') return { what, format };
      const paper = await askPaper();
      return paper === undefined ? undefined : { what, format, paper };
    }
  }
}

/** They are a PDF on paper, so that nothing more is asked. */
type Pages = Extract<Wanted, { readonly format: 'pdf' }>;

const PAGES = (['A4', 'Letter'] as const).map((paper) => ({
  label: `Full-size pages (PDF, ${paper})`,
  description: '',
  detail: 'The lines as large as the canvas, on sheets to be laid over each other.',
  value: { what: 'pages', format: 'pdf', paper } satisfies Pages,
}));

const CALENDAR = {
  label: 'Calendar',
  description: 'iCalendar',
  detail: 'The sittings and the due date, for any calendar.',
  value: 'ics' as const,
};

function askPaper(): Promise<Paper | undefined> {
  return ask<Paper>('On what paper?', [
    {
      label: 'True size',
      description: '',
      detail: 'A page as large as the drawing; the picture as large as the canvas.',
      value: 'true',
    },
    ...(['A4', 'A3', 'Letter'] as const).map((paper) => ({
      label: paper,
      description: '',
      detail: 'The drawing fitted to the page.',
      value: paper,
    })),
  ]);
}

async function askWidth(): Promise<number | undefined> {
  const width = await ask<number | 'other'>('How wide?', [
    { label: '1600 pixels', description: 'a screen', detail: '', value: 1600 },
    { label: '3200 pixels', description: 'a print as wide as a hand', detail: '', value: 3200 },
    { label: '6400 pixels', description: 'a large print', detail: '', value: 6400 },
    { label: 'Another width…', description: '', detail: '', value: 'other' },
  ]);
  if (width !== 'other') return width;
  const text = await askFor({
    title: TITLE,
    prompt: `Width in pixels, ${WIDTHS.least} to ${WIDTHS.most}`,
    value: '2400',
    validateInput: (value) =>
      isWidth(Number(value)) ? undefined : `A whole number from ${WIDTHS.least} to ${WIDTHS.most}.`,
  });
  return text === undefined ? undefined : Number(text);
}

function isWidth(width: number): boolean {
  return Number.isInteger(width) && width >= WIDTHS.least && width <= WIDTHS.most;
}

function ask<T>(placeHolder: string, items: readonly Choice<T>[]): Promise<T | undefined> {
  return choose(items, { title: TITLE, placeHolder });
}
