import type { Statement } from '../../grammar/index.js';

/** Words as they stand in codes and addresses: `value budget` is `value-budget`. */
export function slugOf(words: string): string {
  return words.replaceAll(' ', '-');
}

/** Where a statement is explained, by its keyword; nowhere for a server that has no reference. */
export function statementPage(reference: string | undefined, keyword: string): string | undefined {
  return page(reference, 'grammar/README.md', keyword);
}

/** Where a rule or a problem is explained, by its words; nowhere for a server that has no reference. */
export function findingPage(reference: string | undefined, words: string): string | undefined {
  return page(reference, 'server/findings/README.md', words);
}

/** The section that tells how what a statement is about is measured, by its kind; a budget has one for each subject. */
export const measureAnchors = {
  canvas: 'proportion-of-the-canvas',
  divide: 'division',
  focus: 'place-of-the-focal-point',
  'win by': 'the-six-means',
  scale: 'steps-and-groups',
  planes: 'planes',
  'value budget': 'steps-and-groups',
  'colour budget': 'colour-budget',
  wheel: 'hues',
  'colour definition': 'hues',
  object: 'visible-areas',
  plane: 'planes',
  edges: 'borders',
  detail: 'the-six-means',
  lead: 'leads',
  path: 'stops',
  palette: 'palette',
  paint: 'paints-and-primaries',
  mother: 'mixtures',
  tube: 'mixtures',
  glaze: 'glazes',
  sitting: 'drying',
  film: 'drying',
  layer: 'order-of-layers',
  fat: 'order-of-layers',
  photo: 'what-a-photograph-shows',
  grey: 'what-cant-be-trusted',
  grid: 'transfer-grid',
  sketch: 'proportion-of-the-sketch',
  due: 'the-due-date',
  away: 'the-due-date',
} as const;

/** Where it is told how what a statement is about is measured; nowhere for one that nothing is measured of. */
export function measurePage(reference: string | undefined, statement: Statement): string | undefined {
  const key = statement.kind === 'budget' ? (`${statement.of.choice} budget` as const) : statement.kind;
  return key in measureAnchors
    ? page(reference, 'server/measure/README.md', measureAnchors[key as keyof typeof measureAnchors])
    : undefined;
}

function page(reference: string | undefined, file: string, words: string): string | undefined {
  return reference === undefined ? undefined : `${reference.replace(/\/$/u, '')}/${file}#${slugOf(words)}`;
}
