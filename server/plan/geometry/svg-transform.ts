import { IDENTITY, type Matrix, multiply, rotate, scale, skew, translate } from './matrix.js';

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const OPERATION = /[\s,]*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)[\s,]*/y;

/** A longer attribute is no drawing program's work. */
const LONGEST_TEXT = 10_000;

/** The matrix of an SVG `transform` attribute; none when it does not follow the SVG 1.1 grammar. */
export function transformOf(text: string): Matrix | undefined {
  if (text.length > LONGEST_TEXT) return undefined;
  let matrix: Matrix = IDENTITY;
  let at = 0;
  while (at < text.length && /\S/.test(text.slice(at))) {
    OPERATION.lastIndex = at;
    const found = OPERATION.exec(text);
    const next = found ? operation(found[1] ?? '', numbersOf(found[2] ?? '') ?? []) : undefined;
    if (!next) return undefined;
    matrix = multiply(matrix, next);
    at = OPERATION.lastIndex;
  }
  return matrix;
}

/** Numbers set apart by spaces or commas, as SVG lists them; none when anything else stands among them. */
export function numbersOf(text: string): readonly number[] | undefined {
  const numbers: number[] = [];
  let at = 0;
  while (at < text.length) {
    if (/[\s,]/.test(text.charAt(at))) {
      at++;
      continue;
    }
    NUMBER.lastIndex = at;
    const found = NUMBER.exec(text);
    if (!found) return undefined;
    numbers.push(Number(found[0]));
    at = NUMBER.lastIndex;
  }
  return numbers;
}

function operation(name: string, numbers: readonly number[]): Matrix | undefined {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
  const count = numbers.length;
  switch (name) {
    case 'matrix':
      return count === 6 ? { a, b, c, d, e, f } : undefined;
    case 'translate':
      return count === 1 || count === 2 ? translate(a, b) : undefined;
    case 'scale':
      return count === 1 || count === 2 ? scale(a, count === 2 ? b : a) : undefined;
    case 'rotate':
      return count === 1 || count === 3 ? rotate(a, { x: b, y: c }) : undefined;
    case 'skewX':
      return count === 1 ? skew(a, 0) : undefined;
    case 'skewY':
      return count === 1 ? skew(0, a) : undefined;
    default:
      return undefined;
  }
}
