import type { Layer } from '../../../grammar/index.js';
import type { Plan, Sitting } from '../../plan/plan.js';
import { type Binder, mediumIn, slowestBinder } from '../../plan/materials/mediums.js';

/** The film that drying figures are of: thin, as a brush lays it. Millimetres. */
export const THIN_FILM = 0.15;

interface UsualLayer {
  /** Its film, as a part of the film of body colour. */
  readonly film: number;
  /** Its share of added oil or medium. */
  readonly fat: number;
}

/**
 * How layers are usually laid, where a plan does not say: from the wash of a toned ground, very thin and without oil,
 * to the thin fat ones that come last. Heuristic, from memory.
 */
const usualLayers: Readonly<Record<Layer, UsualLayer>> = {
  imprimatura: { film: 0.2, fat: 0 },
  underpainting: { film: 0.4, fat: 0 },
  'block-in': { film: 0.6, fat: 0.05 },
  'body colour': { film: 1, fat: 0.1 },
  scumble: { film: 0.4, fat: 0.2 },
  glaze: { film: 0.2, fat: 0.2 },
  detail: { film: 0.6, fat: 0.2 },
  varnish: { film: 0.2, fat: 0 },
};

/** What `lean` and `fat` come to as shares of added oil or medium: at most, and at least. From memory. */
const LEAN = 0.05;
const FAT = 0.2;

/** How a sitting lays its paint. */
export interface LaidAs {
  readonly layer: Layer;
  readonly layerStated: boolean;
  readonly fat: number;
  readonly fatFrom: 'share' | 'body' | 'layer';
  /** Millimetres. */
  readonly film: number;
  readonly filmStated: boolean;
  readonly binder: Binder;
  readonly varnish?: 'final' | 'retouch';
}

/** How a sitting lays its paint: as the plan says, and where it says nothing as the layer is usually laid. */
export function laidAs(sitting: Sitting, { canvas, palette }: Plan): LaidAs {
  const layer = sitting.layer?.value ?? 'body colour';
  const usual = usualLayers[layer];
  const ownFilm = sitting.filmThickness?.value;
  return {
    layer,
    layerStated: sitting.layer !== undefined,
    ...fatOf(sitting, usual.fat),
    film: ownFilm ?? usual.film * (palette?.filmThickness?.value ?? THIN_FILM),
    filmStated: ownFilm !== undefined,
    binder: binderOf(sitting, canvas.medium),
    ...(layer === 'varnish' ? { varnish: isRetouch(sitting) ? 'retouch' : 'final' } : {}),
  };
}

/** Whether what is laid goes over the whole picture when a sitting names nothing: a toned ground and a varnish do. */
export function goesOverAll(layer: Layer): boolean {
  return layer === 'imprimatura' || layer === 'varnish';
}

/** Whether a layer makes an object seen, which a toned ground below and a varnish above don't. */
export function paintsObjects(layer: Layer): boolean {
  return !goesOverAll(layer);
}

/** Whether paint dries by taking up air, as oil does and alkyd, an oil too: slowly, and the fatter the slower. */
export function isDryingOil(binder: Binder): boolean {
  return binder === 'oil' || binder === 'alkyd';
}

function fatOf({ fatShare, body }: Sitting, usual: number): Pick<LaidAs, 'fat' | 'fatFrom'> {
  if (fatShare) return { fat: fatShare.value, fatFrom: 'share' };
  if (body === 'lean') return { fat: Math.min(LEAN, usual), fatFrom: 'body' };
  if (body === 'fat') return { fat: Math.max(FAT, usual), fatFrom: 'body' };
  return { fat: usual, fatFrom: 'layer' };
}

/** Alkyd that a sitting's paint is thinned with dries as alkyd does; else the slowest that is named counts. */
function binderOf({ medium }: Sitting, ofCanvas: string | undefined): Binder {
  const named = medium === undefined ? [] : mediumIn(medium.value).binders;
  if (named.includes('alkyd')) return 'alkyd';
  return named[0] ?? slowestBinder(ofCanvas);
}

function isRetouch({ title, medium, tasks }: Sitting): boolean {
  return [title, medium?.value ?? '', ...tasks.map(({ value }) => value)].some((words) =>
    /\bretouch/iu.test(words),
  );
}
