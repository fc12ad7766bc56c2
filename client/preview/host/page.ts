import type { Sentences } from '../../../grammar/localised.js';

/** What differs from one page to another. */
export interface PageParts {
  /** `webview.cspSource`: where local resources come from. */
  readonly cspSource: string;
  readonly nonce: string;
  /** URIs as the page can fetch them. */
  readonly scriptUri: string;
  readonly styleUri: string;
  /** Of the page, for screen readers. */
  readonly title: string;
  /** The language of its words, as in `vscode.env.language`, with those that are not English. */
  readonly language: string;
  readonly sentences: Sentences | undefined;
  /** The state that the page hands back when the window is opened again, as JSON. */
  readonly state: string;
}

/**
 * The page's content security policy: our one script, our one style sheet, pictures that the page has made itself,
 * nothing else. Colours and places are set through attributes and the CSSOM, which need no inline styles.
 */
export function contentSecurityPolicy({ cspSource, nonce }: Pick<PageParts, 'cspSource' | 'nonce'>): string {
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${cspSource}`,
    // The sketch under the drawing, which the page makes itself; no address can be named by a plan.
    'img-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/** The page of a preview. It holds no word of the plan: those come as messages and reach it as text nodes. */
export function pageHtml(parts: PageParts): string {
  const { nonce, scriptUri, styleUri, state, title, language, sentences } = parts;
  const words =
    sentences === undefined ? '' : ` data-sentences="${escapeAttribute(JSON.stringify(sentences))}"`;
  return `<!DOCTYPE html>
<html lang="${escapeAttribute(sentences === undefined ? 'en' : language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escapeAttribute(contentSecurityPolicy(parts))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeAttribute(title)}</title>
<link rel="stylesheet" href="${escapeAttribute(styleUri)}">
</head>
<body data-state="${escapeAttribute(state)}"${words}>
<script nonce="${escapeAttribute(nonce)}" src="${escapeAttribute(scriptUri)}"></script>
</body>
</html>
`;
}

/** 128 random bits for a `nonce`, from the source that both node and browsers have for secrets. */
export function createNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function escapeAttribute(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('"', '&quot;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
}
