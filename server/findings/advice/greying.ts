import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { GROUND } from '../../measure/borders/borders.js';
import type { Colour } from '../../plan/colour/colour.js';
import { withChroma } from '../../plan/colour/hue-turn.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import { atValue } from '../../plan/colour/painted.js';
import type { Location, Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { replace } from '../edits/edit.js';
import type { Fix } from '../finding.js';
import { quoted } from '../words/words.js';

/** A colour of the plan with less chroma, its hue and value kept, wherever the plan uses it. */
export interface Greying {
  /** `` `rust` ``, or what carries a colour without a name. */
  readonly name: string;
  /** Munsell chroma of the colour as it is written now, and as it would be. */
  readonly from: number;
  readonly to: number;
  readonly fix: Fix;
  /** The Munsell chroma that an area is then painted at; `GROUND` is the ground. */
  readonly chromaOf: (area: number) => number;
}

/** `` Lower the chroma of `rust` from 8 to 5.5 ``, as an order without a full stop. */
export function greyingWords({ name, from, to }: Pick<Greying, 'name' | 'from' | 'to'>): string {
  return t('Lower the chroma of {0} from {1} to {2}', name, plainNumber(from, 1), plainNumber(to, 1));
}

interface Written {
  readonly name: string;
  readonly colour: Colour;
  readonly location: Location;
  /** Index into `plan.colours`. */
  readonly named?: number;
}

/** Chromas are given in half steps, which is as fine as they are mixed by eye. */
const STEP = 0.5;

/**
 * The least greying of an area's colour, in half steps of chroma, that `keeps` a rule. Nothing when none does, or the
 * area has no colour to grey.
 */
export function leastGreying(
  plan: Plan,
  measures: Measures,
  area: number,
  keeps: (greying: Greying) => boolean,
): Greying | undefined {
  const written = writtenColour(plan, area);
  if (!written) return undefined;
  const from = toMunsell(written.colour).chroma;
  for (let to = Math.ceil(from / STEP - 1) * STEP; to > 0; to -= STEP) {
    const greying = greyed(plan, measures, area, written, to);
    if (greying && keeps(greying)) return greying;
  }
  return undefined;
}

function writtenColour({ canvas, colours, objects }: Plan, area: number): Written | undefined {
  if (area === GROUND) {
    const { colour, location } = canvas.ground;
    return location && { name: t('the ground'), colour, location };
  }
  const object = objects[area];
  if (!object?.colour) return undefined;
  const { named } = object.colour;
  const definition = named === undefined ? undefined : colours[named];
  return definition && named !== undefined
    ? {
        name: quoted(definition.name),
        colour: definition.colour,
        location: definition.colourLocation,
        named,
      }
    : { name: quoted(object.name), colour: object.colour.colour, location: object.colour.location };
}

function greyed(
  plan: Plan,
  { hues }: Measures,
  area: number,
  { name, colour, location, named }: Written,
  to: number,
): Greying | undefined {
  const grey = withChroma(colour, to);
  if (!grey) return undefined;
  return {
    name,
    from: toMunsell(colour).chroma,
    to,
    fix: {
      title:
        area === GROUND ? t('Grey the ground to `{0}`', grey.text) : t('Grey {0} to `{1}`', name, grey.text),
      edits: [replace(location, grey.text)],
    },
    chromaOf: (other) => {
      const now = (other === GROUND ? hues.ground : hues.objects[other])?.chroma ?? 0;
      const object = plan.objects[other];
      const shared = named === undefined ? other === area : object?.colour?.named === named;
      if (!shared) return now;
      const value = object?.stepStated ? object.value : undefined;
      return value === undefined ? toMunsell(grey.colour).chroma : atValue(grey.colour, value).chromaReached;
    },
  };
}
