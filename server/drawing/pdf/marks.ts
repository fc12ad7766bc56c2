import {
  LineCapStyle,
  LineJoinStyle,
  type PDFName,
  PDFOperator,
  PDFOperatorNames,
  beginText,
  concatTransformationMatrix,
  drawObject,
  endText,
  fill,
  fillEvenOdd,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  setDashPattern,
  setFillingRgbColor,
  setFontAndSize,
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingRgbColor,
  setTextMatrix,
  showText,
  stroke,
} from '@cantoo/pdf-lib';
import { HALO_EMS, type Paper, dashesInEms, inkColour, strokeWidth } from '../attributes.js';
import type { ImageMark, Ink, Mark, PathMark, PictureData, Stroke, TextMark } from '../scene.js';
import type { EmbeddedFont, EmbeddedFonts } from './fonts.js';
import { pathOperators } from './paths.js';
import { type Run, setLine } from './setting.js';

/** What marks are drawn with on one page. */
export interface Pens {
  readonly fonts: EmbeddedFonts;
  /** The name by which the page knows a font. */
  readonly nameOf: (font: EmbeddedFont) => PDFName;
  /** The name by which the page knows a picture; nothing for one that can't be had. */
  readonly pictureNamed: (picture: PictureData) => PDFName | undefined;
  /** Told of each letter that no font has. */
  readonly missing: (letter: string) => void;
}

/** What draws a mark on a page whose y runs down, as the attributes of `attributes.ts` draw it in SVG. */
export function markOperators(mark: Mark, paper: Paper, pens: Pens): readonly PDFOperator[] {
  switch (mark.kind) {
    case 'path':
      return shapeOperators(mark, paper);
    case 'text':
      return textOperators(mark, paper, pens);
    case 'image':
      return imageOperators(mark, pens);
  }
}

function imageOperators({ box, href }: ImageMark, { pictureNamed }: Pens): readonly PDFOperator[] {
  const name = pictureNamed(href);
  if (name === undefined) return [];
  return [
    pushGraphicsState(),
    // Images stand on their lower edge; on this page y runs down.
    concatTransformationMatrix(box.width, 0, 0, -box.height, box.x, box.y + box.height),
    drawObject(name),
    popGraphicsState(),
  ];
}

function shapeOperators(mark: PathMark, paper: Paper): readonly PDFOperator[] {
  const path = pathOperators(mark.d);
  if (path.length === 0) return [];
  const filled =
    mark.fill === undefined
      ? []
      : [
          setFillingRgbColor(...rgb(mark.fill, paper)),
          ...path,
          mark.fillRule === 'evenodd' ? fillEvenOdd() : fill(),
        ];
  const stroked = mark.stroke === undefined ? [] : strokeOperators(path, mark.stroke, paper);
  return mark.stroke?.under ? [...stroked, ...filled] : [...filled, ...stroked];
}

function strokeOperators(path: readonly PDFOperator[], line: Stroke, paper: Paper): readonly PDFOperator[] {
  const dashes = line.dash === undefined ? [] : dashesInEms[line.dash].map((length) => length * paper.em);
  return [
    setStrokingRgbColor(...rgb(line.ink, paper)),
    setLineWidth(strokeWidth(line, paper.em)),
    setLineJoin(LineJoinStyle.Round),
    setLineCap(line.dash === 'dotted' ? LineCapStyle.Round : LineCapStyle.Butt),
    setDashPattern(dashes, 0),
    ...path,
    stroke(),
  ];
}

function textOperators(mark: TextMark, paper: Paper, pens: Pens): readonly PDFOperator[] {
  const runs = setLine(mark, pens.fonts);
  const halo =
    mark.halo === undefined
      ? []
      : runs.flatMap((run) => haloOperators(run, mark, mark.halo ?? mark.ink, paper));
  const letters = runs.flatMap((run): readonly PDFOperator[] => {
    if (run.kind === 'letters') return letterOperators(run, mark, pens);
    pens.missing(run.text);
    return boxOperators(run, mark, paper);
  });
  return [...halo, setFillingRgbColor(...rgb(mark.ink, paper)), ...letters];
}

function letterOperators(
  { text, font, x }: Extract<Run, { kind: 'letters' }>,
  { y, size }: TextMark,
  { nameOf }: Pens,
): readonly PDFOperator[] {
  return [
    beginText(),
    setFontAndSize(nameOf(font), size),
    // The page is turned upside down, so that y runs down, and letters have to be turned back.
    setTextMatrix(1, 0, 0, -1, x, y),
    showText(font.embedded.encodeText(text)),
    endText(),
  ];
}

/** The outlines of the letters as shapes: as text they would be found and read twice. */
function haloOperators(run: Run, { y, size }: TextMark, halo: Ink, paper: Paper): readonly PDFOperator[] {
  if (run.kind === 'missing') return [];
  const { font } = run.font;
  const scale = size / font.unitsPerEm;
  let at = 0;
  const outlines = font.layout(run.text).glyphs.flatMap(({ path, advanceWidth }) => {
    const outline = path.commands.length === 0 ? [] : pathOperators(path.toSVG());
    const placed = outline.length === 0 ? [] : [...moved(at, 0), ...outline, stroke(), popGraphicsState()];
    at += advanceWidth;
    return placed;
  });
  return [
    pushGraphicsState(),
    concatTransformationMatrix(scale, 0, 0, -scale, run.x, y),
    setStrokingRgbColor(...rgb(halo, paper)),
    setLineWidth((HALO_EMS * paper.em) / scale),
    setLineJoin(LineJoinStyle.Round),
    setDashPattern([], 0),
    ...outlines,
    popGraphicsState(),
  ];
}

function moved(x: number, y: number): readonly PDFOperator[] {
  return [pushGraphicsState(), concatTransformationMatrix(1, 0, 0, 1, x, y)];
}

function boxOperators({ x, width }: Run, { y, size, ink }: TextMark, paper: Paper): readonly PDFOperator[] {
  const air = 0.1 * width;
  return [
    setStrokingRgbColor(...rgb(ink, paper)),
    setLineWidth(0.05 * size),
    setDashPattern([], 0),
    rectangle(x + air, y - 0.72 * size, width - 2 * air, 0.72 * size),
    stroke(),
  ];
}

/** Cuts what follows to the path, until the graphics state is restored. */
export function clipOperators(d: string): readonly PDFOperator[] {
  return [
    ...pathOperators(d),
    PDFOperator.of(PDFOperatorNames.ClipNonZero),
    PDFOperator.of(PDFOperatorNames.EndPath),
  ];
}

/** Red, green and blue from 0 to 1. */
function rgb(ink: Ink, { theme }: Paper): [number, number, number] {
  const colour = inkColour(ink, theme);
  const [, red = '0', green = '0', blue = '0'] = /^#(..)(..)(..)$/.exec(colour) ?? [];
  return [red, green, blue].map((part) => Number.parseInt(part, 16) / 255) as [number, number, number];
}
