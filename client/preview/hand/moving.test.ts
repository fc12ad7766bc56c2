import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { pointedPlace, silent } from '../../../tests/support/pointed.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { Board } from './board.js';
import type { Grip } from './grips.js';
import { Moving } from './moving.js';
import type { Overlay } from './overlay.js';
import type { Readout } from './readout.js';
import { bowl } from './test-grips.js';

/** A drawing in which a bowl lies wherever it is pressed; a pixel is a centimetre. */
function drawing() {
  const written: HandChange[] = [];
  const clicked: Grip[] = [];
  const { place, point } = pointedPlace();
  const board = {
    under: (spot: object) => spot,
    inPlan: (spot: object) => spot,
    boxOf: () => undefined,
    surface: { outlineOf: () => [] },
    guides: { lines: [], crossings: [] },
    unit: 'cm',
    snapReach: 1,
  };
  const letGo = vi.fn();
  const moving = new Moving({
    place,
    board: board as unknown as Board,
    overlay: silent<Overlay>(),
    readout: silent<Readout>(),
    gripAt: () => bowl,
    snaps: () => false,
    clicked: (grip) => clicked.push(grip),
    begun: () => undefined,
    attempt: () => undefined,
    write: (change) => written.push(change),
    letGo,
  });
  return { moving, point, written, clicked, letGo };
}

describe('a pointer in the drawing', () => {
  beforeEach(() => {
    vi.stubGlobal('requestAnimationFrame', () => 1);
    vi.stubGlobal('cancelAnimationFrame', () => undefined);
  });
  afterEach(() => void vi.unstubAllGlobals());

  it('drags a thing from where it is pressed to where it is let go of, as one change', () => {
    const { point, written } = drawing();
    point('pointerdown', [0, 0]);
    point('pointermove', [5, 0]);
    point('pointerup', [7, 0]);
    expect(written).toEqual([{ kind: 'move', grip: 'bowl', to: { x: 17, y: 10 } }]);
  });

  it('clicks where it hardly moves', () => {
    const { point, written, clicked } = drawing();
    point('pointerdown', [0, 0]);
    point('pointermove', [1, 0]);
    point('pointerup', [1, 0]);
    expect(clicked).toEqual([bowl]);
    expect(written).toEqual([]);
  });

  it('holds nothing any more when it comes back after it was let go of beside the drawing', () => {
    const { moving, point, written } = drawing();
    point('pointerdown', [0, 0]);
    point('pointermove', [40, 0], { buttons: 0 });
    point('pointermove', [60, 0], { buttons: 0 });
    expect(moving.drag).toBeUndefined();
    point('pointerup', [60, 0]);
    expect(written).toEqual([]);
  });

  it('takes hold of something else after a finger that was lifted unheard', () => {
    const { moving, point } = drawing();
    point('pointerdown', [0, 0], { pointerId: 4 });
    point('pointerdown', [0, 0], { pointerId: 5 });
    point('pointermove', [30, 0], { pointerId: 5 });
    expect(moving.drag?.grip).toBe(bowl);
  });

  it('puts back what it drags when it is taken away', () => {
    const { moving, point, written, letGo } = drawing();
    point('pointerdown', [0, 0]);
    point('pointermove', [30, 0]);
    point('pointercancel', [30, 0]);
    expect(moving.drag).toBeUndefined();
    expect(letGo).toHaveBeenCalledTimes(1);
    expect(written).toEqual([]);
  });
});
