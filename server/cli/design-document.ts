import type { StrongPlace } from '../measure/emphasis/emphasis.js';
import type { LeadMeasure } from '../measure/eye-path/eye-path.js';
import type { Measures } from '../measure/measures.js';
import type { Plan } from '../plan/plan.js';
import { pointOf, round } from './figures.js';
import type { MeasureDocument } from './schema/measure.js';

type Part<K extends keyof MeasureDocument> = MeasureDocument[K];
type Design = Pick<
  MeasureDocument,
  'notan' | 'planes' | 'emphasis' | 'borders' | 'balance' | 'spacing' | 'tangents' | 'eyePath' | 'hues'
>;

/** What is measured on the design as a whole, for programs. */
export function designPart(plan: Plan, measures: Measures): Design {
  return {
    notan: notanPart(plan, measures),
    planes: measures.planes.map(({ plane, share, value, chroma }) => ({
      plane,
      share: round(share),
      ...(value === undefined ? {} : { munsellValue: round(value) }),
      ...(chroma === undefined ? {} : { munsellChroma: round(chroma) }),
    })),
    emphasis: emphasisPart(plan, measures),
    borders: measures.borders.borders.map(({ front, behind, ...figures }) => ({
      front: nameOf(plan, front),
      behind: nameOf(plan, behind),
      length: round(figures.length),
      sharpness: round(figures.sharpness),
      valueContrast: round(figures.valueContrast),
      colourContrast: round(figures.colourContrast),
      pull: round(figures.pull),
    })),
    balance: balancePart(plan, measures),
    spacing: spacingPart(plan, measures),
    tangents: tangentsPart(plan, measures),
    eyePath: eyePathPart(plan, measures),
    hues: huesPart(plan, measures),
  };
}

/** The canvas's own proportion and what the trade calls it. */
export function proportionPart({ ratio, named }: Measures['proportion']): Part<'canvas'>['proportion'] {
  return {
    ratio: round(ratio),
    named: named.map(({ name, kind, ratio: wanted, difference, sameSize }) => ({
      name,
      kind,
      ratio: round(wanted),
      difference: round(difference),
      sameSize,
    })),
  };
}

/** Empty for the bare ground. */
function nameOf(plan: Plan, area: number): string {
  return plan.objects[area]?.name ?? '';
}

function pairOf(plan: Plan, areas: readonly [number, number]): string[] {
  return areas.map((area) => nameOf(plan, area));
}

function notanPart(plan: Plan, { notan }: Measures): Part<'notan'> {
  return notan.tones.map(({ name, share, largestOfTone, pieces }) => ({
    name,
    share: round(share),
    largestOfTone: round(largestOfTone),
    pieces: pieces.map((piece) => ({
      share: round(piece.share),
      at: pointOf(piece.at),
      areas: piece.areas.map((area) => nameOf(plan, area)),
    })),
  }));
}

function emphasisPart(plan: Plan, { emphasis }: Measures): Part<'emphasis'> {
  const { field, places, nearEdge, focal } = emphasis;
  const placeOf = ({ at, strength, areas, fromEdge }: StrongPlace) => ({
    at: pointOf(at),
    strength: round(strength),
    areas: pairOf(plan, areas),
    fromEdge: round(fromEdge),
  });
  return {
    strongest: round(field.strongest),
    places: places.map(placeOf),
    nearEdge: nearEdge.map(placeOf),
    ...(focal
      ? {
          focal: {
            at: pointOf(focal.at),
            strength: round(focal.strength),
            areas: pairOf(plan, focal.areas),
            rank: focal.rank,
            rivals: focal.rivals.map(placeOf),
            means: focal.means.map(({ means, stated, there, elsewhere, holds, inWords }) => ({
              means,
              stated,
              there: round(there),
              elsewhere: round(elsewhere),
              holds,
              inWords,
            })),
          },
        }
      : {}),
  };
}

function balancePart(plan: Plan, { balance }: Measures): Part<'balance'> {
  const { offset, centre, ground, weights } = balance;
  return {
    ...(offset === undefined ? {} : { offset: round(offset) }),
    ...(centre === undefined ? {} : { centre: round(centre) }),
    ground: round(ground),
    weights: weights.map(({ object, weight, arm, moment }) => ({
      object: nameOf(plan, object),
      weight: round(weight),
      arm: round(arm),
      moment: round(moment),
    })),
  };
}

