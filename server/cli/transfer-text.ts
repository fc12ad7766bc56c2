import type { Finding } from '../findings/finding.js';
import { systemName } from '../drawing/captions/words.js';
import { formInWords, gridInWords, pointInWords } from '../drawing/transfer/words.js';
import { transferGridOf } from '../measure/transfer/grid.js';
import { type Ruler, figureOn, markOf, ruled } from '../measure/transfer/rulers.js';
import type { Plan } from '../plan/plan.js';
import { capitalised, plainNumber } from '../plan/problems.js';
import { inks, shown, table, type Alignment, type Inks } from './display.js';
import type { TransferDocument } from './schema/transfer.js';
import { findingsIn, graded, section } from './sections.js';
import { wrapped } from './wrapped.js';

type ShapePart = TransferDocument['objects'][number]['shapes'][number];
type Row = readonly string[];

const COLUMNS: readonly Alignment[] = ['right', 'left', 'right', 'right', 'left', 'right', 'right'];

/** What is measured off to carry a plan over, for people, in 80 columns. */
export function transferText(
  document: TransferDocument,
  plan: Plan,
  findings: readonly Finding[],
  coloured: boolean,
): string {
  const ink = inks(coloured);
  return [
    `${ink.strong(shown(document.title ?? 'Untitled plan'))}\n`,
    ...section('Grid', gridText(document, plan), ink),
    ...section('Points to measure off', pointsText(document, plan, ink), ink),
    ...section('Lines', linesText(document, plan), ink),
    ...section('What to look at', findingsText(findings, ink), ink),
    wrapped(roundingLine(document)),
  ].join('\n');
}

function gridText({ grid, ruler, mirrored }: TransferDocument, plan: Plan): string {
  const squares = gridInWords(transferGridOf(plan), plan.canvas, ruler);
  return [
    wrapped(`${squares}, lettered from the ${mirrored ? 'right' : 'left'}, numbered from the top`, '  '),
    ...(grid.stated ? [] : [wrapped(`None is stated; \`${grid.line}\` in the plan keeps this one.`, '  ')]),
    ...(mirrored
      ? [
          wrapped(
            'Left and right are changed over: this is seen from the back, and squares keep their names.',
            '  ',
          ),
        ]
      : []),
  ].join('');
}

/** One table for all objects, so that its columns stand in line; each object's name goes before its rows. */
function pointsText(document: TransferDocument, plan: Plan, ink: Inks): string {
  const { objects, places, ruler } = document;
  const parts = [
    ...objects.flatMap(({ object, shapes, more }) =>
      shapes.map((shape, index) => ({
        name: index === 0 ? object : '',
        said: shapeLine(shape, document, plan),
        rows: shape.points.map((point): Row => [
          String(point.number),
          pointInWords({ ...point, isCovered: point.covered }),
          ...placeCells(point, document, plan),
        ]),
        after:
          index === shapes.length - 1 && more > 0
            ? `and ${more} smaller ${more === 1 ? 'shape' : 'shapes'}`
            : '',
      })),
    ),
    ...(places.length === 0
      ? []
      : [
          {
            name: 'the plan itself',
            said: '',
            rows: places.map((place): Row => ['', shown(place.name), ...placeCells(place, document, plan)]),
            after: '',
          },
        ]),
  ];
  if (parts.length === 0) return '  none\n';
  const head: Row = ['', '', 'from left', 'from top', 'square', 'its left', 'its top'];
  const [first = '', ...lines] = table([head, ...parts.flatMap(({ rows }) => rows)], COLUMNS, '    ')
    .split('\n')
    .slice(0, -1);
  let at = 0;
  const told = parts.map(({ name, said, rows, after }) => {
    const own = lines.slice(at, (at += rows.length));
    const heading = [name === '' ? '' : shown(name), said].filter((word) => word !== '').join(': ');
    return [
      ...(heading === '' ? [] : [wrapped(heading, '  ')]),
      ...own.map((line) => `${line}\n`),
      ...(after === '' ? [] : [wrapped(after, '    ')]),
    ].join('');
  });
  return `${wrapped(`from the left and the upper edge, in ${UNITS[ruler]}`, '  ')}${ink.quiet(first)}\n${told.join('')}`;
}

const UNITS: Readonly<Record<Ruler, string>> = { cm: 'cm', mm: 'mm', in: 'inches' };

function placeCells(
  place: Omit<TransferDocument['places'][number], 'name' | 'of'>,
  { ruler }: TransferDocument,
  { canvas }: Plan,
): Row {
  const figure = (length: number) => {
    const millimetres = length * canvas.millimetresPerUnit;
    // So that points stand under points.
    return ruler === 'cm' ? (Math.round(millimetres) / 10).toFixed(1) : figureOn(millimetres, ruler);
  };
  return [
    figure(place.fromLeft),
    figure(place.fromTop),
    place.square,
    figure(place.fromSquareLeft),
    figure(place.fromSquareTop),
  ];
}

function shapeLine(shape: ShapePart, { ruler }: TransferDocument, { canvas }: Plan): string {
  const { form: kind, radius, axes: [long, short] = [], turn } = shape;
  const form = formInWords(
    {
      form: kind,
      ...(radius === undefined ? {} : { radius }),
      ...(long === undefined || short === undefined ? {} : { axes: [long, short] as const }),
      ...(turn === undefined ? {} : { turn }),
    },
    canvas,
    ruler,
  );
  const off =
    shape.offCanvas === 0
      ? ''
      : `${shape.offCanvas} ${shape.offCanvas === 1 ? 'point lies' : 'points lie'} off the canvas`;
  return [form, off].filter((word) => word !== '').join('; ');
}

function linesText({ divisions, ruler }: TransferDocument, { canvas, divisions: planned }: Plan): string {
  const told = (length: number) => ruled(length * canvas.millimetresPerUnit, ruler);
  const names = new Map(planned.map(({ system }) => [String(system), systemName(system)]));
  return divisions
    .map(({ system, uprights, levels, slopes }) => {
      const parts = [
        ...(uprights.length === 0 ? [] : [`uprights ${uprights.map(told).join(', ')} from the left`]),
        ...(levels.length === 0 ? [] : [`levels ${levels.map(told).join(', ')} from the top`]),
        ...slopes.map(
          ({ from, to }) =>
            `a line from (${told(from.x)}, ${told(from.y)}) to (${told(to.x)}, ${told(to.y)})`,
        ),
      ];
      return wrapped(parts.join('; '), `  ${capitalised(names.get(system) ?? system)}: `);
    })
    .join('');
}

function findingsText(findings: readonly Finding[], ink: Inks): string {
  return findingsIn('transfer', findings)
    .map(({ message, advice, severity }) =>
      graded(severity, '  ', advice === undefined ? message : `${message} ${advice}`, ink),
    )
    .join('');
}

function roundingLine({ ruler, rounding }: TransferDocument): string {
  const marks = ruler === 'in' ? 'sixteenths of an inch' : 'whole millimetres';
  const most = plainNumber(rounding, 2);
  if (rounding < 0.005) return `Every length lies on ${marks}, so rounding costs nothing.`;
  const inMillimetres = ruler === 'in' ? ` (a sixteenth is ${plainNumber(markOf('in'), 1)} mm)` : '';
  return `Lengths are rounded to ${marks}${inMillimetres}, which moves the worst of these points by ${most} mm across or down.`;
}
