import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function merged(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'merged neighbours');
}

interface Scene {
  readonly canvas?: string;
  readonly role?: string;
  readonly cloth?: string;
  readonly jug?: string;
}

/** A jug of 12 x 12 cm on a cloth over the whole canvas of 40 x 30 cm: they meet along 48 cm of 50 cm diagonal. */
function scene({
  canvas = '',
  role = ', dominant',
  cloth = 'value   4',
  jug = 'value   4\n  edges   firm',
}: Scene): string {
  return `canvas  40 x 30 cm${canvas}
object  cloth
  shape   rectangle (0, 0) to (40, 30)
  ${cloth}
object  jug${role}
  shape   rectangle (10, 10) to (22, 22)
  ${jug}`;
}

// Common practice, no source.
describe('neighbours on one step', () => {
  it('merge where their edge is to be seen, and part by a step that merges them with nothing else', () => {
    const text = scene({});
    const [finding] = merged(text);
    expect(finding?.message).toBe(
      '`jug` and `cloth` are both on step 4 and meet along 48 cm, where the edge is to be firm. They merge there; up to 7.5 cm (15 % of the diagonal) is let pass.',
    );
    expect(finding?.advice).toBe(
      'Take `jug` one step down, to step 3; or let the edge go, with `edges lost against cloth` under `jug`.',
    );
    expect(merged(mended(text, finding?.fix ?? { edits: [] }))).toEqual([]);
  });

  it.each([
    ['edges that nobody has decided on', scene({ jug: 'value   4' })],
    ['soft edges', scene({ jug: 'value   4\n  edges   soft' })],
    ['edges lost against it', scene({ jug: 'value   4\n  edges   hard\n  edges   lost against cloth' })],
    ['another step', scene({ jug: 'value   3\n  edges   hard' })],
    ['half a step between them', scene({ jug: 'value   4.5\n  edges   hard' })],
    ['no value', scene({ jug: 'edges   hard' })],
  ])('are left alone with %s', (_, text) => {
    expect(merged(text)).toEqual([]);
  });

  it('count where the one behind says how its edge is', () => {
    const text = scene({ jug: 'value   4', cloth: 'value   4\n  edges   hard against jug' });
    expect(merged(text)[0]?.message).toContain('the edge is to be hard');
  });

  it('matter when one is a principal, or both are large', () => {
    expect(merged(scene({ role: '' }))).toHaveLength(1);
    const small = scene({ role: '' }).replace('(22, 22)', '(17, 17)');
    expect(merged(small)).toEqual([]);
    expect(merged(small.replace('object  jug', 'object  jug, secondary'))).toHaveLength(1);
  });

  it('of clearly different colours merge in black and white only, and that is said', () => {
    const text = scene({
      cloth: 'colour  10R 7/8\n  value   4',
      jug: 'colour  5B 7/6\n  value   4\n  edges   hard',
    });
    expect(merged(text)[0]?.message).toContain(
      'In black and white they merge there, and colour alone keeps them apart; up to',
    );
  });

  it('may lose their edge where the value budget holds both on their steps', () => {
    const text = scene({ canvas: '\nbudget  value 4 100% within 1%' });
    const [finding] = merged(text);
    expect(finding?.fix?.title).toBe('Lose the edge of `jug`');
    const after = mended(text, finding?.fix ?? { edits: [] });
    expect(after).toContain('edges   lost against cloth');
    expect(merged(after)).toEqual([]);
  });

  it.each([
    [4, 'one more'],
    [5, 'two more'],
  ])('are told three at most of %i, the last with the others', (count, rest) => {
    const jars = Array.from(
      { length: count },
      (_, n) =>
        `object  jar-${n}, secondary\n  shape   rectangle (${7 * n + 3}, 4) to (${7 * n + 7}, 9)\n  value   4\n  edges   hard`,
    );
    const findings = merged([scene({ jug: 'value   2' }), ...jars].join('\n'));
    const told = ` So it is with ${rest}: `;
    expect(findings.map(({ message }) => message.includes(told))).toEqual([false, false, true]);
  });
});
