import type { Finding } from '../findings/finding.js';
import { amountInWords, differenceInWords, millilitresInWords } from '../findings/words/paints.js';
import { BEYOND_REACH } from '../measure/mixing/search.js';
import { inWords } from '../plan/problems.js';
import { cells, inks, shown, table, type Inks } from './display.js';
import { figure, percent } from './measure-figures.js';
import type { MixDocument } from './schema/mix.js';
import { findingsText, section } from './sections.js';
import { wrapped } from './wrapped.js';

type Part = NonNullable<MixDocument['palette']>;
type Mixture = NonNullable<Part['colours'][number]['mixture']>;

const PREDICTIONS =
  'Mixtures are predictions: from measured spectra of one paint of each pigment, or, where estimated, from tones. ' +
  'Tubes of one pigment differ by maker and binder, so try each out before you mix much. ' +
  'Parts are by volume; a difference of 1 can just be seen side by side, one of 5 is another colour.';

/** What the colours of a plan are mixed of, for people, in 80 columns; with what is found in the palette. */
export function mixText(document: MixDocument, findings: readonly Finding[], coloured: boolean): string {
  const ink = inks(coloured);
  const { palette, title } = document;
  const heading = `${ink.strong(shown(title ?? 'Untitled plan'))}\n`;
  if (!palette) return `${heading}No palette is planned.\n`;
  return [
    heading,
    ...section('Paints', paintsText(palette), ink),
    ...section('Primaries', primariesText(palette), ink),
    ...section('Mixtures', mixturesText(palette, ink), ink),
    ...section('Glazes', glazesText(palette), ink),
    ...section('Strings of values', stringsText(palette), ink),
    ...section('How much of each', amountsText(palette), ink),
    ...section('What to look at', findingsText('palette', findings, ink), ink),
    wrapped(PREDICTIONS),
  ].join('\n');
}

function paintsText({ paints, mother }: Part): string {
  const width = Math.max(0, ...paints.map(({ name }) => cells(shown(name))));
  const rows = paints.map(({ name, index, pigment, side, transparency, basis, strengthGuessed }) => {
    const known = [[index, pigment].filter((word) => word !== undefined).join(' '), side, transparency];
    const what = known.filter((word) => word !== undefined && word !== '').join(', ');
    const space = ' '.repeat(width - cells(shown(name)));
    const from = strengthGuessed ? 'a guess by its full tone' : basis;
    return wrapped(`${what === '' ? '' : `${shown(what)}; `}${from}`, `  ${shown(name)}${space}  `);
  });
  return (
    (rows.length === 0 ? '  none\n' : rows.join('')) +
    (mother === undefined ? '' : wrapped(`\`${shown(mother)}\` goes into every mixture`, '  '))
  );
}

function primariesText({ primaries, paints }: Part): string {
  if (paints.length === 0) return '';
  const rows = primaries.map(({ primary, warm, cool, undecided, lacks }) => [
    primary,
    lacks.length === 2 && undecided.length === 0
      ? 'none'
      : [
          ...(warm.length > 0 ? [`warm ${inWords(warm.map(shown))}`] : []),
          ...(cool.length > 0 ? [`cool ${inWords(cool.map(shown))}`] : []),
          ...(undecided.length > 0 ? [`${inWords(undecided.map(shown))}, which lean to neither`] : []),
          ...(lacks.length === 1 && undecided.length === 0 ? [`no ${lacks[0] ?? ''} one`] : []),
        ].join('; '),
  ]);
  return rows.map(([primary = '', said = '']) => wrapped(said, `  ${primary.padEnd(6)}  `)).join('');
}

/** Under each colour its mixture, how near that comes and how much of it is wanted. */
function mixturesText({ colours }: Part, ink: Inks): string {
  return colours
    .map((colour) => {
      const names = [...colour.objects.map(shown), ...(colour.ground ? ['the toned ground'] : [])];
      const head = `${colour.wanted}  ${colour.munsell}`;
      const grey = colour.stated ? '' : ', the grey of its value';
      const told = colour.beyond ? ink.warning : (text: string) => text;
      return [
        wrapped(`${inWords(names)}, ${percent(colour.share)}${grey}`, `  ${head.padEnd(24)}`),
        colour.mixture
          ? wrapped(`${partsText(colour.mixture)}`, '    ')
          : wrapped('no paint that mixtures can be worked out from', '    '),
        ...(colour.difference === undefined
          ? []
          : [`    ${told(nearness(colour))}; ${millilitresInWords(colour.millilitres)}\n`]),
      ].join('');
    })
    .join('');
}

/** Over 5 and not beyond the palette is only what no paint was measured dark enough for. */
function nearness({ difference = 0, mixture, beyond, stated }: Part['colours'][number]): string {
  const kind = mixture?.estimate === true ? 'estimated, ' : '';
  const dark =
    stated && !beyond && difference > BEYOND_REACH ? ': darker than any paint that was measured' : '';
  return `${kind}${differenceInWords(difference)}${beyond ? ': beyond the palette' : dark}`;
}

function partsText({ parts }: Pick<Mixture, 'parts'>): string {
  const [only] = parts;
  if (only && parts.length === 1) return `${shown(only.paint)} alone`;
  return parts.map(({ paint, parts: count }) => `${count} ${shown(paint)}`).join(' : ');
}

function glazesText({ glazes }: Part): string {
  return glazes
    .map(({ object, mixture, mediumParts, difference = 0, seen, estimate }) => {
      const made =
        mixture && mediumParts !== undefined
          ? `${mixture.parts.map(({ paint, parts }) => `${parts} ${shown(paint)}`).join(' : ')} : ${mediumParts} medium`
          : 'no transparent paint for it';
      return wrapped(
        `${made}${difference < 1 ? '' : `, ${figure(difference, 1)} off over white`}, seen as ${seen}${estimate ? ', estimated' : ''}`,
        `  ${shown(object)}: `,
      );
    })
    .join('');
}

function stringsText({ strings }: Part): string {
  return strings
    .map(({ name, steps }) => {
      const rows = steps.map(({ step, wanted, mixture, difference }) =>
        wrapped(
          `${mixture ? partsText(mixture) : 'no mixture'}${difference === undefined ? '' : `, ${figure(difference, 1)} off`}`,
          `    ${String(step).padStart(2)}  ${wanted}  `,
        ),
      );
      return `  ${shown(name)}, from dark to light\n${rows.join('')}`;
    })
    .join('');
}

function amountsText({ paints }: Part): string {
  const rows = paints.flatMap((paint) =>
    paint.millilitres > 0
      ? [
          [
            shown(paint.name),
            amountInWords({
              millilitres: paint.millilitres,
              ...(paint.tubes === undefined ? {} : { tubes: paint.tubes }),
            }),
          ],
        ]
      : [],
  );
  return table(rows, ['left', 'left'], '  ');
}
