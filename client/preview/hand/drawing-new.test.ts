import { describe, expect, it } from 'vitest';
import { pointedPlace, silent } from '../../../tests/support/pointed.js';
import type { Spot } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { Board } from './board.js';
import { DrawingNew } from './drawing-new.js';
import type { Overlay } from './overlay.js';
import type { Readout } from './readout.js';

/** A sheet with a crossing at (20, 20) to draw on; a pixel is a centimetre. */
function sheet() {
  const written: HandChange[] = [];
  const shown: { snap: Spot | undefined; draft: string } = { snap: undefined, draft: '' };
  const { place, point } = pointedPlace();
  const board = {
    under: (spot: Spot) => spot,
    inPlan: (spot: Spot) => spot,
    onScreen: (spot: Spot) => spot,
    pixels: (count: number) => count,
    guides: { lines: [], crossings: [{ at: { x: 20, y: 20 }, name: 'golden upper left' }] },
    scene: { picture: { x: 0, y: 0, width: 100, height: 80 } },
    unit: 'cm',
    snapReach: 2,
  };
  const overlay = {
    showDraft: (draft: string) => (shown.draft = draft),
    showSnap: (snap: Spot | undefined) => (shown.snap = snap),
    showCross: () => undefined,
    focusCross: () => undefined,
    crossHasFocus: false,
  };
  const drawing = new DrawingNew({
    place,
    board: board as unknown as Board,
    overlay: overlay as unknown as Overlay,
    readout: silent<Readout>(),
    snaps: () => true,
    write: (change) => written.push(change),
    changed: () => undefined,
  });
  const press = (key: string) => drawing.press({ key, shiftKey: false } as KeyboardEvent);
  return { drawing, point, press, written, shown };
}

describe('drawing a box', () => {
  it('goes from where it is pressed to where it is let go of', () => {
    const { drawing, point, written } = sheet();
    drawing.take('rectangle', false);
    point('pointerdown', [30, 30]);
    point('pointermove', [40, 50]);
    point('pointerup', [50, 60]);
    const [from, to] = [
      { x: 30, y: 30 },
      { x: 50, y: 60 },
    ];
    expect(written).toEqual([{ kind: 'new box', form: 'rectangle', from, to }]);
    expect(drawing.tool).toBeUndefined();
  });

  it.each(['Escape', 'Backspace'])('is given up by %s, and begun by nothing but another press', (key) => {
    const { drawing, point, press, written, shown } = sheet();
    drawing.take('ellipse', false);
    point('pointerdown', [30, 30]);
    point('pointermove', [40, 50]);
    expect(press(key)).toBe(true);
    point('pointerup', [50, 60]);
    point('pointermove', [70, 70], { buttons: 0 });
    expect(shown.draft).toBe('');
    expect(written).toEqual([]);
    expect(drawing.tool).toBe('ellipse');
  });

  it('shows no place to snap to while Shift keeps it even', () => {
    const { drawing, point, shown } = sheet();
    drawing.take('rectangle', false);
    point('pointerdown', [5, 5]);
    point('pointermove', [20, 21]);
    expect(shown.snap).toEqual({ x: 20, y: 20 });
    point('pointermove', [20, 30], { shiftKey: true });
    expect(shown.snap).toBeUndefined();
  });
});

describe('drawing a line', () => {
  it('ends by Enter once it has a point, which until then is for what has the focus', () => {
    const { drawing, point, press, written } = sheet();
    drawing.take('lead', false);
    expect(press('Enter')).toBe(false);
    for (const x of [30, 60]) {
      point('pointerdown', [x, 30]);
      point('pointerup', [x, 30]);
    }
    expect(press('Enter')).toBe(true);
    expect(written).toMatchObject([{ kind: 'new line', form: 'lead', points: [{ x: 30 }, { x: 60 }] }]);
  });
});
