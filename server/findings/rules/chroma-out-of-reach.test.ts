import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import type { Finding } from '../finding.js';

function lost(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'chroma out of reach');
}

const bowl = (value: number, more = ''): string =>
  `canvas  40 x 30 cm\ncolour  cobalt 5PB 4/12\nobject  bowl\n  shape   circle 9\n  colour  cobalt\n  value   ${value}${more}`;

describe('a colour at a value', () => {
  it('is told with the chroma that a screen can show there, which is what is drawn', () => {
    const { plan } = checked(bowl(5));
    const [finding] = lost(bowl(5));
    const shown = plan.objects[0]?.painted;
    const chroma = shown && toMunsell(shown).chroma;
    expect(finding?.message).toBe(
      `\`cobalt\` has chroma 12; at value 5, where \`bowl\` is painted, a screen can show ${chroma?.toFixed(1)} of it, and paint may differ. Up to 40 % less is let pass.`,
    );
  });

  it('is said nothing of where most of the chroma can be had', () => {
    expect([1, 2, 3, 4, 5].map((value) => lost(bowl(value)).length)).toEqual([1, 0, 0, 0, 1]);
  });

  it('goes to the nearest step that has room for it', () => {
    const [finding] = lost(bowl(5));
    expect(finding?.fix?.title).toBe('Take `bowl` to step 4');
    expect(lost(mended(bowl(5), finding?.fix ?? { edits: [] }))).toEqual([]);
  });

  it('keeps its value where the budget asks for it', () => {
    const [finding] = lost(`${bowl(5)}\nbudget  value 5 5%, 4 0% within 1%`);
    expect(finding?.fix).toBeUndefined();
    expect(finding?.advice).toContain('at value 4 chroma 1');
  });

  it('is told once for all objects of that colour and value', () => {
    const text = bowl(5, '\nobject  plate\n  shape   circle 12 at (9, 9)\n  colour  cobalt\n  value   5');
    expect(lost(text).map(({ objects }) => objects)).toEqual([[1, 0]]);
  });

  it('is passed over for a touch of the brush that is no principal', () => {
    const touch = bowl(5).replace('circle 9', 'circle 1');
    expect(lost(touch)).toEqual([]);
    expect(lost(touch.replace('object  bowl', 'object  bowl, dominant'))).toHaveLength(1);
  });
});
