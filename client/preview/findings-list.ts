import type { Scene } from '../../server/drawing/scene.js';
import type { Location } from '../../server/plan/plan.js';
import { element } from './elements.js';
import { type FindingRow, announcement, findingRows, messagePieces, summary } from './findings.js';
import { severityWords } from './items.js';
import type { ListedFinding } from './messages.js';

/** Long enough to finish a word: a reader is not told what was found in half of it. */
const quietMs = 1_200;

export interface FindingsListHost {
  readonly reveal: (location: Location) => void;
  /** The marks that belong to the row under the pointer or the focus. */
  readonly point: (subjects: readonly string[]) => void;
}

/** What was found, as a list below the drawing, and a live region that says what changes in it. */
export class FindingsList {
  readonly section: HTMLElement;
  readonly live = element('div', { class: 'spoken', role: 'status' });
  readonly #host: FindingsListHost;
  readonly #count = element('p', { class: 'count' });
  readonly #list = element('ul');
  #findings: readonly ListedFinding[] = [];
  #scene: Scene | undefined;
  #line: number | null = null;
  /** What was last said, or stood there first: `undefined` until then. */
  #said: readonly ListedFinding[] | undefined;
  #timer: number | undefined;

  constructor(host: FindingsListHost) {
    this.#host = host;
    const heading = element('h2', { id: 'findings' }, 'Findings');
    this.section = element(
      'section',
      { class: 'findings', 'aria-labelledby': 'findings', hidden: '' },
      element('header', {}, heading, this.#count),
      this.#list,
    );
  }

  show(findings: readonly ListedFinding[]): void {
    this.#findings = findings;
    this.#fill();
    this.#said ??= findings;
    window.clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#say(), quietMs);
  }

  /** The drawing knows which marks belong to a finding. */
  connect(scene: Scene): void {
    this.#scene = scene;
    if (this.#said !== undefined) this.#fill();
  }

  markLine(line: number | null): void {
    this.#line = line;
    for (const row of this.#list.children) {
      const here = row.getAttribute('data-line') === String(line);
      if (here) row.setAttribute('aria-current', 'true');
      else row.removeAttribute('aria-current');
    }
  }

  #fill(): void {
    const focused = [...this.#list.querySelectorAll('button')].indexOf(
      document.activeElement as HTMLButtonElement,
    );
    this.#count.textContent = summary(this.#findings);
    this.#list.replaceChildren(...findingRows(this.#findings, this.#scene).map((row) => this.#row(row)));
    this.section.hidden = false;
    if (focused >= 0) this.#list.querySelectorAll('button').item(focused)?.focus();
    this.markLine(this.#line);
  }

  #row({ severity, message, advice, number, location, subjects }: FindingRow): HTMLLIElement {
    const button = element(
      'button',
      { type: 'button', class: severity },
      element('span', { class: 'sign', 'aria-hidden': 'true' }, number ?? ''),
      element(
        'span',
        { class: 'said' },
        element('span', { class: 'weight' }, `${severityWords[severity]}: `),
        ...worded(message),
        ...(advice === undefined ? [] : [' ', element('span', { class: 'advice' }, ...worded(advice))]),
      ),
      element('span', { class: 'place' }, `line ${location.line + 1}`),
    );
    button.addEventListener('click', () => this.#host.reveal(location));
    for (const event of ['pointerenter', 'focus']) {
      button.addEventListener(event, () => this.#host.point(subjects));
    }
    for (const event of ['pointerleave', 'blur']) button.addEventListener(event, () => this.#host.point([]));
    return element('li', { 'data-line': String(location.line) }, button);
  }

  #say(): void {
    const text = announcement(this.#said ?? [], this.#findings);
    this.#said = this.#findings;
    if (text !== undefined) this.live.textContent = text;
  }
}

function worded(message: string): readonly (HTMLElement | string)[] {
  return messagePieces(message).map(({ text, quoted }) => (quoted ? element('q', {}, text) : text));
}
