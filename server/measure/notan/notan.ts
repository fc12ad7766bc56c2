import { Groups } from '../../plan/geometry/groups.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import { GROUND, meetingAreas } from '../borders/borders.js';
import { labelMap } from '../areas/label-map.js';
import { inBillionths } from '../areas/place-order.js';
import { keptOfObjects } from '../kept-lists.js';
import { type Memory, sameInputs } from '../memory.js';
import { type FieldMap, fieldMap } from './fields.js';

/** The picture in two or three flat tones, one to each group of the value scale. */
export interface NotanMeasure {
  /** In the order of the groups. */
  readonly tones: readonly Tone[];
}

export interface Tone {
  readonly key: string;
  readonly name: string;
  /** Part of the picture. */
  readonly share: number;
  /** Its separate pieces, largest first. */
  readonly pieces: readonly TonePiece[];
  /** Of the largest piece, part of its tone; 0 for a tone that is not there. */
  readonly largestOfTone: number;
}

/** What hangs together in one tone. */
export interface TonePiece {
  /** Part of the picture. */
  readonly share: number;
  /** A place inside it, about as far from its border as any. Worked out when it is first read. */
  readonly at: Point;
  /** Objects seen in it, most first; `GROUND` for the bare ground. */
  readonly areas: readonly number[];
}

/**
 * The tones of a plan, one to each group of its scale, and how each hangs together. Two areas of one tone are one
 * piece when they touch along more than a hair (three thousandths of the long side, or a quarter of the border of the
 * smaller where that is less): at a corner they are apart.
 * Shares and what touches what are exact. What has no step, or one that no group holds, lies in no tone.
 */
export function measureNotan(plan: Plan, areas: VisibleAreas, memory: Memory): NotanMeasure {
  const map = labelMap(plan, areas, memory);
  const fields = memory.recall('notan fields', '', [map], (last: FieldMap | undefined) =>
    fieldMap(plan, areas, meetingAreas(plan, areas, memory), map, last),
  );
  const { groups } = plan.scale;
  const { step: groundStep } = plan.canvas.ground;
  const steps = keptOfObjects('steps', plan, memory, ({ step }) => step);
  const inputs = [
    fields,
    groundStep,
    steps,
    ...groups.flatMap(({ key, name, from, to }) => [key, name, from, to]),
  ];
  return memory.recall('notan', '', inputs, () => {
    const roundedSteps = Int32Array.from(steps, (step) => Math.round(step ?? 0));
    const stepOf = (area: number): number =>
      area === GROUND ? Math.round(groundStep ?? 0) : (roundedSteps[area] as number);
    return {
      tones: groups.map(({ key, name, from, to }): Tone => {
        const ofTone = joinedFields(fields, (area) => stepOf(area) >= from && stepOf(area) <= to)
          .map((own) => pieceOf(fields, own))
          .sort((a, b) => inBillionths(b.share) - inBillionths(a.share));
        const share = ofTone.reduce((sum, piece) => sum + piece.share, 0);
        const largest = ofTone[0]?.share ?? 0;
        return { key, name, share, pieces: ofTone, largestOfTone: share > 0 ? largest / share : 0 };
      }),
    };
  });
}

/** The indices of fields that hang together. */
type Joined = readonly number[];

/** The fields of the areas that belong, those together that touch. */
function joinedFields({ fields, contacts }: FieldMap, belongs: (area: number) => boolean): readonly Joined[] {
  const groups = new Groups(fields.length);
  const isIn = Uint8Array.from(fields, ({ area, share }) => (share > 0 && belongs(area) ? 1 : 0));
  for (let i = 0; i < contacts.length; i += 2) {
    const [one, other] = [contacts[i] as number, contacts[i + 1] as number];
    if (isIn[one] === 1 && isIn[other] === 1) groups.join(one, other);
  }
  const pieces: number[][] = [];
  const byFirst: (number[] | undefined)[] = [];
  for (let field = 0; field < fields.length; field++) {
    if (isIn[field] === 0) continue;
    const first = groups.firstOf(field);
    const known = byFirst[first];
    if (known) known.push(field);
    else pieces.push((byFirst[first] = [field]));
  }
  return pieces;
}

interface KeptPiece {
  readonly own: Joined;
  readonly piece: TonePiece;
}

/** By the first of their fields. */
const tonePieces = new WeakMap<FieldMap, Map<number, KeptPiece>>();

/** What hangs together in one tone, kept as long as the fields: other steps leave most pieces what they are. */
function pieceOf(map: FieldMap, own: Joined): TonePiece {
  const kept = tonePieces.get(map) ?? new Map<number, KeptPiece>();
  tonePieces.set(map, kept);
  const first = own[0] ?? 0;
  const last = kept.get(first);
  if (last && sameInputs(last.own, own)) return last.piece;
  const piece = joinedPiece(map, own);
  kept.set(first, { own, piece });
  return piece;
}

function joinedPiece({ fields, places }: FieldMap, own: Joined): TonePiece {
  let known: Point | undefined;
  const { share, areas } = own.length === 1 ? ofOne(fields, own) : ofSeveral(fields, own);
  return {
    share,
    get at() {
      // What is smaller than a cell is small enough for the middle of its box.
      return (known ??= places.inside(own) ?? fields[own[0] ?? 0]?.middle ?? { x: 0, y: 0 });
    },
    areas,
  };
}

type PieceAreas = Pick<TonePiece, 'share' | 'areas'>;

/** Most pieces are a single field. */
function ofOne(fields: FieldMap['fields'], [only = 0]: Joined): PieceAreas {
  const { area, share } = fields[only] ?? { area: GROUND, share: 0 };
  return { share, areas: [area] };
}

function ofSeveral(fields: FieldMap['fields'], own: Joined): PieceAreas {
  const shares = new Map<number, number>();
  for (const index of own) {
    const { area, share } = fields[index] ?? { area: GROUND, share: 0 };
    shares.set(area, (shares.get(area) ?? 0) + share);
  }
  return {
    share: [...shares.values()].reduce((sum, share) => sum + share, 0),
    areas: [...shares]
      .sort(([, one], [, other]) => inBillionths(other) - inBillionths(one))
      .map(([area]) => area),
  };
}
