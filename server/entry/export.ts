import { URI, Utils } from 'vscode-uri';
import { reasonInWords, speaking, t } from '../../grammar/index.js';
import { toBase64 } from '../drawing/base64.js';
import { compose } from '../drawing/compose.js';
import { calendarEvents } from '../drawing/icalendar/events.js';
import { iCalendar } from '../drawing/icalendar/write.js';
import { pageOf, scaleInWords } from '../drawing/paper.js';
import { missingLettersSentence } from '../drawing/pdf/words.js';
import { planSheet, usualPaper } from '../drawing/plan-sheet/sheet.js';
import { fullSizePages } from '../drawing/transfer/full-size.js';
import type { ExportParams } from '../language/export-protocol.js';
import type { Drawn, Exporter } from '../language/exports.js';
import type { Renderers } from './renderers.js';

/**
 * Makes files of views and plan sheets.
 * @param load gives what writes them; `installed` is the address of the folder that the tool is installed in, where it
 *   is known
 */
export function exporterWith(load: (installed: string | undefined) => Renderers): Exporter {
  return async (drawn, params, installed) => {
    const { plan, measures, language } = drawn;
    const { what, format, paper, distanceMillimetres, sitting } = params;
    if (format === 'ics') return calendar({ plan, measures, language }, params.textDocument.uri);
    const { renderToText, pageToText, pdfOf } = load(installed);
    if (what === 'pages') return fullSize({ plan, measures, language }, params, pdfOf);
    const theme = what === 'sheet' ? 'light' : (params.theme ?? 'light');
    const scene =
      what === 'sheet'
        ? undefined
        : compose(plan, measures, drawn.findingsInEnglish, what, { distanceMillimetres, sitting });
    const sheet = () =>
      planSheet(plan, measures, drawn.findingsInEnglish, paper === 'true' ? undefined : paper);
    if (format === 'svg') {
      const svg = scene === undefined ? pageToText(sheet(), { theme }) : renderToText(scene, { theme });
      return { svg, remarks: [] };
    }
    const { page, scale } =
      scene === undefined ? { page: sheet(), scale: 1 } : pageOf(scene, plan, paper ?? 'true');
    const { pdf, missing } = await pdfOf(page, theme);
    return {
      pdf: toBase64(pdf),
      remarks: speaking(language, () => [
        ...(scale === 1 ? [] : [t('The picture is drawn at {0}.', scaleInWords(scale))]),
        ...(missing.length === 0 ? [] : [missingLettersSentence(missing)]),
      ]),
    };
  };
}

/** The lines at full size; what can't be made is told as a sentence. */
async function fullSize(
  { plan, measures, language }: Pick<Drawn, 'plan' | 'measures' | 'language'>,
  { paper }: ExportParams,
  pdfOf: Renderers['pdfOf'],
): ReturnType<Exporter> {
  const full = fullSizePages(plan, measures, {
    paper: paper === undefined || paper === 'true' ? usualPaper(plan) : paper,
  });
  if (!full.ok) return { refused: speaking(language, () => reasonInWords(full.reason)) };
  const { pdf, missing } = await pdfOf(full.pages, 'light');
  return {
    pdf: toBase64(pdf),
    remarks: speaking(language, () => [
      t('Print at 100 % and measure the rules on the first page before you use the others.'),
      ...(missing.length === 0 ? [] : [missingLettersSentence(missing)]),
    ]),
  };
}

/** The sittings of a plan as a calendar, with the time at which it is written. */
function calendar(
  { plan, measures, language }: Pick<Drawn, 'plan' | 'measures' | 'language'>,
  uri: string,
): ReturnType<Exporter> {
  const file = Utils.basename(URI.parse(uri));
  const events = measures.schedule ? calendarEvents(plan, measures.schedule, file) : [];
  return Promise.resolve({
    ics: iCalendar(events, { name: plan.title?.value ?? file, now: new Date() }),
    remarks:
      events.length === 0
        ? [speaking(language, () => t('Nothing is planned on any day, so it is empty.'))]
        : [],
  });
}
