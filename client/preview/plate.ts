import type { Mark, Scene } from '../../server/drawing/scene.js';

/**
 * The scene without the list of findings at the foot of its sheet, and the sheet cut off there: a preview has the
 * same list below the drawing, as text that can be gone through, clicked and read aloud.
 */
export function withoutFindingsList(scene: Scene): Scene {
  const captions = scene.layers.find(({ name }) => name === 'captions')?.marks ?? [];
  const heading = captions.find((mark) => mark.key === 'findings:heading');
  if (heading?.kind !== 'text') return scene;
  const bottom = heading.y - 1.5 * scene.em;
  return {
    ...scene,
    sheet: { ...scene.sheet, height: bottom - scene.sheet.y },
    layers: scene.layers.map((layer) =>
      layer.name === 'captions'
        ? { ...layer, marks: layer.marks.filter((mark) => !isListed(mark, scene)) }
        : layer,
    ),
  };
}

function isListed({ key, subject }: Mark, { subjects }: Scene): boolean {
  if (key.startsWith('findings:')) return true;
  if (subject === undefined || subjects[subject]?.kind !== 'finding') return false;
  return key.startsWith(`${subject}:listed`) || key.startsWith(`${subject}:line:`);
}

/** The numbers that findings bear in the picture, by the key of their subject. */
export function findingNumbers(scene: Scene): ReadonlyMap<string, string> {
  const marks = scene.layers.find(({ name }) => name === 'findings')?.marks ?? [];
  return new Map(
    marks.flatMap((mark) =>
      mark.kind === 'text' && mark.subject !== undefined ? [[mark.subject, mark.text] as const] : [],
    ),
  );
}
