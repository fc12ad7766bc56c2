import { percent } from '../../findings/words/words.js';
import { complementOf, hueDistance, hueName } from '../../plan/colour/hue.js';
import { plainNumber, capitalised } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { notations, type Paragraphs, wantedAndMeasured } from './paragraphs.js';

/**
 * A colour's notations, its place on the wheel and how much of the picture it covers; nothing for a colour that the
 * plan does not have.
 */
export function colourFigures({ plan, measures }: Snapshot, index: number, style: Style): Paragraphs {
  const named = plan.colours[index];
  if (named === undefined) return [];
  const share = measures.colours.colours[index]?.share ?? 0;
  const budget = named.role && measures.colours.budget.find(({ key }) => key === named.role);
  const hue = measures.hues.colours.find(({ colour }) => colour === index);
  const place =
    hue === undefined
      ? []
      : [
          `${hue.name} on ${wheelNames[measures.hues.wheel]}` +
            (hue.fromDominant === undefined || named.role === 'dominant'
              ? '.'
              : `, ${plainNumber(hue.fromDominant, 0)}° from the dominant hue.`),
        ];
  return [
    `${style.strong(named.name)}: ${notations(named.colour, style)}`,
    ...place.map((words) => style.text(capitalised(words))),
    style.text(`Covers ${percent(share)} of the picture.`),
    ...(named.role === undefined ? [] : [style.text(`Role: ${named.role}.`)]),
    ...(budget ? [style.text(`All ${budget.name} colours: ${wantedAndMeasured(budget)}.`)] : []),
  ];
}

const wheelNames: Readonly<Record<Snapshot['plan']['wheel'], string>> = {
  painters: 'the painters’ wheel',
  munsell: 'Munsell’s hue circle',
};

/** The mean hue of each role with the angle from the dominant, and how warm and cool the picture is. */
export function wheelFigures({ measures: { hues } }: Snapshot, style: Style): Paragraphs {
  const dominant = hues.roles.find(({ role }) => role === 'dominant');
  const roles = hues.roles.map(({ role, hueDegrees, value, chroma, name }) => {
    const from =
      dominant === undefined || role === 'dominant'
        ? ''
        : `, ${plainNumber(hueDistance(hueDegrees, dominant.hueDegrees), 0)}° from the dominant`;
    return `${style.strong(role)}: ${style.text(`${name}${from}; mean value ${plainNumber(value, 1)}, chroma ${plainNumber(chroma, 1)}`)}`;
  });
  const opposite =
    dominant === undefined
      ? []
      : [style.text(`Opposite the dominant lies ${hueName(complementOf(dominant.hueDegrees), hues.wheel)}.`)];
  return [
    ...(roles.length === 0 ? [style.text('No role has a hue yet.')] : [style.list(roles)]),
    ...opposite,
    ...temperatureFigures(hues).map((words) => style.text(words)),
  ];
}

function temperatureFigures({ temperature }: Snapshot['measures']['hues']): readonly string[] {
  const { warm, cool, neutral } = temperature;
  if (warm + cool + neutral <= 0) return [];
  return [`Warm ${percent(warm)}, cool ${percent(cool)}, neutral ${percent(neutral)} of the picture.`];
}

/** What stands beside a colour budget: the strongest chroma, warm and cool, and Munsell's advice on areas. */
export function colourBalanceFigures({ plan, measures: { hues } }: Snapshot, style: Style): Paragraphs {
  const { strongestChroma: strongest, areaAdvice } = hues;
  const name = strongest && (plan.objects[strongest.object]?.name ?? 'the bare ground');
  const away =
    strongest?.fromFocus === undefined
      ? ''
      : strongest.fromFocus < 0.0005
        ? ', at the focal point'
        : `, ${percent(strongest.fromFocus)} of the diagonal from the focal point`;
  return [
    ...temperatureFigures(hues).map((words) => style.text(words)),
    ...(strongest === undefined || name === undefined
      ? []
      : [style.text(`The strongest chroma is ${plainNumber(strongest.chroma, 1)}: ${name}${away}.`)]),
    ...(areaAdvice === undefined
      ? []
      : [
          style.text(
            `Of the dominant colours and their complement together the dominant has ${percent(areaAdvice.dominantMeasured)}; ` +
              `Munsell advised ${percent(areaAdvice.dominantWanted)} (areas inversely as value x chroma; later studies do not bear it out).`,
          ),
        ]),
  ];
}
