import { t } from '../../../grammar/localised.js';
import type { Scene } from '../../../server/drawing/scene.js';
import type { Location } from '../../../server/plan/plan.js';
import { element } from '../elements.js';
import { type FindingRow, announcement, findingRows, messagePieces, summary } from './findings.js';
import { severityWord } from '../items.js';
import type { ListedFinding } from '../messages.js';

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
  readonly live = element('div', { class: 'spoken read-aloud', role: 'status' });
  readonly #host: FindingsListHost;
  readonly #count = element('p', { class: 'count' });
  readonly #list = element('ul');
  #findings: readonly ListedFinding[] = [];
  #rows: { readonly content: string; readonly item: HTMLLIElement }[] = [];
  #scene: Scene | undefined;
  #line: number | null = null;
  /** What was last said, or stood there first: `undefined` until then. */
  #said: readonly ListedFinding[] | undefined;
  #timer: number | undefined;

  constructor(host: FindingsListHost) {
    this.#host = host;
    const heading = element('h2', { id: 'findings' }, t('Findings'));
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
      if (row.getAttribute('data-line') === String(line)) row.setAttribute('aria-current', 'true');
      else row.removeAttribute('aria-current');
    }
  }

  /** Rows that say the same as before stay the same elements: they keep the focus, and a reader its place. */
  #fill(): void {
    const focused = this.#rows.findIndex(({ item }) => item.contains(document.activeElement));
    const focusedItem = this.#rows[focused]?.item;
    const count = summary(this.#findings);
    if (this.#count.textContent !== count) this.#count.textContent = count;
    const before = this.#rows;
    this.#rows = [];
    for (const row of findingRows(this.#findings, this.#scene)) {
      const content = JSON.stringify(row);
      const kept = before.findIndex((each) => each.content === content);
      const [same] = kept < 0 ? [] : before.splice(kept, 1);
      this.#rows.push(same ?? { content, item: this.#row(row) });
    }
    for (const { item } of before) item.remove();
    this.#rows.forEach(({ item }, index) => {
      const there = this.#list.children.item(index);
      if (item !== there) this.#list.insertBefore(item, there);
    });
    this.section.hidden = false;
    if (focusedItem !== undefined && !focusedItem.contains(document.activeElement)) {
      const next = focusedItem.isConnected ? focusedItem : this.#list.children.item(focused);
      next?.querySelector('button')?.focus();
    }
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
        element('span', { class: 'weight' }, `${severityWord(severity)}: `),
        ...worded(message),
        ...(advice === undefined ? [] : [' ', element('span', { class: 'advice' }, ...worded(advice))]),
      ),
      element('span', { class: 'place' }, t('line {0}', location.line + 1)),
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
