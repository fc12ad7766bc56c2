import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { compose } from './compose.js';
import { renderToText } from './headless.js';
import { worked } from './test-plans.js';

const WIDTH = 400;

/** The squint of a plan as another painting library sees it: the red of a pixel, by parts of width and height. */
function squint(text: string, distanceMillimetres?: number): (across: number, down: number) => number {
  const { plan, measures } = worked(text);
  const scene = compose(plan, measures, [], 'squint', { distanceMillimetres });
  const svg = renderToText(scene, { theme: 'light', part: 'picture' });
  const { pixels, width, height } = new Resvg(svg, { fitTo: { mode: 'width', value: WIDTH } }).render();
  return (across, down) => {
    const x = Math.min(width - 1, Math.floor(across * width));
    const y = Math.min(height - 1, Math.floor(down * height));
    return pixels[4 * (y * width + x)] ?? -1;
  };
}

const halves = `canvas 80 x 60 cm
  ground #ffffff
object dark
  shape rectangle (-40, -40) to (40, 100)
  colour #000000`;

describe('a squint', () => {
  it('mixes light as the eye does: midway between black and white is half the light, not half the number', () => {
    // Half the light is 188 of 255 by the transfer curve of IEC 61966-2-1.
    const middle = squint(halves)(0.5, 0.5);
    expect(Math.abs(middle - 188)).toBeLessThanOrEqual(6);
  });

  it('is blurred by as much as the distance says: one standard deviation off lies 15.9 % or 84.1 % of the light', () => {
    // The normal distribution's share within one deviation is 68.3 %; 0.159 of the light is 111, 0.841 is 236.
    const pixel = squint(halves, 6_000);
    const deviation = 2.618 / 80;
    expect(Math.abs(pixel(0.5 - deviation, 0.5) - 111)).toBeLessThanOrEqual(9);
    expect(Math.abs(pixel(0.5 + deviation, 0.5) - 236)).toBeLessThanOrEqual(5);
  });

  it('has no fringe at the edge of the canvas, where there is nothing to mix with', () => {
    const pixel = squint('canvas 80 x 60 cm\n  ground #808080');
    const places = [0, 0.25, 0.5, 0.75, 1];
    const found = places.flatMap((across) => places.map((down) => pixel(across, down)));
    expect(Math.max(...found) - Math.min(...found)).toBeLessThanOrEqual(2);
    expect(Math.abs(pixel(0.5, 0.5) - 0x80)).toBeLessThanOrEqual(2);
  });

  it('keeps a dark colour as it is up to the edge, though dark light is counted in few steps', () => {
    const pixel = squint('canvas 80 x 60 cm\n  ground #0d1c38');
    const found = [0, 0.01, 0.02, 0.03, 0.5].map((across) => pixel(across, 0.01));
    // One of 255 steps of light is 13 steps of the number here, by the transfer curve of IEC 61966-2-1.
    expect(Math.max(...found) - Math.min(...found)).toBeLessThan(13);
  });

  it('leaves what lies beyond the canvas out of the mixture', () => {
    const beyond = `${halves.replace('(40, 100)', '(0, 100)')}`;
    expect(squint(beyond)(0.02, 0.5)).toBeGreaterThanOrEqual(250);
  });
});
