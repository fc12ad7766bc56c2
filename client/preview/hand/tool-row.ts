import { said, t } from '../../../grammar/localised.js';
import { element, svgElement } from '../elements.js';
import { type Tool, toolWord, tools } from './draft.js';
import { instruction } from './drawing-new.js';
import { help } from './keys.js';

export interface ToolRowHost {
  readonly snaps: boolean;
  /** A tool is taken in hand, or laid down; by a key rather than a pointer. */
  readonly take: (tool: Tool | undefined, byKeys: boolean) => void;
  readonly snap: (snaps: boolean) => void;
}

const icons: Readonly<Record<Tool | 'snap', string>> = {
  rectangle: 'M2.5 4h11v8h-11z',
  ellipse: 'M2 8a6 4.2 0 1 0 12 0a6 4.2 0 1 0-12 0z',
  outline: 'M2.8 11.2L5 3.4L11.2 2.6L13.4 8.4L8.6 13.4Z',
  lead: 'M2 13.4C6.4 12.6 6 5 12.6 4.2M9.4 2.2l3.4 2-2 3.4',
  snap: 'M1.5 6h6M12.5 6h2M10 1.5v2M10 8.5v6M7.5 6a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0-5 0',
};

/** The tools to draw with, whether things snap, and what keys there are. */
export class ToolRow {
  readonly group: HTMLElement;
  readonly #host: ToolRowHost;
  readonly #buttons = new Map<Tool, HTMLButtonElement>();

  constructor(host: ToolRowHost) {
    this.#host = host;
    this.group = element('div', { class: 'hand-tools', role: 'group', 'aria-label': t('Draw by hand') });
    this.group.append(element('span', { class: 'of', 'aria-hidden': 'true' }, t('Draw')));
    for (const tool of tools) {
      const button = iconButton(t('Draw: {0}', toolWord(tool)), icons[tool], instruction(tool));
      button.addEventListener('click', ({ detail }) => {
        const isTaken = button.getAttribute('aria-pressed') === 'true';
        // A click that a key makes counts no presses of a pointer.
        this.#host.take(isTaken ? undefined : tool, detail === 0);
      });
      this.#buttons.set(tool, button);
      this.group.append(button);
    }
    this.group.append(this.#snap(), ...helpParts());
    this.choose(undefined);
  }

  choose(taken: Tool | undefined): void {
    for (const [tool, button] of this.#buttons) button.setAttribute('aria-pressed', String(tool === taken));
  }

  /** Whether there is anything to draw on. */
  enable(isOn: boolean): void {
    for (const button of this.#buttons.values()) button.disabled = !isOn;
  }

  #snap(): HTMLButtonElement {
    const button = iconButton(
      t('Snap to the division'),
      icons.snap,
      t(
        'Snap to division lines, crossings and the focal point. Ctrl, or Cmd, while you drag lets nothing snap',
      ),
    );
    button.setAttribute('aria-pressed', String(this.#host.snaps));
    button.addEventListener('click', () => {
      const snaps = button.getAttribute('aria-pressed') !== 'true';
      button.setAttribute('aria-pressed', String(snaps));
      this.#host.snap(snaps);
    });
    return button;
  }
}

function helpParts(): readonly HTMLElement[] {
  const list = element('dl');
  for (const [key, does] of help) list.append(element('dt', {}, said(key)), element('dd', {}, said(does)));
  const panel = element(
    'div',
    {
      class: 'hand-help',
      popover: '',
      id: 'hand-help',
      role: 'group',
      'aria-label': t('Working by hand'),
    },
    element('h2', {}, t('Working by hand')),
    list,
  );
  const button = element(
    'button',
    {
      type: 'button',
      class: 'hand-button',
      popovertarget: 'hand-help',
      'aria-label': t('Keys'),
      title: t('Keys'),
    },
    '?',
  );
  return [button, panel];
}

function iconButton(name: string, d: string, tip: string): HTMLButtonElement {
  const svg = svgElement('svg', { viewBox: '0 0 16 16', 'aria-hidden': 'true' });
  svg.append(svgElement('path', { d }));
  return element('button', { type: 'button', class: 'hand-button', 'aria-label': name, title: tip }, svg);
}
