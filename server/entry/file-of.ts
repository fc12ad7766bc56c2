import { compose } from '../drawing/compose.js';
import { pageToText, renderToText } from '../drawing/headless.js';
import { type PageOfDrawing, pageOf, scaleInWords } from '../drawing/paper.js';
import { pdfOf } from '../drawing/pdf/pdf.js';
import { roboto } from '../drawing/pdf/roboto.js';
import { missingLettersSentence } from '../drawing/pdf/words.js';
import { planSheet } from '../drawing/plan-sheet/sheet.js';
import type { Exporter } from '../language/exports.js';

/** A view of a plan, or its plan sheet, as SVG or PDF. */
export const fileOf: Exporter = async ({ plan, measures, findings }, params) => {
  const { what, format, paper, distanceMillimetres } = params;
  const theme = what === 'sheet' ? 'light' : (params.theme ?? 'light');
  const scene = () =>
    what === 'sheet' ? undefined : compose(plan, measures, findings, what, { distanceMillimetres });
  const sheet = () => planSheet(plan, measures, findings, paper === 'true' ? undefined : paper);
  if (format === 'svg') {
    const drawn = scene();
    return {
      svg: drawn === undefined ? pageToText(sheet(), { theme }) : renderToText(drawn, { theme }),
      remarks: [],
    };
  }
  const drawn = scene();
  const { page, scale }: PageOfDrawing =
    drawn === undefined ? { page: sheet(), scale: 1 } : pageOf(drawn, plan, paper ?? 'true');
  const { pdf, missing } = await pdfOf(page, { theme, fonts: { ...roboto, more: [] } });
  return {
    pdf: base64(pdf),
    remarks: [
      ...(scale === 1 ? [] : [`The picture is drawn at ${scaleInWords(scale)}.`]),
      ...(missing.length === 0 ? [] : [missingLettersSentence(missing)]),
    ],
  };
};

/** In pieces, because a function takes only so many arguments. */
function base64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let from = 0; from < bytes.length; from += 8192)
    pieces.push(String.fromCharCode(...bytes.subarray(from, from + 8192)));
  return btoa(pieces.join(''));
}
