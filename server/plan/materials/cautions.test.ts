import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { cautionsAboutMedium, cautionsAboutPaint, cautionsOf } from './cautions.js';

describe('cautions', () => {
  const plan = planOf(
    [
      'canvas  40 x 30 cm',
      '  medium  oil, turpentine',
      'palette',
      '  paint   white PW6',
      '  paint   lemon PY35',
      '  paint   viridian PG18',
      '  paint   glow PO20',
      'sitting "Wash" on 2027-03-01',
      '  medium  turpentine',
    ].join('\n'),
  );

  it('are told once for each hazard, with everything that has it', () => {
    expect(
      cautionsOf(plan).map(({ about, materials, locations }) => [about, materials, locations.length]),
    ).toEqual([
      ['cadmium', ['`lemon` (PY35)', '`glow` (PO20)'], 2],
      ['chromium', ['`viridian` (PG18)'], 1],
      ['solvents', ['`oil, turpentine`', '`turpentine`'], 2],
      ['oily rags', ['`oil, turpentine`'], 1],
    ]);
  });

  it('say what holds what, and the usual care', () => {
    const [cadmium, chromium] = cautionsOf(plan);
    expect(cadmium?.text).toMatch(/^`lemon` \(PY35\) and `glow` \(PO20\) hold cadmium\. No sanding/);
    expect(chromium?.text).toMatch(/^`viridian` \(PG18\) holds chromium\. /);
  });

  it('go by what the paint is called where its pigment is not known', () => {
    const about = (paint: string) =>
      cautionsOf(planOf(`canvas  40 x 30 cm\npalette\n  paint   ${paint}`)).map(({ about: hazard, text }) => [
        hazard,
        text.split('.')[0],
      ]);
    expect(about('cadmium-red full #bb261f')).toEqual([['cadmium', '`cadmium-red` holds cadmium']]);
    expect(about('cadmium-red-hue full #bb261f')).toEqual([]);
    expect(about('cobalt-like PB29')).toEqual([]);
    expect(about('raw-umber PBr999')).toEqual([['manganese', '`raw-umber` (PBr999) holds manganese']]);
    expect(about('leading-light full #bb261f')).toEqual([]);
  });

  it('are none where nothing is known to hurt', () => {
    expect(
      cautionsOf(planOf('canvas  40 x 30 cm\n  medium  acrylic\npalette\n  paint   ultra PB29')),
    ).toEqual([]);
    expect(cautionsOf(planOf('canvas  40 x 30 cm'))).toEqual([]);
  });

  it('are had of one paint and of one medium too', () => {
    expect(cautionsAboutPaint({ name: 'flake', index: 'PW1' })[0]).toMatch(/restricted in places/);
    expect(cautionsAboutPaint({ name: 'mine' })).toEqual([]);
    // NFPA tip sheet "Safety with Oily Rags": no piles, spread out outdoors, metal can with water and detergent.
    expect(cautionsAboutMedium('linseed oil')[0]).toMatch(
      /pile.*flat outdoors.*lidded metal can.*water and detergent/,
    );
    expect(cautionsAboutMedium('gouache')).toEqual([]);
  });
});
