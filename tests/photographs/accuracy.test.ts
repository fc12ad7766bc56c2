import { beforeAll, describe, expect, it } from 'vitest';
import { measure } from '../../server/measure/measure.js';
import { noPhotographs, type Squaring } from '../../server/measure/photograph/photographs.js';
import { squaringOf } from '../../server/measure/photograph/measure-record.js';
import type { RecordFigures } from '../../server/measure/photograph/record.js';
import { squarePhotograph } from '../../server/photograph/square.js';
import type { Corners } from '../../server/plan/geometry/homography.js';
import { planOf } from '../support/plan.js';
import {
  asDisplayP3,
  asJpeg,
  asPng,
  type Light,
  onItsSide,
  paintedCanvas,
  type Shot,
  taken,
} from '../support/taken-photographs.js';
import { withExif } from './made.js';

/**
 * Photographs made of a plan's own drawing, by drawing, camera and file formats that the measuring knows nothing of, on
 * the whole way from their bytes to the record. Limits: shares within 1 % of the canvas, colours within 2 of CIEDE2000.
 */
const SHARES_WITHIN = 0.01;
const COLOURS_WITHIN = 2;

const PLAN = `
canvas  60 x 45 cm
  ground  #8f8a86 neutral
scale   5
focus   (40, 20)
colour  plaster 5Y 7/2 dominant
colour  copper 5YR 5/8 complement
colour  soot 5PB 2/2 discord
object  wall
  plane   background
  shape   rectangle (0, 0) to (60, 30)
  colour  plaster
object  kettle, dominant
  shape   circle 14 at (40, 22)
  colour  copper
object  shadow
  shape   outline (8, 28) (30, 24) (34, 40) (12, 43)
  colour  soot
  value   1
object  leaf
  shape   ellipse 8 x 5 at (14, 13)
  colour  5GY 4/6
  value   3
sitting "All"
  photo   "canvas.jpg"
`;

const plan = planOf(PLAN);
const { values, colours } = measure(plan);
const CORNERS: Corners = [
  { x: 64, y: 49 },
  { x: 568, y: 28 },
  { x: 602, y: 448 },
  { x: 43, y: 421 },
];
const SHOT: Shot = { width: 640, height: 490, corners: CORNERS };
const CARD = { at: { x: 22, y: 240 }, reach: 16 } as const;
/** As strong as daylight by its luminance: a grey card tells what colour the light has, not how much of it there is. */
const LAMPLIGHT = [1.27, 0.96, 0.61] as const;

let canvas: Light;
beforeAll(async () => {
  canvas = await paintedCanvas(plan, 720);
});

const inPixels = ({ x, y }: { readonly x: number; readonly y: number }): string => `(${x}, ${y})`;

/** The plan with what it says of its photograph. */
function withPhotograph(...lines: readonly string[]): string {
  return [PLAN.trimEnd(), ...lines.map((line) => `    ${line}`)].join('\n');
}

async function figuresOf(bytes: Uint8Array, text: string): Promise<RecordFigures> {
  const read = planOf(text);
  const squaring: Squaring | undefined = read.sittings[0] && squaringOf(read, read.sittings[0]);
  if (!squaring) throw new Error('no photograph');
  const answer = await squarePhotograph(bytes, squaring);
  const record = measure(read, undefined, undefined, { ...noPhotographs, squared: () => answer }).record;
  const [first] = record?.sittings ?? [];
  if (first?.is !== 'measured') throw new Error(JSON.stringify(first));
  return first.figures;
}

const withCorners = `corners ${CORNERS.map(inPixels).join(' ')}`;
const withGrey = `grey ${inPixels(CARD.at)}`;

describe('a photograph of what was painted as planned, on the whole way', () => {
  it.each<readonly [string, () => Promise<Uint8Array>, readonly string[]]>([
    ['as it is', () => Promise.resolve(asPng(canvas)), []],
    ['at an angle, as a JPEG', () => asJpeg(taken(canvas, SHOT)), [withCorners]],
    ['with noise', () => asJpeg(taken(canvas, { ...SHOT, noise: 5 })), [withCorners]],
    [
      'in lamplight, with a grey card',
      () => asJpeg(taken(canvas, { ...SHOT, light: LAMPLIGHT, card: CARD, noise: 2 })),
      [withCorners, withGrey],
    ],
    [
      'stored on its side',
      async () => withExif(await asJpeg(onItsSide(taken(canvas, SHOT))), { orientation: 6 }),
      [withCorners],
    ],
    ['in Display P3', () => Promise.resolve(asDisplayP3(taken(canvas, SHOT))), [withCorners]],
  ])('%s', async (_, bytes, lines) => {
    const figures = await figuresOf(await bytes(), withPhotograph(...lines));
    const off = (one: number, other: number | undefined): number => Math.abs(one - (other ?? Infinity));
    figures.steps.forEach(({ share }, index) => {
      expect(off(share, values.steps[index]?.share), `step ${index + 1}`).toBeLessThan(SHARES_WITHIN);
    });
    for (const { role, share } of figures.roles) {
      const planned = colours.roles.find((one) => one.role === role)?.share;
      expect(off(share, planned), role).toBeLessThan(SHARES_WITHIN);
    }
    expect(figures.objects).toHaveLength(plan.objects.length);
    for (const { object, against } of figures.objects) {
      expect(against?.difference, plan.objects[object]?.name).toBeLessThan(COLOURS_WITHIN);
    }
    expect(off(figures.key, values.mean)).toBeLessThan(0.1);
    expect(figures.doubts.filter(({ isGrave }) => isGrave)).toEqual([]);
  });

  it('is told with what can’t be trusted when its light is not balanced', async () => {
    const bytes = await asJpeg(taken(canvas, { ...SHOT, light: LAMPLIGHT }));
    const figures = await figuresOf(bytes, withPhotograph(withCorners));
    expect(figures.doubts.map(({ about }) => about)).toContain('no grey patch');
    expect(Math.max(...figures.objects.map(({ against }) => against?.hueAndChroma ?? 0))).toBeGreaterThan(10);
  });

  it('is told with its exposure when all of it is lighter by the same part', async () => {
    const bytes = await asJpeg(taken(canvas, { ...SHOT, light: [1.5, 1.5, 1.5] }));
    const { doubts } = await figuresOf(bytes, withPhotograph(withCorners));
    expect(doubts).toContainEqual({
      about: 'exposure',
      stops: expect.closeTo(Math.log2(1.5), 1) as number,
      isGrave: true,
    });
  });

  it('is told with its proportions when its corners are not given', async () => {
    const bytes = asPng({ ...canvas, height: 360, rgb: canvas.rgb.subarray(0, 3 * canvas.width * 360) });
    const { doubts } = await figuresOf(bytes, PLAN);
    expect(doubts).toContainEqual({ about: 'proportions', photograph: 2, canvas: 60 / 45, isGrave: true });
  });
});

describe('a photograph of what was painted otherwise, on the whole way', () => {
  it('tells value and colour of what is off, and nothing else', async () => {
    const other = await paintedCanvas(plan, 720, (name) => (name === 'kettle' ? '#5d7a6a' : undefined));
    const bytes = await asJpeg(taken(other, { ...SHOT, light: LAMPLIGHT, card: CARD, noise: 2 }));
    const { objects } = await figuresOf(bytes, withPhotograph(withCorners, withGrey));
    const off = objects.filter(({ against }) => (against?.difference ?? 0) > COLOURS_WITHIN);
    expect(off.map(({ object }) => plan.objects[object]?.name)).toEqual(['kettle']);
  });
});
