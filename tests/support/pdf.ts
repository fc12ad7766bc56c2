import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PrintedPage {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  /** What a reader finds, in the order of the document, a line apart where one begins. */
  readonly text: string;
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  /** Kinds of what it would do or lead to besides being read: links, scripts, files within. */
  readonly acts: readonly string[];
}

interface Info {
  readonly Title?: string;
  readonly Author?: string;
  readonly Subject?: string;
}

/** A PDF document of one page as a library other than the one that wrote it reads it. */
export async function readPdf(pdf: Uint8Array): Promise<PrintedPage> {
  const task = getDocument({ data: Uint8Array.from(pdf), verbosity: 0 });
  try {
    const document = await task.promise;
    if (document.numPages !== 1) throw new Error(`It has ${document.numPages} pages.`);
    const page = await document.getPage(1);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent();
    const info = (await document.getMetadata()).info as Info;
    const acts = {
      annotations: (await page.getAnnotations()).length > 0,
      scripts: (await document.getJSActions()) !== null || (await page.getJSActions()) !== null,
      'an action when it is opened': (await document.getOpenAction()) !== null,
      files: (await document.getAttachments()) !== null,
    };
    return {
      width: ((right - left) * page.userUnit * 25.4) / 72,
      height: ((top - bottom) * page.userUnit * 25.4) / 72,
      text: items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join(''),
      title: info.Title ?? '',
      author: info.Author ?? '',
      subject: info.Subject ?? '',
      acts: Object.entries(acts).flatMap(([kind, there]) => (there ? [kind] : [])),
    };
  } finally {
    await task.destroy();
  }
}
