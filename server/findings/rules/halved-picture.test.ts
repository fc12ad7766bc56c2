import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function halved(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'halved picture');
}

const CANVAS = 'canvas  60 x 40 cm';
const FIELDS = (level: number, value = 3) =>
  `object  sky
  plane   background
  shape   rectangle (0, 0) to (60, ${level})
  value   4
object  stubble
  plane   background
  shape   rectangle (0, ${level}) to (60, 40)
  value   ${value}`;

// Common practice, no source.
describe('a horizon', () => {
  it.each([
    [20, 1],
    [21.2, 1],
    [18.8, 1],
    [21.3, 0],
    [18.7, 0],
  ])('at %f of 40 cm: %i', (level, found) => {
    expect(halved(`${CANVAS}\nhorizon ${level}`)).toHaveLength(found);
  });

  it('is told with the level that lies nearest', () => {
    const [finding] = halved(`${CANVAS}\ndivide  golden, thirds\nhorizon 19`);
    expect(finding?.message).toBe(
      'The horizon lies only 1 cm off half height, 19 cm from the top, and cuts the picture in half; more than 1.2 cm (3 % of the height) off, it does not.',
    );
    expect(finding?.advice).toBe('Raise it to 15.3 cm from the top, a level of `golden`.');
  });

  it.each([
    ['upper right', 'Lower', 'horizon 2/3'],
    ['lower right', 'Raise', 'horizon 1/3'],
  ])('right in the middle goes away from the focal point %s', (focus, way, mendedTo) => {
    const text = `${CANVAS}\ndivide  thirds\nfocus   ${focus}\nhorizon 1/2`;
    const [finding] = halved(text);
    expect(finding?.message).toContain('at half height');
    expect(finding?.advice).toContain(way);
    expect(mended(text, finding?.fix ?? { edits: [] })).toContain(mendedTo);
  });

  it.each(['diagonals', 'own\n  uprights 10', 'armature', 'root 5'])(
    'goes to a level of the golden section where `divide %s` has none',
    (system) => {
      const text = `${CANVAS}\ndivide  ${system}\nhorizon 20.5`;
      const [finding] = halved(text);
      expect(finding?.advice).toMatch(/ a level of `(golden|root 5)`\.$/);
      expect(halved(mended(text, finding?.fix ?? { edits: [] }))).toEqual([]);
    },
  );

  it('is told with all borders that are drawn there', () => {
    const strip =
      'object  strip\n  plane   background\n  shape   rectangle (0, 19.8) to (60, 20.2)\n  value   5';
    const [finding] = halved(`${CANVAS}\nhorizon 20\n${FIELDS(20)}\n${strip}`);
    expect(finding?.advice).toContain(
      'Draw the border between `sky` and `strip` and the border between `strip` and `stubble` there, and write',
    );
  });

  it('is told once with the border that is drawn there, which no edit of its line moves', () => {
    const [finding, ...others] = halved(`${CANVAS}\nhorizon 20\n${FIELDS(20.3)}`);
    expect(others).toEqual([]);
    expect(finding?.message).toContain('The horizon lies at half height');
    expect(finding?.advice).toBe(
      'Lower it to 24.7 cm from the top, a level of `golden`. Draw the border between `sky` and `stubble` there, and write `horizon 61.8%`.',
    );
    expect(finding?.objects).toEqual([0, 1]);
    expect(finding?.fix).toBeUndefined();
  });

  it('and a border 1 % of the height from it are two', () => {
    const count = (level: number) => halved(`${CANVAS}\nhorizon 20\n${FIELDS(level)}`).length;
    expect([20.39, 20.41].map(count)).toEqual([1, 2]);
    const [horizon] = halved(`${CANVAS}\nhorizon 20\n${FIELDS(20.8)}`);
    expect(horizon?.fix).toBeDefined();
  });

  it('stated elsewhere does not lift a border that is drawn at half height', () => {
    expect(halved(`${CANVAS}\nhorizon 12\n${FIELDS(20)}`).map(({ message }) => message)).toEqual([
      expect.stringMatching(/^The border between `sky` and `stubble` lies at half height/),
    ]);
    expect(halved(`${CANVAS}\nhorizon 20\n${FIELDS(12)}`)).toHaveLength(1);
  });
});

describe('without a horizon', () => {
  it('a level border between two objects of the background is one', () => {
    const [finding, ...others] = halved(`${CANVAS}\n${FIELDS(20.4)}`);
    expect(finding?.message).toMatch(
      /^The border between `sky` and `stubble` lies only 0\.4 cm off half height/,
    );
    expect(finding?.objects).toEqual([0, 1]);
    expect(others).toEqual([]);
  });

  it('is found where one lies over the other', () => {
    const over = `object  sky
  plane   background
  shape   rectangle (0, 0) to (60, 40)
  value   4
object  stubble
  plane   background
  shape   rectangle (-1, 20) to (61, 44)
  value   2`;
    expect(halved(`${CANVAS}\n${over}`)).toHaveLength(1);
  });

  it('is told once where two edges all but meet', () => {
    expect(
      halved(`${CANVAS}\n${FIELDS(20).replace('rectangle (0, 20)', 'rectangle (0, 19.99)')}`),
    ).toHaveLength(1);
  });

  it.each([
    ['far from the middle', FIELDS(15)],
    ['that is not seen, both on one step', FIELDS(20, 4)],
    ['with bare ground in it', FIELDS(20).replace('to (60, 20)', 'to (60, 19)')],
    [
      'that is not level',
      FIELDS(20).replace('rectangle (0, 20) to (60, 40)', 'outline (0, 20) (60, 19.9) (60, 40) (0, 40)'),
    ],
    ['mostly hidden', `${FIELDS(20)}\nobject  rick\n  shape   rectangle (5, 10) to (50, 30)\n  value   1`],
    ['of what is not background', FIELDS(20).replaceAll('background', 'middle')],
    ['that does not reach from side to side', FIELDS(20).replaceAll('(60,', '(55,')],
  ])('a border %s is none', (_, fields) => {
    expect(halved(`${CANVAS}\n${fields}`)).toEqual([]);
  });
});
