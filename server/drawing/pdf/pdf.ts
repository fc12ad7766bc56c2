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
 * Pages as a PDF document, each of just its size: shapes stay outlines, and text stays text that can be searched and
 * selected, in fonts that the document brings with it. The first page says what it is called and by whom it is. The
 * same pages give the same bytes: no date is put into them.
 */
export async function pdfOf(pages: Page | readonly Page[], { theme, fonts }: PdfOptions): Promise<PdfResult> {
  const all = [pages].flat();
  const document = await PDFDocument.create({ updateMetadata: false });
  const [first] = all;
  if (first !== undefined) {
    document.setTitle(first.title, { showInWindowTitleBar: true });
    document.setSubject(first.description);
    if (first.by !== undefined) document.setAuthor(first.by);
  }
  document.setCreator('Mahlstick');
  document.setProducer('Mahlstick');
  // Printers make everything a little smaller unless they are told not to.
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);

  const missing = new Set<string>();
  const embedded = await embedFonts(document, fonts);
  const written: Written = { theme, fonts: embedded, missing: (letter) => void missing.add(letter) };
  for (const page of all) await writePage(document, page, written);
  return { pdf: await document.save(), missing: [...missing] };
}

interface Written {
  readonly theme: PdfOptions['theme'];
  readonly fonts: Pens['fonts'];
  readonly missing: Pens['missing'];
}

async function writePage(
  document: PDFDocument,
  page: Page,
  { theme, fonts, missing }: Written,
): Promise<void> {
  const pictures = await embedPictures(document, page);
  const sheet = document.addPage([page.width * POINTS_PER_MILLIMETRE, page.height * POINTS_PER_MILLIMETRE]);
  const pens: Pens = {
    fonts,
    nameOf: fontNamer(sheet),
    pictureNamed: pictureNamer(sheet, pictures),
    missing,
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
