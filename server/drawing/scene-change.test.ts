import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compose } from './compose.js';
import { type Scene, type View, views } from './scene.js';
import { changedScene, sceneChange } from './scene-change.js';
import { type Worked, doorwayPlan, worked } from './test-plans.js';

const plans = new Map<string, Worked>();

function drawn(text: string, view: View): Scene {
  const known = plans.get(text) ?? worked(text);
  plans.set(text, known);
  return compose(known.plan, known.measures, known.findings, view, { handling: true });
}

/** As it comes over a wire. */
function sent<T>(data: T): T {
  return JSON.parse(JSON.stringify(data)) as T;
}

function made(before: Scene, after: Scene): Scene | undefined {
  return changedScene(sent(before), sent(sceneChange(before, after)));
}

const lines = doorwayPlan.split('\n');
const firstObject = lines.findIndex((line) => line.startsWith('object'));
const secondObject = lines.findIndex((line, index) => index > firstObject && line.startsWith('object'));

const edited = {
  'a sentence': doorwayPlan.replace('a whole street', 'all of the street'),
  'a line more at the top': `// Wednesday\n${doorwayPlan}`,
  'an object less': lines.filter((_, index) => index < firstObject || index >= secondObject).join('\n'),
  'an object in front of all others': [
    ...lines.slice(0, firstObject),
    ...lines.slice(secondObject),
    ...lines.slice(firstObject, secondObject),
  ].join('\n'),
  'no objects': lines.slice(0, firstObject).join('\n'),
  nothing: '',
};

describe.each(Object.entries(edited))('what %s changes in a drawing', (_, text) => {
  it.each(views)('makes the new drawing of the old one, and back, in the view %s', (view) => {
    const before = drawn(doorwayPlan, view);
    const after = drawn(text, view);
    expect(made(before, after)).toEqual(sent(after));
    expect(made(after, before)).toEqual(sent(before));
    expect(Object.keys(made(before, after)?.subjects ?? {})).toEqual(Object.keys(after.subjects));
  });
});

it('leaves out what is as it was', () => {
  const before = drawn(doorwayPlan, 'drawing');
  const after = drawn(edited['a sentence'], 'drawing');
  const { layers, subjects, handling } = sceneChange(before, after);
  const { length } = after.layers.find(({ name }) => name === 'picture')?.marks ?? [];
  expect(layers.find(({ name }) => name === 'picture')?.marks).toEqual([{ kept: [0, length] }]);
  expect(subjects).toEqual([{ kept: [0, Object.keys(after.subjects).length] }]);
  expect(handling?.grips).toEqual([{ kept: [0, after.handling?.grips.length] }]);
});

it('keeps what is unchanged as the object that it was, so that it need not be drawn again', () => {
  const before = drawn(doorwayPlan, 'drawing');
  const after = changedScene(before, sent(sceneChange(before, drawn(edited['a sentence'], 'drawing'))));
  const pictures = [before, after].map(
    (scene) => scene?.layers.find(({ name }) => name === 'picture')?.marks,
  );
  expect(pictures[1]?.length).toBeGreaterThan(3);
  pictures[1]?.forEach((mark, index) => expect(mark).toBe(pictures[0]?.[index]));
});

it('makes any list of any other', () => {
  const scene = drawn('', 'drawing');
  const list = fc.uniqueArray(
    fc.record({ key: fc.stringMatching(/^[a-h]$/), text: fc.constantFrom('one', 'other') }),
    {
      selector: ({ key }) => key,
    },
  );
  const withMarks = (made: readonly { readonly key: string; readonly text: string }[]): Scene => ({
    ...scene,
    layers: [
      {
        name: 'names',
        marks: made.map(({ key, text }) => ({
          key,
          kind: 'text',
          text,
          x: 0,
          y: 0,
          size: 1,
          anchor: 'start',
          face: 'text',
          ink: 'ink',
        })),
      },
    ],
  });
  fc.assert(
    fc.property(list, list, (before, after) => {
      expect(made(withMarks(before), withMarks(after))).toEqual(sent(withMarks(after)));
    }),
  );
});

describe('a change that is not one of the scene', () => {
  const before = drawn(doorwayPlan, 'drawing');
  const change = sceneChange(before, before);

  it('makes nothing where it keeps more than there is', () => {
    expect(changedScene(drawn('', 'drawing'), change)).toBeUndefined();
  });

  it('makes nothing that is longer than any drawing', () => {
    const count = Object.keys(before.subjects).length;
    const again = Array.from({ length: 1_000_000 / count + 1 }, () => ({ kept: [0, count] as const }));
    expect(changedScene(before, { ...change, subjects: again })).toBeUndefined();
  });
});
