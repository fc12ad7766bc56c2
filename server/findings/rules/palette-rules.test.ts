import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

const WALL = 'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (40, 30)\n  colour  N 5/\n';
const EARTHS =
  'palette\n  paint   white PW6\n  paint   ochre PY42\n  paint   oxide PR101\n  paint   black PBk7\n';

function told(rule: string, text: string) {
  return checked(`canvas  40 x 30 cm\n${text}`).findings.filter((finding) => finding.rule === rule);
}

describe('a colour beyond the palette', () => {
  const rule = 'colour beyond the palette';
  const cup = (colour: string, size = 8, role = '') =>
    `${WALL}object  cup${role}\n  shape   circle ${size} at (20, 15)\n  colour  ${colour}\n`;

  it('is told with the nearest mixture, what that comes to and how far off it is', () => {
    const [finding] = told(rule, cup('5PB 4/10') + EARTHS);
    expect(finding?.severity).toBe('warning');
    expect(finding?.message).toMatch(
      /^No mixture of the palette comes near to the colour of `cup`, 5PB 4\.0\/10\.0: the nearest, .*, is about \S+ 4\.\d\/\d\.\d, which is \d\d\.\d off by prediction\. Up to 5 is let pass\.$/,
    );
    expect(finding?.advice).toMatch(
      /^With phthalo blue, .* on the palette the nearest mixture is predicted to be/,
    );
  });

  it('is not told of a colour that the palette reaches, nor of a grey that only a value gives', () => {
    expect(told(rule, cup('ochre') + EARTHS)).toEqual([]);
    const grey = 'object  wall\n  shape   rectangle (0, 0) to (40, 30)\n  value   4\n';
    expect(told(rule, `${grey}palette\n  paint   oxide PR101\n`)).toEqual([]);
  });

  it('is not told of a dark that no measured paint is dark enough for', () => {
    expect(told(rule, cup('N 0.5/') + EARTHS)).toEqual([]);
  });

  it('is told of a touch only where it is a principal', () => {
    expect(told(rule, cup('5PB 4/10', 1) + EARTHS)).toEqual([]);
    expect(told(rule, cup('5PB 4/10', 1, ', dominant') + EARTHS)).toHaveLength(1);
  });

  it('goes by the limit that the plan sets, and can be set aside for an object', () => {
    expect(told(rule, `${cup('5PB 4/10')}${EARTHS}rule    colour beyond the palette limit 60\n`)).toEqual([]);
    const [aside] = told(
      rule,
      `${cup('5PB 4/10')}${EARTHS}allow   colour beyond the palette for cup because "it sings"\n`,
    );
    expect(aside?.allowed?.reason).toBe('it sings');
  });

  it('is called an estimate where a paint is known by its tones only', () => {
    const [finding] = told(rule, `${cup('5R 5/14')}palette\n  paint   white PW6\n  paint   ultra PB29\n`);
    expect(finding?.message).toContain(' off by estimate.');
  });

  it('is told of a toned ground', () => {
    const [finding] = told(rule, `  ground  5PB 4/10\n${EARTHS}`);
    expect(finding?.message).toContain('the colour of the toned ground, ');
  });
});

describe('a paint that is not known', () => {
  const rule = 'paint not known';
  const of = (paint: string, more = '') =>
    told(rule, `palette\n  paint   white PW6\n  paint   ${paint}\n${more}`);

  it('is asked for tones, or its Colour Index name', () => {
    const [finding] = of('rose');
    expect(finding?.severity).toBe('hint');
    expect(finding?.message).toContain('it has no Colour Index name');
    expect(finding?.advice).toMatch(
      /^Give its full tone and a tint .* or its Colour Index name from the tube\.$/,
    );
    expect(of('rose PR999')[0]?.message).toContain('nothing is known of the pigment PR999');
  });

  it('whose name stands for several pigments is asked which it is', () => {
    expect(of('earth PBr7')[0]?.advice).toMatch(
      /^Call it what it is, .*`burnt-sienna`.*, or give its full tone/,
    );
    expect(of('burnt-sienna PBr7')).toEqual([]);
  });

  it('is missed in all mixtures as the mother colour', () => {
    expect(of('rose', '  mother  rose\n')[0]?.message).toContain(
      'It is the mother colour, so it is left out',
    );
    expect(of('rose')[0]?.message).not.toContain('mother');
  });

  it('with a full tone alone is asked for a tint; a white needs none', () => {
    expect(of('rose full #7a1030')[0]?.message).toContain('its strength in mixtures is a guess');
    expect(of('chalk full #f6f5f0')).toEqual([]);
    expect(of('rose full #7a1030 tint #e8a0b0 at 1 to 9')).toEqual([]);
  });
});

describe('the primaries of a palette', () => {
  const palette = (...paints: readonly string[]) =>
    `palette\n${paints.map((paint) => `  paint   ${paint}\n`).join('')}`;

  it('are told in one sentence where they lean to one side, with what would fill the gap', () => {
    const findings = told('primary without a side', palette('white PW6', 'lemon PY151', 'rose PR122'));
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toContain(
      'cool yellow (`lemon`) without a warm one; cool red (`rose`) without a warm one',
    );
    expect(findings[0]?.advice).toContain('diarylide yellow (PY83) as the warm yellow');
  });

  it('are not told to lack a side while a paint leans to neither, as far as is known', () => {
    expect(told('primary without a side', palette('lemon PY151', 'odd PY999'))).toEqual([]);
  });

  it('are told to be missing only where there is one of the others', () => {
    const missing = (text: string) => told('missing primary', text).map(({ message }) => message);
    expect(missing(palette('white PW6', 'lemon PY151', 'rose PR122'))).toEqual(['The palette has no blue.']);
    expect(missing(palette('white PW6', 'lemon PY151'))).toEqual(['The palette has no red and no blue.']);
    expect(missing(palette('white PW6', 'black PBk7'))).toEqual([]);
    expect(missing(palette('white PW6', 'lemon PY151', 'odd'))).toEqual([]);
  });
});

describe('an opaque glaze', () => {
  const glazed = (glaze: string, paints: string) =>
    told('opaque glaze', `${WALL}  glaze   ${glaze}\npalette\n  paint   white PW6\n${paints}`);

  it('is told with the transparent paint whose hue is nearest', () => {
    const [finding] = glazed('sun', '  paint   sun PY184\n  paint   gold PY83\n  paint   rose PR122\n');
    expect(finding?.message).toBe(
      '`wall` is to be glazed with `sun` (bismuth yellow), which is opaque: it will veil what is below rather than glow.',
    );
    expect(finding?.advice).toContain('`gold` is nearest in hue');
  });

  it('is not told of a transparent paint', () => {
    expect(glazed('rose', '  paint   rose PR122\n')).toEqual([]);
  });

  it('given by a colour is told only where nothing transparent is on the palette', () => {
    expect(glazed('#d8b060', '  paint   sun PY184\n')).toHaveLength(1);
    expect(glazed('#d8b060', '  paint   sun PY184\n  paint   gold PY83\n')).toEqual([]);
  });
});
