import type { Scene, Subject } from '../../../server/drawing/scene.js';

/** Something that can be found by its name. */
export interface Findable {
  /** Of its subject in the scene. */
  readonly key: string;
  readonly kind: 'object' | 'lead' | 'paint' | 'sitting';
  readonly name: string;
}

/** The objects, leads, paints and sittings that are drawn, in the order of the text. */
export function findables({ layers, subjects }: Scene): readonly Findable[] {
  const drawn = new Set(layers.flatMap(({ marks }) => marks.map(({ subject }) => subject)));
  return Object.entries(subjects)
    .flatMap(([key, subject]) => (hasName(subject) && drawn.has(key) ? [{ key, subject }] : []))
    .sort((a, b) => a.subject.location.line - b.subject.location.line)
    .map(({ key, subject: { kind, name } }) => ({ key, kind, name }));
}

function hasName(subject: Subject): subject is Extract<Subject, { readonly kind: Findable['kind'] }> {
  switch (subject.kind) {
    case 'object':
    case 'lead':
    case 'paint':
    case 'sitting':
      return true;
    default:
      return false;
  }
}

/**
 * Those whose name holds what was typed, in whatever case; first those that begin with it, then those of which a word
 * does. All of them when nothing was typed.
 */
export function matching(all: readonly Findable[], typed: string): readonly Findable[] {
  const part = alike(typed).trim();
  if (part === '') return all;
  const ranked = all.flatMap((each) => {
    const at = placesIn(alike(each.name), part);
    return at === undefined ? [] : [{ each, at }];
  });
  return ranked.sort((a, b) => a.at - b.at).map(({ each }) => each);
}

/** 0 at the beginning, 1 at the beginning of a word, 2 elsewhere. */
function placesIn(name: string, part: string): 0 | 1 | 2 | undefined {
  if (name.startsWith(part)) return 0;
  if (name.includes(` ${part}`)) return 1;
  return name.includes(part) ? 2 : undefined;
}

/** One spelling for letters that differ in case, width or composition only. Capitals, as Σ has one and σ, ς are two. */
function alike(text: string): string {
  return text.normalize('NFKC').toUpperCase().normalize('NFC').replaceAll(/\s+/gu, ' ');
}