function spacingPart(plan: Plan, { spacing }: Measures): Part<'spacing'> {
  return {
    principals: spacing.principals.map(({ object, size }) => ({
      object: nameOf(plan, object),
      size: round(size),
    })),
    gaps: spacing.gaps.map(({ along, between, size, shareOfDiagonal }) => ({
      along,
      between: pairOf(plan, between),
      size: round(size),
      shareOfDiagonal: round(shareOfDiagonal),
    })),
  };
}

function tangentsPart(plan: Plan, { tangents }: Measures): Part<'tangents'> {
  const gapOf = ({ gap, shareOfDiagonal }: { readonly gap: number; readonly shareOfDiagonal: number }) => ({
    gap: round(gap),
    shareOfDiagonal: round(shareOfDiagonal),
  });
  return {
    touches: tangents.touches.map((touch) => ({
      one: nameOf(plan, touch.one),
      other: nameOf(plan, touch.other),
      ...gapOf(touch),
      at: pointOf(touch.at),
    })),
    edges: tangents.edges.map((touch) => ({
      object: nameOf(plan, touch.object),
      side: touch.side,
      ...gapOf(touch),
      at: pointOf(touch.at),
    })),
    corners: tangents.corners.map(({ object, corner, at }) => ({
      object: nameOf(plan, object),
      corner,
      at: pointOf(at),
    })),
  };
}

function eyePathPart(plan: Plan, { eyePath }: Measures): Part<'eyePath'> {
  const leadName = (index: number): string => plan.leads[index]?.name ?? '';
  return {
    leads: eyePath.leads.map((lead, index) => ({
      name: leadName(index),
      ...originPart(plan, lead),
      length: round(lead.length),
      heading: round(lead.heading),
      ...(lead.miss === undefined ? {} : { miss: round(lead.miss) }),
      ...(lead.missShare === undefined ? {} : { missShare: round(lead.missShare) }),
      ...(lead.leaves ? { leaves: leavesPart(lead.leaves) } : {}),
    })),
    angles: eyePath.angles.map(({ one, other, degrees }) => ({
      one: leadName(one),
      other: leadName(other),
      degrees: round(degrees),
    })),
    sides: sidesPart(eyePath.sides),
    exits: eyePath.exits.map(({ at, side, corner, areas, pull, length }) => ({
      at: pointOf(at),
      side,
      ...(corner === undefined ? {} : { corner }),
      areas: pairOf(plan, areas),
      pull: round(pull),
      length: round(length),
    })),
    stops: eyePath.stops.map(({ object, at, strength }) => ({
      object: nameOf(plan, object),
      at: pointOf(at),
      strength: round(strength),
    })),
  };
}

function leavesPart({ at, side, corner }: NonNullable<LeadMeasure['leaves']>) {
  return { at: pointOf(at), side, ...(corner === undefined ? {} : { corner }) };
}

function sidesPart({ left, right, top, bottom }: Measures['eyePath']['sides']) {
  return { left, right, top, bottom };
}

function originPart(plan: Plan, { from }: LeadMeasure) {
  switch (from.kind) {
    case 'edge':
      return { from: from.kind, side: from.side };
    case 'corner':
      return { from: from.kind, corner: from.corner };
    case 'object':
      return { from: from.kind, object: nameOf(plan, from.object) };
    case 'inside':
      return { from: from.kind };
  }
}

function huesPart(plan: Plan, { hues }: Measures): Part<'hues'> {
  const { wheel, roles, colours, temperature, strongestChroma: strongest, areaAdvice } = hues;
  return {
    wheel,
    roles: roles.map(({ role, name, hueDegrees, value, chroma }) => ({
      role,
      hue: name,
      hueDegrees: round(hueDegrees),
      munsellValue: round(value),
      munsellChroma: round(chroma),
    })),
    colours: colours.map(({ colour, name, hueDegrees, fromDominant }) => ({
      name: plan.colours[colour]?.name ?? '',
      hue: name,
      hueDegrees: round(hueDegrees),
      ...(fromDominant === undefined ? {} : { fromDominant: round(fromDominant) }),
    })),
    warm: round(temperature.warm),
    cool: round(temperature.cool),
    neutral: round(temperature.neutral),
    ...(strongest
      ? {
          strongestChroma: {
            area: nameOf(plan, strongest.object),
            munsellChroma: round(strongest.chroma),
            ...(strongest.fromFocus === undefined ? {} : { fromFocus: round(strongest.fromFocus) }),
          },
        }
      : {}),
    ...(areaAdvice
      ? {
          areaAdvice: {
            dominantWanted: round(areaAdvice.dominantWanted),
            dominantMeasured: round(areaAdvice.dominantMeasured),
          },
        }
      : {}),
  };
}
