import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

const AIR = 'colour  air #8ea4b8 dominant';
const BRICK = 'colour  brick #a8602c complement';
const CLAY = 'colour  clay #c58a5a complement';

/** Three bands over 100 x 50 cm, of which none has the complement yet. */
function advice(...palette: readonly string[]): readonly (string | undefined)[] {
  const text = `canvas  100 x 50 cm
budget  colour dominant 84%, complement 16% within 2%
${palette.join('\n')}
object  sky
  shape   rectangle (0, 0) to (100, 30)
  colour  air
object  wall
  shape   rectangle (0, 30) to (100, 42)
  colour  air
object  path
  shape   rectangle (0, 42) to (100, 50)
  colour  air`;
  return checked(text).findings.flatMap(({ rule, advice: told }) => (rule === 'colour budget' ? [told] : []));
}

describe('an object given another colour', () => {
  it('takes of several that cover as much the darker one, whatever they are called and in whatever order', () => {
    const told = advice(AIR, BRICK, CLAY);
    expect(told).not.toEqual([]);
    for (const sentence of told) expect(sentence).toContain('Give `path` (16 %) the colour `brick`');
    expect(advice(CLAY, AIR, BRICK)).toEqual(told);
    const renamed = [BRICK.replace('brick', 'umber'), CLAY.replace('clay', 'amber'), AIR];
    expect(advice(...renamed)).toEqual(told.map((sentence) => sentence?.replaceAll('brick', 'umber')));
  });
});
