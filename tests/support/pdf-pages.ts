import { OPS, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPage {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly text: string;
  /**
   * Every drawn line or shape by its points, millimetres from the upper left corner of the page; curves by their ends.
   */
  readonly shapes: readonly (readonly Spot[])[];
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

type Matrix = readonly [number, number, number, number, number, number];

const MILLIMETRES_PER_POINT = 25.4 / 72;
/** How many numbers follow each command of a path, as pdfjs packs them. */
const NUMBERS: Readonly<Record<number, number>> = { 0: 2, 1: 2, 2: 6, 3: 4, 4: 0 };

/** All pages of a PDF document with what is drawn on them, as a library other than the one that wrote it reads it. */
export async function readPages(pdf: Uint8Array): Promise<readonly ReadPage[]> {
  const task = getDocument({ data: Uint8Array.from(pdf), verbosity: 0 });
  try {
    const document = await task.promise;
    const pages: ReadPage[] = [];
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number);
      const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
      const { items } = await page.getTextContent();
      const { fnArray, argsArray } = await page.getOperatorList();
      const height = (top - bottom) * MILLIMETRES_PER_POINT;
      pages.push({
        width: (right - left) * MILLIMETRES_PER_POINT,
        height,
        text: items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join(''),
        shapes: shapesOf(fnArray, argsArray, height),
      });
    }
    return pages;
  } finally {
    await task.destroy();
  }
}

function shapesOf(operators: readonly number[], args: readonly unknown[], height: number): readonly Spot[][] {
  const shapes: Spot[][] = [];
  const kept: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  operators.forEach((operator, index) => {
    if (operator === OPS.save) kept.push(matrix);
    else if (operator === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = multiplied(matrix, args[index] as Matrix);
    else if (operator === OPS.constructPath) {
      const [, [numbers]] = args[index] as [number, [ArrayLike<number> | null]];
      shapes.push(...subpaths(numbers ?? [], matrix, height));
    }
  });
  return shapes;
}

function subpaths(numbers: ArrayLike<number>, [a, b, c, d, e, f]: Matrix, height: number): readonly Spot[][] {
  const paths: Spot[][] = [];
  for (let at = 0; at < numbers.length;) {
    const command = numbers[at] ?? 0;
    const count = NUMBERS[command] ?? 0;
    if (count > 0) {
      const x = numbers[at + count - 1] ?? 0;
      const y = numbers[at + count] ?? 0;
      if (command === 0) paths.push([]);
      paths.at(-1)?.push({
        x: (a * x + c * y + e) * MILLIMETRES_PER_POINT,
        y: height - (b * x + d * y + f) * MILLIMETRES_PER_POINT,
      });
    }
    at += count + 1;
  }
  return paths;
}

function multiplied([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix {
  return [a * A + c * B, b * A + d * B, a * C + c * D, b * C + d * D, a * E + c * F + e, b * E + d * F + f];
}
