import { marked, said, t } from '../../../grammar/index.js';
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
  const place = hue === undefined ? [] : [placeOnWheel(hue, named.role, measures.hues.wheel)];
  return [
    `${style.strong(named.name)}: ${notations(named.colour, style)}`,
    ...place.map((words) => style.text(capitalised(words))),
    style.text(t('Covers {0} of the picture.', percent(share))),
    ...(named.role === undefined ? [] : [style.text(t('Role: {0}.', named.role))]),
    ...(budget ? [style.text(t('All {0} colours: {1}.', budget.name, wantedAndMeasured(budget)))] : []),
  ];
}

function placeOnWheel(
  { name, fromDominant }: Snapshot['measures']['hues']['colours'][number],
  role: string | undefined,
  wheel: Snapshot['plan']['wheel'],
): string {
  const { alone, apart } = onWheels[wheel];
  return fromDominant === undefined || role === 'dominant'
    ? said(alone, said(name))
    : said(apart, said(name), plainNumber(fromDominant, 0));
}

const onWheels = {
  painters: {
    alone: marked('{0} on the painters’ wheel.'),
    apart: marked('{0} on the painters’ wheel, {1}° from the dominant hue.'),
  },
  munsell: {
    alone: marked('{0} on Munsell’s hue circle.'),
    apart: marked('{0} on Munsell’s hue circle, {1}° from the dominant hue.'),
  },
} as const;

/** The mean hue of each role with the angle from the dominant, and how warm and cool the picture is. */
export function wheelFigures({ measures: { hues } }: Snapshot, style: Style): Paragraphs {
  const dominant = hues.roles.find(({ role }) => role === 'dominant');
  const roles = hues.roles.map(({ role, hueDegrees, value, chroma, name }) => {
    const mean = [plainNumber(value, 1), plainNumber(chroma, 1)] as const;
    const told =
      dominant === undefined || role === 'dominant'
        ? t('{0}; mean value {1}, chroma {2}', said(name), ...mean)
        : t(
            '{0}, {3}° from the dominant; mean value {1}, chroma {2}',
            said(name),
            ...mean,
            plainNumber(hueDistance(hueDegrees, dominant.hueDegrees), 0),
          );
    return `${style.strong(role)}: ${style.text(told)}`;
  });
  const opposite =
    dominant === undefined
      ? []
      : [
          style.text(
            t(
              'Opposite the dominant lies {0}.',
              said(hueName(complementOf(dominant.hueDegrees), hues.wheel)),
            ),
          ),
        ];
  return [
    ...(roles.length === 0 ? [style.text(t('No role has a hue yet.'))] : [style.list(roles)]),
    ...opposite,
    ...temperatureFigures(hues).map((words) => style.text(words)),
  ];
}

function temperatureFigures({ temperature }: Snapshot['measures']['hues']): readonly string[] {
  const { warm, cool, neutral } = temperature;
  if (warm + cool + neutral <= 0) return [];
  return [
    t('Warm {0}, cool {1}, neutral {2} of the picture.', percent(warm), percent(cool), percent(neutral)),
  ];
}

/** What stands beside a colour budget: the strongest chroma, warm and cool, and Munsell's advice on areas. */
export function colourBalanceFigures({ plan, measures: { hues } }: Snapshot, style: Style): Paragraphs {
  const { strongestChroma: strongest, areaAdvice } = hues;
  return [
    ...temperatureFigures(hues).map((words) => style.text(words)),
    ...(strongest === undefined ? [] : [style.text(strongestInWords(plan, strongest))]),
    ...(areaAdvice === undefined
      ? []
      : [
          style.text(
            t(
              'Of the dominant colours and their complement together the dominant has {0}; Munsell advised {1} (areas inversely as value x chroma; later studies do not bear it out).',
              percent(areaAdvice.dominantMeasured),
              percent(areaAdvice.dominantWanted),
            ),
          ),
        ]),
  ];
}

function strongestInWords(
  plan: Snapshot['plan'],
  { object, chroma, fromFocus }: NonNullable<Snapshot['measures']['hues']['strongestChroma']>,
): string {
  const told = [plainNumber(chroma, 1), plan.objects[object]?.name ?? t('the bare ground')] as const;
  if (fromFocus === undefined) return t('The strongest chroma is {0}: {1}.', ...told);
  return fromFocus < 0.0005
    ? t('The strongest chroma is {0}: {1}, at the focal point.', ...told)
    : t(
        'The strongest chroma is {0}: {1}, {2} of the diagonal from the focal point.',
        ...told,
        percent(fromFocus),
      );
}
