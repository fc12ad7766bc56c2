import { t } from '../../grammar/index.js';
import type { Plan } from '../plan/plan.js';
import { plainNumber } from '../plan/problems.js';
import type { Page } from './page.js';
import type { Scene } from './scene.js';

/** Sizes of paper that drawings are laid on. ISO 216; Letter is 8 1/2 by 11 inches. Upright, millimetres. */
export const paperSizes = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
} as const;
export type PaperSize = keyof typeof paperSizes;

/** `true`: a page as large as the drawing with its picture at the size of the canvas. */
export const papers = ['true', 'A4', 'A3', 'Letter'] as const satisfies readonly ('true' | PaperSize)[];
export type Paper = (typeof papers)[number];

/** No side of a page is longer than 14,400 points: PDF 1.7 (ISO 32000-1), annex C. */
const LONGEST_SIDE = (14_400 / 72) * 25.4;
/** What most printers leave white. */
const MARGIN = 10;

/** A drawing on its page, and how large the picture is there: 1 is true size, 0.5 half of it. */
export interface PageOfDrawing {
  readonly page: Page;
  readonly scale: number;
}

/** Lays the whole sheet of a drawing on paper, upright or across as it is better filled. */
export function pageOf(
  scene: Scene,
  { canvas, by }: Pick<Plan, 'canvas' | 'by'>,
  paper: Paper,
): PageOfDrawing {
  const width = scene.sheet.width * canvas.millimetresPerUnit;
  const height = scene.sheet.height * canvas.millimetresPerUnit;
  const { page, scale } =
    paper === 'true' ? trueSize(width, height) : fitted(width, height, paperSizes[paper]);
  const at = {
    x: (page.width - width * scale) / 2,
    y: (page.height - height * scale) / 2,
    width: width * scale,
    height: height * scale,
  };
  return {
    scale,
    page: {
      ...page,
      title: scene.title,
      description: `${scene.description} Drawn at ${scaleInWords(scale)}.`,
      ...(by === undefined ? {} : { by }),
      em: scene.em * canvas.millimetresPerUnit * scale,
      marks: [],
      drawings: [{ key: 'drawing', scene, part: 'sheet', at }],
    },
  };
}

/** `true size`, `1 : 4.3 of true size` or `2.5 : 1 of true size`. */
export function scaleInWords(scale: number): string {
  if (Math.abs(scale - 1) < 1e-9) return t('true size');
  const figure = (value: number) => plainNumber(value, value < 10 ? 2 : 1);
  return t('{0} of true size', scale < 1 ? `1 : ${figure(1 / scale)}` : `${figure(scale)} : 1`);
}

interface Fitted {
  readonly page: Pick<Page, 'width' | 'height'>;
  readonly scale: number;
}

function trueSize(width: number, height: number): Fitted {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(width, height));
  return { page: { width: width * scale, height: height * scale }, scale };
}

function fitted(width: number, height: number, upright: Pick<Page, 'width' | 'height'>): Fitted {
  const page = width > height ? { width: upright.height, height: upright.width } : upright;
  const scale = Math.min((page.width - 2 * MARGIN) / width, (page.height - 2 * MARGIN) / height);
  return { page, scale };
}
