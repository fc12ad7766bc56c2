import { describe, expect, it } from 'vitest';
import type { Mark, Scene } from '../../server/drawing/scene.js';
import { abilitiesOf } from '../../server/language/abilities.js';
import { createLanguageService } from '../../server/language/service.js';
import { receiveInPage } from './messages.js';
import { findingNumbers, withoutFindingsList } from './plate.js';

const plan = `plan "Two jugs"
canvas 40 x 30 cm
object cloth
  shape  rectangle (0, 20) to lower right corner
  value  2
object spoon
  plane  background
  shape  rectangle (22, 12) to (25, 15)
  value  4
object jug, dominant
  shape  rectangle (20, 8) to (28, 22)
  value  5
focus  upper left
`;

/** As the server draws it. */
function drawn(text: string): Scene {
  const service = createLanguageService({
    abilities: abilitiesOf({}),
    fetchFile: () => Promise.resolve({ ok: false, reason: 'There are no files here.' }),
    folders: () => [],
    planChanged: () => undefined,
    failed: (what, error) => {
      throw new Error(what, { cause: error });
    },
  });
  service.open('file:///jugs.mahl', 1, text);
  const scene = service.scene('file:///jugs.mahl', 'drawing');
  if (scene === undefined) throw new Error('There is no scene.');
  return scene;
}

const scene = drawn(plan);
const captionsOf = ({ layers }: Scene): readonly Mark[] =>
  layers.find(({ name }) => name === 'captions')?.marks ?? [];
const lowest = (marks: readonly Mark[]) =>
  Math.max(...marks.map((mark) => (mark.kind === 'text' ? mark.y : 0)));
const messages = (marks: readonly Mark[]) =>
  marks.filter(({ subject }) => subject !== undefined && scene.subjects[subject]?.kind === 'finding');

describe('the sheet of a preview', () => {
  const cut = withoutFindingsList(scene);

  it('leaves the list of findings to the page', () => {
    expect(messages(captionsOf(scene)).length).toBeGreaterThan(0);
    expect(messages(captionsOf(cut))).toEqual([]);
  });

  it('keeps the lines that are told of anything else', () => {
    const line: Mark = {
      kind: 'text',
      key: 'object:jug:line:0',
      subject: 'object:jug',
      text: 'PB29',
      x: 0,
      y: 40,
      size: 1,
      anchor: 'start',
      face: 'text',
      ink: 'quiet',
    };
    const layers = scene.layers.map((layer) =>
      layer.name === 'captions' ? { ...layer, marks: [...layer.marks, line] } : layer,
    );
    expect(captionsOf(withoutFindingsList({ ...scene, layers }))).toContain(line);
  });

  it('ends below the captions that are left', () => {
    const bottom = cut.sheet.y + cut.sheet.height;
    expect(bottom).toBeLessThan(scene.sheet.y + scene.sheet.height);
    expect(bottom).toBeGreaterThan(lowest(captionsOf(cut)));
  });

  it('keeps all that stands on the picture', () => {
    const rest = (each: Scene) => each.layers.filter(({ name }) => name !== 'captions');
    expect(rest(cut)).toEqual(rest(scene));
  });

  it('is the whole sheet when nothing was found', () => {
    const clean = drawn('canvas 40 x 30 cm\n');
    expect(withoutFindingsList(clean)).toBe(clean);
  });

  it('is a scene that the page accepts', () => {
    expect(receiveInPage({ type: 'scene', epoch: 1, version: 1, scene: cut })).toMatchObject({ ok: true });
  });
});

describe('the numbers of findings', () => {
  it('are those that stand in the picture', () => {
    const numbers = [...findingNumbers(scene)];
    expect(numbers.length).toBeGreaterThan(0);
    for (const [subject, number] of numbers) {
      expect(scene.subjects[subject]?.kind).toBe('finding');
      expect(number).toMatch(/^\d+$/);
    }
  });
});
