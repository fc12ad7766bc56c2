import { marked, t } from '../../grammar/localised.js';
import { sidesInWords, stockSize } from '../../server/plan/stock.js';

/** What a new plan is begun with. */
export interface Beginning {
  /** As `canvas` takes it: `figure 20 upright`, `16 x 20 in`. */
  readonly canvas: string;
  readonly division: DivisionChoice;
  readonly crossing: CrossingChoice;
}

/** The divisions to begin with, those that a painter most often takes first. */
const divisionChoices = [
  'golden',
  'thirds',
  'two to three',
  'quarters',
  'rabatment',
  'diagonals',
  'armature',
] as const;
export type DivisionChoice = (typeof divisionChoices)[number];

/**
 * Crossings that each of the divisions has, see `divisionsOf`; kept to be `said` beside the words of the plan language.
 */
export const crossingChoices = [
  marked('upper right'),
  marked('upper left'),
  marked('lower right'),
  marked('lower left'),
] as const;
export type CrossingChoice = (typeof crossingChoices)[number];

export interface CanvasChoice {
  readonly canvas: string;
  /** The sides of a stock size: `73 x 60 cm`. */
  readonly sides?: string;
}

/**
 * Sizes that canvases, panels and paper are sold in, grouped as a shop has them; names of groups are kept to be `said`.
 */
export const canvasChoices: readonly { readonly group: string; readonly choices: readonly CanvasChoice[] }[] =
  [
    {
      group: marked('Centimetres'),
      choices: written('30 x 24', '40 x 30', '50 x 40', '60 x 50', '80 x 60', '100 x 80')('cm'),
    },
    {
      group: marked('Inches'),
      choices: written('10 x 8', '12 x 9', '14 x 11', '20 x 16', '24 x 18', '30 x 24', '40 x 30')('in'),
    },
    {
      group: marked('Square'),
      choices: [...written('30 x 30', '40 x 40')('cm'), ...written('12 x 12')('in')],
    },
    {
      group: marked('French stretchers'),
      choices: stock(
        'figure 6',
        'figure 10',
        'figure 20',
        'figure 30',
        'paysage 10',
        'paysage 20',
        'marine 10',
        'marine 20',
      ),
    },
    { group: marked('Paper'), choices: stock('A5', 'A4', 'A3', 'A2') },
  ];

function written(...sides: readonly string[]): (unit: 'cm' | 'in') => readonly CanvasChoice[] {
  return (unit) => sides.map((size) => ({ canvas: `${size} ${unit}` }));
}

function stock(...names: readonly string[]): readonly CanvasChoice[] {
  return names.map((canvas) => {
    const size = stockSize(canvas.toLowerCase());
    return { canvas, ...(size ? { sides: sidesInWords(size) } : {}) };
  });
}

const LEAST_MILLIMETRES = 1;
const MOST_MILLIMETRES = 100_000;
const MILLIMETRES = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;
const sidesPattern = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|cm|m|in)?$/iu;

/** A size that was typed, as `canvas` takes it; or what is wrong with it, as a sentence. */
export function readCanvas(typed: string): { readonly canvas: string } | { readonly wrong: string } {
  const [whole, width = '', height = '', unit = 'cm'] = sidesPattern.exec(typed.trim()) ?? [];
  if (whole === undefined) return { wrong: t('Write width and height with their unit, such as 80 x 50 cm.') };
  const perUnit = MILLIMETRES[unit.toLowerCase() as keyof typeof MILLIMETRES];
  const fits = [width, height].every((side) => {
    const millimetres = Number(side) * perUnit;
    return millimetres >= LEAST_MILLIMETRES && millimetres <= MOST_MILLIMETRES;
  });
  return fits
    ? { canvas: `${width} x ${height} ${unit.toLowerCase()}` }
    : { wrong: t('A canvas is from 1 mm to 100 m a side.') };
}

/** Whether a canvas has a longer side, so that it can stand or lie. */
export function hasLongerSide(canvas: string): boolean {
  const [, width, height] = sidesPattern.exec(canvas) ?? [];
  return width === undefined || width !== height;
}

/**
 * The divisions that have the crossings to choose from on a canvas: a square has no square to lay into it, and its
 * diagonals meet once.
 */
export function divisionsOf(canvas: string): readonly DivisionChoice[] {
  return hasLongerSide(canvas)
    ? divisionChoices
    : divisionChoices.filter((division) => division !== 'rabatment' && division !== 'diagonals');
}

/** The same canvas standing or lying. */
export function turned(canvas: string, way: 'upright' | 'landscape'): string {
  const [, width = '', height = '', unit = ''] = sidesPattern.exec(canvas) ?? [];
  // Stock sizes lie unless they are said to stand.
  if (width === '') return way === 'upright' ? `${canvas} upright` : canvas;
  const isUpright = Number(height) > Number(width);
  return isUpright === (way === 'upright') ? canvas : `${height} x ${width} ${unit}`;
}

/**
 * A new plan as a VS Code snippet: a title, a concept and a first object to be filled in, so that there is a drawing
 * from the start.
 */
export function planSnippet({ canvas, division, crossing }: Beginning): string {
  return `plan    "\${1:${t('Title')}}"

concept "\${2:${t('What the picture is about, in one sentence.')}}"

canvas  ${canvas}

divide  ${division}
focus   ${crossing}

object  \${3:${t('subject')}}, dominant
  shape   ellipse 24% x 32% at focus
  value   2
$0`;
}
