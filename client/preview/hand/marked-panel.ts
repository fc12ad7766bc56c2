import { t } from '../../../grammar/localised.js';
import type { Handling, Hex, Painted } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { element } from '../elements.js';

export interface MarkedPanelHost {
  readonly write: (change: HandChange) => void;
  /** Shows what a colour would do while it is being chosen. */
  readonly attempt: (change: HandChange) => void;
  readonly letGo: () => void;
}

/** What is marked in the drawing. */
export interface MarkedThing {
  readonly subject: string;
  readonly kind: 'object' | 'focus' | 'other';
  readonly name: string;
}

/** Value and colour of the object that is marked, or the crossing of the focal point, to be chosen. */
export class MarkedPanel {
  readonly section = element('div', {
    class: 'hand-marked',
    role: 'group',
    'aria-label': t('What is marked'),
  });
  readonly #host: MarkedPanelHost;
  /** What is shown, so that the same controls stay as long as they fit. */
  #shown = '';

  constructor(host: MarkedPanelHost) {
    this.#host = host;
    this.show(undefined, undefined);
    new ResizeObserver(() => this.#fit()).observe(this.section);
  }

  show(thing: MarkedThing | undefined, handling: Handling | undefined): void {
    const painted = thing === undefined ? undefined : handling?.painted[thing.subject];
    const offered =
      thing?.kind === 'focus'
        ? handling?.guides.crossings.map(({ name }) => name)
        : [handling?.tones, handling?.colours];
    const content = JSON.stringify([thing, painted, offered]);
    if (content === this.#shown) return;
    this.#shown = content;
    const focused = this.section.contains(document.activeElement)
      ? labelOf(document.activeElement)
      : undefined;
    this.section.replaceChildren(...this.#parts(thing, painted, handling));
    this.#fit();
    if (focused !== undefined) this.#refocus(focused);
  }

  /**
   * Where there is no room for the names of all colours, only the chosen one has its; swatches tell theirs when pointed
   * at.
   */
  #fit(): void {
    const { section } = this;
    section.classList.remove('tight');
    section.classList.toggle('tight', section.scrollWidth > section.clientWidth);
  }

  #parts(
    thing: MarkedThing | undefined,
    painted: Painted | undefined,
    handling: Handling | undefined,
  ): readonly HTMLElement[] {
    if (handling === undefined)
      return [
        element('span', { class: 'hint' }, t('Nothing is changed by hand here; a click selects the words')),
      ];
    if (thing === undefined)
      return [element('span', { class: 'hint' }, t('Click a thing in the drawing to change it'))];
    const name = element('span', { class: 'name', title: thing.name }, thing.name);
    if (thing.kind === 'focus') return [name, ...this.#crossings(handling)];
    if (thing.kind === 'other' || painted === undefined) return [name];
    return [name, this.#tones(thing, painted, handling), this.#colours(thing, painted, handling)];
  }

  #tones({ subject, name }: MarkedThing, { step: current }: Painted, { tones }: Handling): HTMLElement {
    const group = element('fieldset', { class: 'tones', 'aria-label': t('Value of {0}', name) });
    group.append(element('legend', {}, t('Value')));
    tones.forEach((hex, index) => {
      const step = index + 1;
      const choose = () => this.#host.write({ kind: 'value', subject, step });
      group.append(
        choice('step', String(step), step === current, hex, t('step {0} of {1}', step, tones.length), choose),
      );
    });
    if (current !== undefined && !Number.isInteger(current))
      group.append(element('span', { class: 'hint' }, String(Number(current.toFixed(2)))));
    return group;
  }

  #colours({ subject, name }: MarkedThing, { colour: current }: Painted, { colours }: Handling): HTMLElement {
    const group = element('fieldset', { class: 'colours', 'aria-label': t('Colour of {0}', name) });
    group.append(element('legend', {}, t('Colour')));
    for (const { name: colour, hex } of colours) {
      const isCurrent = current !== undefined && 'name' in current && current.name === colour;
      const choose = () => this.#host.write({ kind: 'colour', subject, colour });
      group.append(choice('colour', '', isCurrent, hex, colour, choose, colour));
    }
    group.append(this.#ownColour(subject, current, colours));
    return group;
  }

  #ownColour(subject: string, current: Painted['colour'], colours: Handling['colours']): HTMLElement {
    const hex =
      current === undefined
        ? undefined
        : 'hex' in current
          ? current.hex
          : colours.find(({ name }) => name === current.name)?.hex;
    const input = element('input', {
      type: 'color',
      'aria-label': t('A colour of its own'),
      title: t('A colour of its own'),
    });
    input.value = sixDigits(hex ?? '#808080');
    const shown = input.value;
    input.addEventListener('input', () =>
      this.#host.attempt({ kind: 'colour', subject, colour: input.value }),
    );
    input.addEventListener('change', () => {
      if (input.value === shown) this.#host.letGo();
      else this.#host.write({ kind: 'colour', subject, colour: input.value });
    });
    return element('label', {}, input, element('span', { class: 'word' }, t('own')));
  }

  #crossings({ guides }: Handling): readonly HTMLElement[] {
    // The focal point is a guide itself, but no crossing to put it on.
    const crossings = guides.crossings.filter(({ name }) => name !== 'focal point');
    if (crossings.length === 0) return [];
    const list = element('select', { 'aria-label': t('Crossing of the focal point') });
    list.append(element('option', { value: '' }, t('Put it on a crossing …')));
    for (const { name } of crossings) list.append(element('option', { value: name }, name));
    list.addEventListener('change', () => {
      if (list.value !== '') this.#host.write({ kind: 'crossing', name: list.value });
    });
    return [list];
  }

  /** Controls are made anew when the plan is another; the one that was in use keeps the focus. */
  #refocus(label: string): void {
    const controls = [...this.section.querySelectorAll('input, select')];
    const same = controls.find((control) => labelOf(control) === label);
    if (same instanceof HTMLElement) same.focus();
  }
}

function choice(
  group: string,
  figure: string,
  isChosen: boolean,
  hex: Hex,
  name: string,
  chosen: () => void,
  word?: string,
): HTMLElement {
  const button = element('input', { type: 'radio', name: group, 'aria-label': name });
  button.checked = isChosen;
  button.addEventListener('change', chosen);
  const swatch = element('span', { class: 'swatch', 'aria-hidden': 'true' }, figure);
  swatch.style.backgroundColor = hex;
  swatch.style.color = isPale(hex) ? '#000000' : '#ffffff';
  return element(
    'label',
    { title: name },
    button,
    swatch,
    ...(word === undefined ? [] : [element('span', { class: 'word', 'aria-hidden': 'true' }, word)]),
  );
}

function labelOf(control: Element | null): string | undefined {
  return control?.getAttribute('aria-label') ?? undefined;
}

/** What an `<input type="color">` takes: no short forms, no opacity. */
function sixDigits(hex: Hex): string {
  const digits = hex.slice(1);
  const long =
    digits.length < 6 ? [...digits.slice(0, 3)].map((digit) => digit + digit).join('') : digits.slice(0, 6);
  return `#${long.toLowerCase()}`;
}

/** Whether black letters stand out from a colour better than white ones: relative luminance of WCAG 2.2 above 0.18. */
function isPale(hex: Hex): boolean {
  const digits = sixDigits(hex).slice(1);
  const [r = 0, g = 0, b = 0] = [0, 2, 4]
    .map((at) => parseInt(digits.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b > 0.18;
}
