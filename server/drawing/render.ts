import isSame from 'fast-deep-equal';
import { ClipPath, Defs, type Element, G, Image, Path, SVG, Text, type Svg } from '@svgdotjs/svg.js';
import {
  imageAttributes,
  pathAttributes,
  safeText,
  setAttributes,
  setText,
  textAttributes,
} from './attributes.js';
import { BlurFilter } from './blur.js';
import { CLIPPED, type Part, isShown, shownBox } from './parts.js';
import { number, rectanglePath } from './path-data.js';
import { type Mark, type PictureData, type Scene, layerNames } from './scene.js';
import { type ThemeName, textFamily } from './theme.js';

export interface RenderOptions {
  readonly theme: ThemeName;
  /** `sheet` unless said. */
  readonly part?: Part;
  /** Tells drawings on one page apart; `mahl` unless said. */
  readonly idPrefix?: string;
  /** `img`, the default, is one picture to a screen reader; `group` lets it go through the marks. */
  readonly role?: 'img' | 'group';
  /**
   * The address of a picture where one written out may not be shown; what it says is asked again when the mark is
   * another.
   */
  readonly addressOf?: (picture: PictureData) => string;
}

/** A drawing that is on a page or in a document. */
export interface Drawing {
  readonly svg: Svg;
  /** Draws another scene in place of the last: nodes whose mark is unchanged are left alone. */
  update(scene: Scene): void;
  /** The nodes that stand for a subject, back to front. */
  nodesOf(subject: string): readonly SVGElement[];
  remove(): void;
}

interface Drawn {
  mark: Mark;
  readonly element: Element;
}

interface Context {
  readonly options: RenderOptions;
  readonly em: number;
}

/** Draws marks that belong to no scene as the last child of `group`; `em` is what their stroke weights are parts of. */
export function renderMarks(group: G, marks: readonly Mark[], em: number, options: RenderOptions): void {
  patchLayer(group, new Map(), marks, { options, em }, false);
}

/** A pixel and more even where the sheet is shown small. */
const BLUR_BEYOND_EMS = 0.25;

/**
 * Draws a scene as the last child of `container`, with svg.js, in the window that svg.js is registered with.
 * Text of the plan reaches the document as text nodes and attribute values only.
 */
export function render(container: HTMLElement, scene: Scene, options: RenderOptions): Drawing {
  const prefix = options.idPrefix ?? 'mahl';
  const svg = SVG().addTo(container);
  svg.attr({
    role: options.role ?? 'img',
    'aria-labelledby': `${prefix}-title ${prefix}-description`,
    'font-family': textFamily,
  });
  const title = svg.element('title').attr('id', `${prefix}-title`);
  const description = svg.element('desc').attr('id', `${prefix}-description`);
  const clip = new Path();
  const defs = new Defs().addTo(svg);
  new ClipPath().attr('id', `${prefix}-picture`).add(clip).addTo(defs);
  const blur = new BlurFilter(defs, `${prefix}-blur`);

  const shown = layerNames.filter((name) => isShown(name, options.part));
  const layers = new Map(
    shown.map((name) => {
      const group = new G().addTo(svg);
      group.attr('data-layer', name);
      if (CLIPPED.has(name)) group.attr('clip-path', `url(#${prefix}-picture)`);
      return [name, { group, drawn: new Map<string, Drawn>() }] as const;
    }),
  );
  let previous: Scene | undefined;

  const update = (next: Scene): void => {
    if (next === previous) return;
    const context: Context = { options, em: next.em };
    const box = shownBox(next, options.part);
    setAttributes(svg, {
      viewBox: [box.x, box.y, box.width, box.height].map(number).join(' '),
      'data-view': next.view,
    });
    setText(title, safeText(next.title));
    setText(description, safeText(next.description));
    setAttributes(clip, { d: rectanglePath(next.picture) });
    for (const [name, { group, drawn }] of layers) {
      const layer = next.layers.find((each) => each.name === name);
      patchLayer(group, drawn, layer?.marks ?? [], context, previous?.em !== next.em);
      if (name === 'picture')
        setAttributes(group, {
          filter: blur.apply(next.picture, BLUR_BEYOND_EMS * next.em, layer?.blur),
        });
    }
    previous = next;
  };
  update(scene);

  return {
    svg,
    update,
    nodesOf: (subject) =>
      [...layers.values()].flatMap(({ drawn }) =>
        [...drawn.values()].filter(({ mark }) => mark.subject === subject).map(({ element }) => element.node),
      ),
    remove: () => void svg.remove(),
  };
}

function patchLayer(
  group: G,
  drawn: Map<string, Drawn>,
  marks: readonly Mark[],
  context: Context,
  allChanged: boolean,
): void {
  const wanted = new Map(
    marks.filter((mark) => isDrawn(mark, context.options)).map((mark) => [mark.key, mark]),
  );
  for (const [key, { mark, element }] of drawn) {
    if (wanted.get(key)?.kind === mark.kind) continue;
    element.remove();
    drawn.delete(key);
  }
  let next = group.node.firstChild;
  const kept = new Map<string, Drawn>();
  for (const [key, mark] of wanted) {
    const known = drawn.get(key);
    const element = known?.element ?? elementFor(mark);
    if (known === undefined || allChanged || !isSame(known.mark, mark)) applyMark(element, mark, context);
    if (element.node === next) next = next.nextSibling;
    else group.node.insertBefore(element.node, next);
    kept.set(key, { mark, element });
  }
  drawn.clear();
  for (const [key, entry] of kept) drawn.set(key, entry);
}

function elementFor({ kind }: Mark): Element {
  switch (kind) {
    case 'path':
      return new Path();
    case 'text':
      return new Text();
    case 'image':
      return new Image();
  }
}

function isDrawn(mark: Mark, options: RenderOptions): boolean {
  return options.part !== 'plain' || (mark.kind === 'path' && mark.fill !== undefined);
}

function applyMark(element: Element, mark: Mark, { options, em }: Context): void {
  const paper = { theme: options.theme, em };
  const plain = options.part === 'plain';
  const attributesOf = (drawn: Mark) => {
    switch (drawn.kind) {
      case 'path':
        return pathAttributes(drawn, plain ? undefined : drawn.stroke, paper);
      case 'text':
        return textAttributes(drawn, paper);
      case 'image':
        return imageAttributes(drawn, options.addressOf);
    }
  };
  setAttributes(element, {
    'data-key': safeText(mark.key),
    'data-subject': mark.subject === undefined ? undefined : safeText(mark.subject),
    ...attributesOf(mark),
  });
  // A path's own `clear` of svg.js forgets its points and leaves its children.
  while (element.node.firstChild !== null) element.node.firstChild.remove();
  if (mark.kind === 'text') (element as Text).plain(safeText(mark.text));
  if (mark.tip !== undefined && !plain) element.element('title').words(safeText(mark.tip));
}
