import * as v from 'valibot';
import { area, degrees, length, plane, point, role, share, side } from './parts.js';

const strength = v.pipe(
  v.number(),
  v.description('Length in diagonals x sharpness x contrast, gathered within 8 % of the diagonal.'),
);
const corner = v.picklist(['upper left', 'upper right', 'lower left', 'lower right']);
const pair = v.pipe(v.array(area), v.length(2));

const place = v.strictObject({
  at: point,
  strength,
  areas: v.pipe(pair, v.description('The two areas whose border counts most there.')),
  fromEdge: v.pipe(share, v.description('From the nearest edge of the canvas, part of the diagonal.')),
});

export const proportion = v.strictObject({
  ratio: v.pipe(v.number(), v.description('Long side over short side.')),
  named: v.array(
    v.strictObject({
      name: v.string(),
      kind: v.picklist(['simple', 'golden', 'root', 'paper', 'stock']),
      ratio: v.number(),
      difference: v.pipe(v.number(), v.description('Of the canvas from it, part of it.')),
      sameSize: v.boolean(),
    }),
  ),
});

export const emphasis = v.strictObject({
  strongest: strength,
  places: v.pipe(v.array(place), v.description('Strongest first.')),
  nearEdge: v.array(place),
  focal: v.exactOptional(
    v.strictObject({
      at: point,
      strength,
      areas: pair,
      rank: v.pipe(v.number(), v.description('1 when no place elsewhere is stronger.')),
      rivals: v.array(place),
      means: v.array(
        v.strictObject({
          means: v.picklist(['value', 'colour', 'edges', 'detail', 'scale', 'isolation']),
          stated: v.boolean(),
          there: v.number(),
          elsewhere: v.number(),
          holds: v.boolean(),
          inWords: v.string(),
        }),
      ),
    }),
  ),
});

export const borders = v.pipe(
  v.array(
    v.strictObject({
      front: area,
      behind: area,
      length,
      sharpness: v.pipe(v.number(), v.description('Hard 1, firm 0.7, soft 0.35, lost 0.1.')),
      valueContrast: v.pipe(v.number(), v.description('Difference of Munsell value.')),
      colourContrast: v.pipe(v.number(), v.description('Distance in CIELAB a*, b*.')),
      pull: v.number(),
    }),
  ),
  v.description('One for each pair of areas that border on each other, longest first.'),
);

export const balance = v.strictObject({
  offset: v.exactOptional(
    v.pipe(
      share,
      v.description('Of the centre of weight from the vertical middle, part of the width, right positive.'),
    ),
  ),
  centre: v.exactOptional(v.pipe(length, v.description('The same from the left edge, canvas units.'))),
  ground: v.pipe(v.number(), v.description('Weight of the bare ground.')),
  weights: v.pipe(
    v.array(v.strictObject({ object: v.string(), weight: v.number(), arm: share, moment: v.number() })),
    v.description('Heaviest first; arm: part of the width from the middle, right positive.'),
  ),
});

export const spacing = v.strictObject({
  principals: v.array(v.strictObject({ object: v.string(), size: share })),
  gaps: v.array(
    v.strictObject({
      along: v.picklist(['across', 'down']),
      between: pair,
      size: length,
      shareOfDiagonal: share,
    }),
  ),
});

export const tangents = v.strictObject({
  touches: v.array(
    v.strictObject({ one: v.string(), other: v.string(), gap: length, shareOfDiagonal: share, at: point }),
  ),
  edges: v.array(
    v.strictObject({ object: v.string(), side, gap: length, shareOfDiagonal: share, at: point }),
  ),
  corners: v.array(v.strictObject({ object: v.string(), corner, at: point })),
});

const leaves = v.strictObject({ at: point, side, corner: v.exactOptional(corner) });

export const eyePath = v.strictObject({
  leads: v.array(
    v.strictObject({
      name: v.string(),
      from: v.picklist(['edge', 'corner', 'object', 'inside']),
      side: v.exactOptional(side),
      corner: v.exactOptional(corner),
      object: v.exactOptional(v.string()),
      length,
      heading: v.pipe(degrees, v.description('Where it ends: 0 to the right, 90 down.')),
      miss: v.exactOptional(
        v.pipe(length, v.description('How far it passes from the focal point, carried on.')),
      ),
      missShare: v.exactOptional(share),
      leaves: v.exactOptional(leaves),
    }),
  ),
  angles: v.array(v.strictObject({ one: v.string(), other: v.string(), degrees })),
  sides: v.strictObject({ left: v.number(), right: v.number(), top: v.number(), bottom: v.number() }),
  exits: v.array(v.strictObject({ ...leaves.entries, areas: pair, pull: v.number(), length })),
  stops: v.array(v.strictObject({ object: v.string(), at: point, strength })),
});

export const notan = v.pipe(
  v.array(
    v.strictObject({
      name: v.string(),
      share,
      largestOfTone: v.pipe(share, v.description('The largest piece as a part of its tone.')),
      pieces: v.pipe(
        v.array(v.strictObject({ share, at: point, areas: v.array(area) })),
        v.description('Separate pieces, largest first.'),
      ),
    }),
  ),
  v.description('The picture in flat tones, one to each group of the value scale.'),
);

export const planes = v.array(
  v.strictObject({
    plane,
    share,
    munsellValue: v.exactOptional(v.number()),
    munsellChroma: v.exactOptional(v.number()),
  }),
);

export const hues = v.strictObject({
  wheel: v.picklist(['painters', 'munsell']),
  roles: v.array(
    v.strictObject({
      role,
      hue: v.string(),
      hueDegrees: degrees,
      munsellValue: v.number(),
      munsellChroma: v.number(),
    }),
  ),
  colours: v.array(
    v.strictObject({
      name: v.string(),
      hue: v.string(),
      hueDegrees: degrees,
      fromDominant: v.exactOptional(v.pipe(degrees, v.description('0 to 180.'))),
    }),
  ),
  warm: share,
  cool: share,
  neutral: share,
  strongestChroma: v.exactOptional(
    v.strictObject({ area, munsellChroma: v.number(), fromFocus: v.exactOptional(share) }),
  ),
  areaAdvice: v.exactOptional(
    v.pipe(
      v.strictObject({ dominantWanted: share, dominantMeasured: share }),
      v.description(
        'Munsell’s advice for dominant and complement together; later studies do not bear it out.',
      ),
    ),
  ),
});
