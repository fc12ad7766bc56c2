import { expect, test } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { toHex } from './colour/srgb.js';

test('paints are kept with their Colour Index name, side and measured colours', () => {
  const { palette } = planOf(`palette
  paint   ultra PB29, warm
  paint   rose full #7a1030 tint #e8a0b0 at 1 to 9
  mother  ultra
  film    0.2 mm
  tube    37 ml`);
  expect(palette?.paints[0]).toMatchObject({ name: 'ultra', index: 'PB29', temperature: 'warm' });
  const rose = palette?.paints[1];
  expect(rose?.full && toHex(rose.full)).toBe('#7a1030');
  expect(rose?.tint).toMatchObject({ paint: 1, white: 9 });
  expect(palette).toMatchObject({
    mother: { value: 'ultra' },
    filmThickness: { value: 0.2 },
    tube: { value: 37 },
  });
});

test('a mother colour must be one of the paints, and paints have names of their own', () => {
  const { problems } = planOf('palette\n  paint   ultra PB29\n  paint   Ultra PB15\n  mother  ulrta');
  expect(problems.map(({ code, fix }) => [code, fix?.replacement])).toEqual(
    expect.arrayContaining([
      ['repeated name', undefined],
      ['unknown name', 'ultra'],
    ]),
  );
});

test('a film has a thickness', () => {
  const { problems, palette } = planOf('palette\n  film    0 mm');
  expect(problems.map(({ message }) => message)).toContain('A paint film has a thickness such as `0.15 mm`.');
  expect(palette?.filmThickness).toBeUndefined();
});
