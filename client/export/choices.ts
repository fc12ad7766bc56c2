import { t } from '../../grammar/localised.js';
import type { Paper } from '../../server/drawing/paper.js';
import { type View, views } from '../../server/drawing/scene.js';
import type { Exportable } from '../../server/language/export-protocol.js';
import { viewDescription, viewLabel } from '../preview/views.js';
import { type Choice, askFor, choose } from '../questions.js';

/** What is to become a file, and how. */
export type Wanted = { readonly what: Exportable } & (
  | { readonly format: 'svg' | 'ics' }
  | { readonly format: 'png'; readonly width: number }
  | { readonly format: 'pdf'; readonly paper?: Paper }
);
export type Format = Wanted['format'];

/** How wide a picture may be, in pixels. */
export const widths = { least: 16, most: 12_000 } as const;

/** Asks what to export, the shown view first; `undefined` when the painter has thought better of it. */
export async function askWhat(shown: View): Promise<Wanted | undefined> {
  const what = await ask<View | 'sheet' | Pages>(t('What do you want to take out?'), [
    {
      label: viewLabel(shown),
      description: t('the shown view'),
      detail: viewDescription(shown),
      value: shown,
    },
    {
      label: t('Plan sheet'),
      description: '',
      detail: t('The whole plan on one page, for a client, a gallery or a class.'),
      value: 'sheet',
    },
    ...pages(),
    ...views
      .filter((view) => view !== shown)
      .map((view) => ({
        label: viewLabel(view),
        description: '',
        detail: viewDescription(view),
        value: view,
      })),
  ]);
  if (what === undefined) return undefined;
  if (typeof what === 'object') return what;
  const format = await ask<Format>(t('As what?'), [
    { label: 'PDF', description: '', detail: t('To print and to send; text can be searched.'), value: 'pdf' },
    { label: 'PNG', description: '', detail: t('Pixels, for the web and for letters.'), value: 'png' },
    {
      label: 'SVG',
      description: '',
      detail: t('Lines, to be worked on in a drawing program.'),
      value: 'svg',
    },
    ...(what === 'sittings' ? [calendar()] : []),
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

function pages(): readonly Choice<Pages>[] {
  return (['A4', 'Letter'] as const).map((paper) => ({
    label: t('Full-size pages (PDF, {0})', paper),
    description: '',
    detail: t('The lines as large as the canvas, on sheets to be laid over each other.'),
    value: { what: 'pages', format: 'pdf', paper },
  }));
}

function calendar(): Choice<'ics'> {
  return {
    label: t('Calendar'),
    description: 'iCalendar',
    detail: t('The sittings and the due date, for any calendar.'),
    value: 'ics',
  };
}

function askPaper(): Promise<Paper | undefined> {
  return ask<Paper>(t('On what paper?'), [
    {
      label: t('True size'),
      description: '',
      detail: t('A page as large as the drawing; the picture as large as the canvas.'),
      value: 'true',
    },
    ...(['A4', 'A3', 'Letter'] as const).map((paper) => ({
      label: paper,
      description: '',
      detail: t('The drawing fitted to the page.'),
      value: paper,
    })),
  ]);
}

async function askWidth(): Promise<number | undefined> {
  const width = await ask<number | 'other'>(t('How wide?'), [
    { label: t('{0} pixels', 1600), description: t('a screen'), detail: '', value: 1600 },
    { label: t('{0} pixels', 3200), description: t('a print as wide as a hand'), detail: '', value: 3200 },
    { label: t('{0} pixels', 6400), description: t('a large print'), detail: '', value: 6400 },
    { label: t('Another width…'), description: '', detail: '', value: 'other' },
  ]);
  if (width !== 'other') return width;
  const text = await askFor({
    title: t('Export drawing'),
    prompt: t('Width in pixels, {0} to {1}', widths.least, widths.most),
    value: '2400',
    validateInput: (value) =>
      isWidth(Number(value)) ? undefined : t('A whole number from {0} to {1}.', widths.least, widths.most),
  });
  return text === undefined ? undefined : Number(text);
}

function isWidth(width: number): boolean {
  return Number.isInteger(width) && width >= widths.least && width <= widths.most;
}

function ask<T>(placeHolder: string, items: readonly Choice<T>[]): Promise<T | undefined> {
  return choose(items, { title: t('Export drawing'), placeHolder });
}
