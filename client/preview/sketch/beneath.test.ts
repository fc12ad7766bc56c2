import { describe, expect, it } from 'vitest';
import { compose } from '../../../server/drawing/compose.js';
import type { Scene, View } from '../../../server/drawing/scene.js';
import { worked } from '../../../server/drawing/test-plans.js';
import { beneath, choicesBeneath } from './beneath.js';

const plan = (sketch: string) => `canvas 40 x 30 cm
${sketch}object jug
  shape circle 4 at (20, 15)
sitting "One" on 2027-01-04
  works jug
sitting "Two" on 2027-01-05
  works jug
  photo "two.jpg"
    corners (1, 2) (90, 3) (92, 70) (2, 68)
    grey (50%, 60%)
`;
const sketched = worked(plan('sketch "sheet.png"\n  opacity 40%\n'));
const unsketched = worked(plan(''));

function scene({ plan: read, measures, findings }: typeof sketched, view: View, sitting?: number): Scene {
  return compose(read, measures, findings, view, { handling: true, sitting });
}

describe('what lies under the drawing', () => {
  it.each(['drawing', 'mirror', 'path'] as const)(
    'is the sketch, or the photograph that is chosen: %s',
    (view) => {
      expect(beneath(scene(sketched, view), undefined)).toMatchObject({
        kind: 'sketch',
        file: 'sheet.png',
        opacity: 0.4,
        isUnder: true,
      });
      expect(beneath(scene(sketched, view), 1)).toMatchObject({
        chosen: 1,
        kind: 'photograph',
        file: 'two.jpg',
        grey: { across: { value: 0.5, in: 'parts' }, down: { value: 0.6, in: 'parts' } },
        isUnder: true,
      });
    },
  );

  it('is the sketch where the photograph is gone, and nothing without either', () => {
    expect(beneath(scene(sketched, 'drawing'), 0)?.kind).toBe('sketch');
    expect(beneath(scene(unsketched, 'drawing'), 0)).toBeUndefined();
    expect(beneath(scene(unsketched, 'drawing'), 'sketch')).toBeUndefined();
  });

  it.each(['notan', 'values', 'colour', 'squint', 'emphasis', 'palette', 'sittings'] as const)(
    'is nothing where it would be mixed into what is read: %s',
    (view) => {
      expect(beneath(scene(sketched, view), 1)).toBeUndefined();
      expect(choicesBeneath(scene(sketched, view))).toEqual([]);
    },
  );

  it('is in the record the photograph that is shown, for its corners only', () => {
    expect(beneath(scene(sketched, 'record'), 'sketch')).toMatchObject({ file: 'two.jpg', isUnder: false });
  });

  it('can be chosen where a photograph is named', () => {
    expect(choicesBeneath(scene(sketched, 'drawing'))).toEqual([
      { value: 'sketch', words: 'Sketch' },
      { value: '1', words: 'Photograph 2 Two' },
    ]);
    expect(choicesBeneath(scene(unsketched, 'drawing'))[0]).toEqual({ value: 'sketch', words: 'Nothing' });
    expect(choicesBeneath(scene(worked('canvas 4 x 3 cm\nsketch "a.png"\n'), 'drawing'))).toEqual([]);
  });
});
