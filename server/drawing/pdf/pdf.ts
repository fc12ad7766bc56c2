import {
  PDFDocument,
  type PDFName,
  type PDFOperator,
  type PDFPage,
  PrintScaling,
  concatTransformationMatrix,
  popGraphicsState,
  pushGraphicsState,
} from '@cantoo/pdf-lib';
import type { Page, PlacedDrawing } from '../page.js';
import { CLIPPED, isShown, shownBox } from '../parts.js';
import { rectanglePath } from '../path-data.js';
import { type SceneLayer, layerNames } from '../scene.js';
import type { ThemeName } from '../theme.js';
import { blurOperators } from './blurred.js';
import { type EmbeddedFont, type FontFiles, embedFonts } from './fonts.js';
import { type Pens, clipOperators, markOperators } from './marks.js';
import { embedPictures, pictureNamer } from './pictures.js';

export interface PdfOptions {
  /** Not `editor`, whose colours only a page of the editor knows. */
  readonly theme: Exclude<ThemeName, 'editor'>;
  readonly fonts: FontFiles;
}

export interface PdfResult {
  readonly pdf: Uint8Array;
  /** Letters that no font has, each once; an empty box stands for each of them. */
  readonly missing: readonly string[];
}

const POINTS_PER_MILLIMETRE = 72 / 25.4;

/**
 * A page as a PDF document of one page, of just that size: shapes stay outlines, and text stays text that can be
 * searched and selected, in fonts that the document brings with it. The same page gives the same bytes: no date is put
 * into it.
 */
export async function pdfOf(page: Page, { theme, fonts }: PdfOptions): Promise<PdfResult> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(page.title, { showInWindowTitleBar: true });
  document.setSubject(page.description);
  document.setCreator('Mahlstick');
  document.setProducer('Mahlstick');
  if (page.by !== undefined) document.setAuthor(page.by);
  // Printers make everything a little smaller unless they are told not to.
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);

  const missing = new Set<string>();
  const embedded = await embedFonts(document, fonts);
  const pictures = await embedPictures(document, page);
  const sheet = document.addPage([page.width * POINTS_PER_MILLIMETRE, page.height * POINTS_PER_MILLIMETRE]);
  const pens: Pens = {
    fonts: embedded,
    nameOf: fontNamer(sheet),
    pictureNamed: pictureNamer(sheet, pictures),
    missing: (letter) => void missing.add(letter),
  };
  const paper = { theme, em: page.em };
  sheet.pushOperators(
    pushGraphicsState(),
    concatTransformationMatrix(
      POINTS_PER_MILLIMETRE,
      0,
      0,
      -POINTS_PER_MILLIMETRE,
      0,
      page.height * POINTS_PER_MILLIMETRE,
    ),
    ...page.marks.flatMap((mark) => markOperators(mark, paper, pens)),
    ...page.drawings.flatMap((drawing) => drawingOperators(drawing, theme, pens, sheet)),
    popGraphicsState(),
  );
  return { pdf: await document.save(), missing: [...missing] };
}

function drawingOperators(
  { scene, part, at }: PlacedDrawing,
  theme: PdfOptions['theme'],
  pens: Pens,
  sheet: PDFPage,
): readonly PDFOperator[] {
  const box = shownBox(scene, part);
  const scale = at.width / box.width;
  const paper = { theme, em: scene.em };
  const layerOperators = (layer: SceneLayer): readonly PDFOperator[] => {
    const drawn =
      layer.blur === undefined
        ? layer.marks.flatMap((mark) => markOperators(mark, paper, pens))
        : blurOperators(layer.marks, layer.blur, scene.picture, sheet);
    return CLIPPED.has(layer.name)
      ? [pushGraphicsState(), ...clipOperators(rectanglePath(scene.picture)), ...drawn, popGraphicsState()]
      : drawn;
  };
  return [
    pushGraphicsState(),
    concatTransformationMatrix(scale, 0, 0, scale, at.x - box.x * scale, at.y - box.y * scale),
    ...clipOperators(rectanglePath(box)),
    ...layerNames
      .filter((name) => isShown(name, part))
      .flatMap((name) => scene.layers.filter((layer) => layer.name === name))
      .flatMap(layerOperators),
    popGraphicsState(),
  ];
}

/** Puts a font among the resources of the page when it is first set with. */
function fontNamer(sheet: PDFPage): Pens['nameOf'] {
  const names = new Map<EmbeddedFont, PDFName>();
  return (font) => {
    const known = names.get(font);
    if (known !== undefined) return known;
    const name = sheet.node.newFontDictionary(font.embedded.name, font.embedded.ref);
    names.set(font, name);
    return name;
  };
}
