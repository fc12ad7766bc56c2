import { describe, expect, it } from 'vitest';
import { objectNamed, planOf } from '../../tests/support/plan.js';
import { FINEST } from './fineness.js';
import type { Plan } from './plan.js';
import { toldBy } from './test-support.js';

const CANVAS = 'canvas  40 x 30 cm';
const POT = 'object  pot\n  shape   circle 2 at (34, 8)\n  value   2';

/** Small triangles beside each other, so many in all rows together. */
function flakes(count: number): string {
  const across = 200;
  const step = { x: 40 / across, y: 30 / Math.ceil(count / across) };
  return Array.from({ length: count }, (_, index) => {
    const [x, y] = [(index % across) * step.x, Math.floor(index / across) * step.y];
    return `M${x.toFixed(3)} ${y.toFixed(3)}l${(step.x / 2).toFixed(3)} 0l0 ${(step.y / 2).toFixed(3)}z`;
  }).join('');
}

/** A comb of 30 cm: each tooth has two lines of that length, give or take what `ragged` takes off its points. */
function comb(teeth: number, high = 30, ragged = 0): string {
  const lines = Array.from({ length: teeth }, (_, tooth) => {
    const [x, step] = [(40 * tooth) / teeth, 40 / teeth];
    const off = (ragged * ((tooth * 7919) % teeth)) / teeth;
    return `L${x.toFixed(5)} ${high - off}L${(x + step / 2).toFixed(5)} ${0.1 + off}`;
  });
  return `M0 0.1${lines.join('')}L40 0.1L40 0L0 0Z`;
}

function withShape(path: string, more = POT): Plan {
  return planOf(`${CANVAS}\n${more}\nobject  swarm\n  shape   path "${path}"\n  value   4`);
}

const drawn = ({ objects }: Plan) =>
  objects.filter(({ outline }) => outline.rings.length > 0).map(({ name }) => name);

describe('shapes that are too fine to be measured', () => {
  it('may have ten thousand parts together', () => {
    expect(toldBy(withShape(flakes(FINEST.parts - 1)))).toEqual([]);
    const plan = withShape(flakes(FINEST.parts));
    expect(plan.problems).toEqual([
      expect.objectContaining({
        severity: 'error',
        code: 'unreadable shape',
        message:
          '`swarm` has too many parts to be measured with the others, so it is not drawn: all shapes of a plan may have 10\u{202f}000 parts. Draw it with fewer.',
        location: objectNamed(plan, 'swarm').location,
      }),
    ]);
    expect(drawn(plan)).toEqual(['pot']);
  });

  it('may be a thousand diagonals of the canvas long together, of 50 cm here', () => {
    // 60 cm a tooth, and the pot and the back of the comb a metre.
    expect(toldBy(withShape(comb(830)))).toEqual([]);
    const plan = withShape(comb(840));
    expect(toldBy(plan)).toEqual([
      expect.stringMatching(/^`swarm` has too long an outline .* 1\u{202f}000 times/u),
    ]);
    expect(drawn(plan)).toEqual(['pot']);
  });

  it('are as long as they are within the canvas', () => {
    expect(toldBy(withShape(comb(840).replaceAll(/ 30(?=L)/g, ' 300')))).toHaveLength(1);
    expect(toldBy(withShape(comb(840).replaceAll(/([ML][\d.]+) /g, '$1 -')))).toEqual([]);
  });

  it('may have ten million lines level with points', () => {
    // Each tooth has two points at heights of its own and two lines that pass half of all on the average.
    expect(toldBy(withShape(comb(2_000, 4, 2)))).toEqual([]);
    const plan = withShape(comb(4_000, 4, 2));
    expect(toldBy(plan)).toEqual([
      expect.stringMatching(
        /^`swarm` has too many lines beside each other .* 10\u{202f}000\u{202f}000 times/u,
      ),
    ]);
    expect(drawn(plan)).toEqual(['pot']);
  });

  it('are refused from the back to the front, and what has room is drawn', () => {
    const part = (name: string, count: number, plane: string) =>
      `object  ${name}\n  shape   path "${flakes(count)}"\n  plane   ${plane}\n  value   4`;
    const plan = planOf(
      [
        CANVAS,
        part('snow', 6_000, 'foreground'),
        part('rain', 6_000, 'background'),
        part('hail', 3_000, 'foreground'),
      ].join('\n'),
    );
    expect(toldBy(plan)).toEqual([expect.stringMatching(/^`snow` has too many parts/)]);
    expect(drawn(plan)).toEqual(['rain', 'hail']);
  });
});
