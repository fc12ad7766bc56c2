import type { Plan } from '../../server/plan/plan.js';
import type {
  MixingMeasure,
  PaintMeasure,
  PaletteMeasure,
  Swatch,
} from '../../server/measure/mixing/mixing.js';
import { pigmentOf } from '../../server/plan/materials/pigments.js';
import { planOf } from './plan.js';
import { measureSchedule, type ScheduleMeasure } from '../../server/measure/sittings/schedule.js';

/** A picture of a wall and a jug, with whatever comes after them in the text. */
export function studio(...lines: readonly string[]): string {
  return [
    'canvas  80 x 60 cm',
    'object  wall',
    '  plane   background',
    '  shape   rectangle upper left corner to lower right corner',
    'object  jug',
    '  shape   circle 10 at (20, 20)',
    ...lines,
  ].join('\n');
}

/** One sitting, as lines of a plan: `sitting('Block in', '2027-01-04', 'works jug', 'layer block-in')`. */
export function sitting(title: string, date: string | undefined, ...lines: readonly string[]): string {
  return [
    `sitting "${title}"${date === undefined ? '' : ` on ${date}`}`,
    ...lines.map((line) => `  ${line}`),
  ].join('\n');
}

/** The schedule of a plan without a palette, where the usual five days count. */
export function scheduleOf(...lines: readonly string[]): ScheduleMeasure {
  return scheduled(planOf(studio(...lines)));
}

export function scheduled(plan: Plan, palette?: PaletteMeasure): ScheduleMeasure {
  const shares = plan.objects.map(({ outline }) => (outline.rings.length > 0 ? 0.5 : 0));
  const schedule = measureSchedule(plan, { shares, ...(palette ? { palette } : {}) });
  if (!schedule) throw new Error('a plan without sittings');
  return schedule;
}

/** A palette of which it is known what each object is mixed of: names of paints, for each object by its name. */
export function mixedFrom(
  plan: Plan,
  {
    objects,
    glazes = {},
    ground,
  }: {
    readonly objects: Readonly<Record<string, readonly string[]>>;
    readonly glazes?: Readonly<Record<string, readonly string[]>>;
    readonly ground?: readonly string[];
  },
): PaletteMeasure {
  const { colour } = plan.canvas.ground;
  const names = plan.palette?.paints.map(({ name }) => name) ?? [];
  const mixture = (paints: readonly string[]): NonNullable<Swatch['mixture']> => ({
    parts: paints.map((name) => ({ paint: names.indexOf(name), parts: 1 })),
    colour,
    isEstimate: false,
  });
  const swatch = (paints: readonly string[] | undefined, isGround: boolean): Swatch => ({
    wanted: colour,
    objects: [],
    isGround,
    isStated: true,
    share: 0,
    ...(paints ? { mixture: mixture(paints) } : {}),
    millilitres: 0,
  });
  const mixing: MixingMeasure = {
    swatches: [...plan.objects.map(({ name }) => swatch(objects[name], false)), swatch(ground, true)],
    ofObjects: plan.objects.map(({ index }) => index),
    glazes: plan.objects.map(({ name, index }) => {
      const paints = glazes[name];
      if (!paints) return undefined;
      return {
        object: index,
        wanted: colour,
        mixture: { ...mixture(paints), medium: 4 },
        seen: colour,
        isEstimate: false,
      };
    }),
    strings: [],
    amounts: [],
    beyond: [],
    reach: [],
  };
  return { ...unmixed(plan), mixing };
}

/** A palette whose mixtures are still being worked out. */
export function unmixed(plan: Plan): PaletteMeasure {
  const paints = plan.palette?.paints ?? [];
  return {
    paints: paints.map(({ index, name }): PaintMeasure => {
      const pigment = index === undefined ? undefined : pigmentOf(index, name);
      return { basis: 'measured', ...(pigment ? { pigment } : {}) };
    }),
    tubes: paints.length,
    primaries: [],
  };
}
