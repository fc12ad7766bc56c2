import { type PDFOperator, appendBezierCurve, closePath, lineTo, moveTo } from '@cantoo/pdf-lib';
import svgpath from 'svgpath';

/** SVG path data as the path operators of a PDF page, in the same units, left open where the data leave it open. */
export function pathOperators(d: string): readonly PDFOperator[] {
  const operators: PDFOperator[] = [];
  svgpath(d)
    .abs()
    .unshort()
    .unarc()
    .iterate((segment, _index, x, y) => {
      const operator = operatorOf(segment, x, y);
      if (operator !== undefined) operators.push(operator);
    });
  return operators;
}

type Segment = Parameters<Parameters<ReturnType<typeof svgpath>['iterate']>[0]>[0];

/** @param x where the piece before ends, as is `y` */
function operatorOf(segment: Segment, x: number, y: number): PDFOperator | undefined {
  switch (segment[0]) {
    case 'M':
      return moveTo(segment[1], segment[2]);
    case 'L':
      return lineTo(segment[1], segment[2]);
    case 'H':
      return lineTo(segment[1], y);
    case 'V':
      return lineTo(x, segment[1]);
    case 'C':
      return appendBezierCurve(segment[1], segment[2], segment[3], segment[4], segment[5], segment[6]);
    case 'Q': {
      // PDF has cubics only.
      const [, midX, midY, endX, endY] = segment;
      const towards = (from: number, to: number) => from + (2 / 3) * (to - from);
      return appendBezierCurve(
        towards(x, midX),
        towards(y, midY),
        towards(endX, midX),
        towards(endY, midY),
        endX,
        endY,
      );
    }
    case 'Z':
    case 'z':
      return closePath();
    default:
      return undefined;
  }
}
