import { shortDate } from '../drawing/sittings/dates.js';
import type { Finding } from '../findings/finding.js';
import { dayOf } from '../measure/sittings/days.js';
import { inWords } from '../plan/problems.js';
import { inks, shown, table, type Alignment, type Inks } from './display.js';
import { figure, percent } from './measure-figures.js';
import type { RecordDocument } from './schema/record.js';
import { findingsText, section } from './sections.js';
import { wrapped } from './wrapped.js';

type Entry = RecordDocument['sittings'][number];
type Measured = Extract<Entry, { is: 'measured' }>;
type Seen = Measured['objects'][number];

const FIGURES =
  'Values are Munsell’s, from 0 black to 10 white; steps are those of the plan. A difference of colour is CIEDE2000: 1 can just ' +
  'be seen side by side, 5 at a glance. What is planned is what is to stand there after the sitting. A photograph is no ' +
  'measuring instrument: trust your eye before the canvas.';

/** What the photographs of the sittings tell, for people, in 80 columns; with what is found in them. */
export function recordText(
  document: RecordDocument,
  findings: readonly Finding[],
  coloured: boolean,
): string {
  const ink = inks(coloured);
  const { sittings, title } = document;
  const heading = `${ink.strong(shown(title ?? 'Untitled plan'))}\n`;
  if (sittings.length === 0) return `${heading}No sitting names a photograph.\n`;
  return [
    heading,
    ...sittings.map((entry) => entryText(document, entry, ink)),
    ...section('Progress', progressText(document), ink),
    ...section('What to look at', findingsText('record', findings, ink), ink),
    wrapped(FIGURES),
  ].join('\n');
}

function entryText(document: RecordDocument, entry: Entry, ink: Inks): string {
  const { sitting, title, date, photograph } = entry;
  const day = date === undefined ? undefined : dayOf(date);
  const name = title.trim() === '' ? `Sitting ${sitting}` : `${sitting} ${shown(title)}`;
  const about = [...(day === undefined ? [] : [shortDate(day)]), shown(photograph)].join(', ');
  const heading = `${ink.strong(name)}\n${wrapped(ink.quiet(about), '  ')}`;
  switch (entry.is) {
    case 'on its way':
      return `${heading}  not read yet\n`;
    case 'unreadable':
      return `${heading}${wrapped(shown(entry.reason), '  ')}`;
    case 'measured':
      return heading + measuredText(document, entry, ink);
  }
}

function measuredText(document: RecordDocument, entry: Measured, ink: Inks): string {
  const said = [
    rangeText(document, entry),
    ...emphasisText(document, entry),
    ...changeText(document, entry),
    ...(entry.whole.values || entry.objects.every(({ worked }) => worked) ? [] : [unpaintedText(entry)]),
    ...entry.doubts.map(({ inWords: words }) => shown(words)),
  ];
  return [
    said.map((line) => wrapped(line, '  ')).join(''),
    sharesText(entry, ink),
    objectsText(entry, ink),
    movedText(entry),
  ]
    .filter((text) => text !== '')
    .join('\n');
}

function rangeText({ plannedMeanValue }: RecordDocument, { meanValue, range }: Measured): string {
  const planned = plannedMeanValue === undefined ? '' : `, ${figure(plannedMeanValue, 1)} in the whole plan`;
  return `values from ${figure(range.darkest, 1)} to ${figure(range.lightest, 1)}, mean ${figure(meanValue, 1)}${planned}`;
}

function emphasisText({ unit }: RecordDocument, { emphasis }: Measured): readonly string[] {
  if (!emphasis) return [];
  const { at, fromFocus, atFocus, plannedAtFocus } = emphasis;
  const place = `draws the eye most at (${figure(at.x, 1)}, ${figure(at.y, 1)}) ${unit}`;
  if (fromFocus === undefined || atFocus === undefined) return [place];
  const planned = plannedAtFocus === undefined ? '' : `, in the plan ${percent(plannedAtFocus)}`;
  return [
    `${place}, ${percent(fromFocus)} of the diagonal from the focal point, which has ${percent(atFocus)} of that contrast${planned}`,
  ];
}

function changeText({ sittings }: RecordDocument, { change }: Measured): readonly string[] {
  if (!change) return [];
  const before = sittings.find(({ sitting }) => sitting === change.since)?.title ?? '';
  const most = change.objects
    .slice(0, 3)
    .map(({ name, difference }) => `${shown(name)} ${figure(difference, 1)}`);
  const objects = most.length === 0 ? '' : `; most of all ${inWords(most)}`;
  return [`changed by ${figure(change.mean, 1)} on average since “${shown(before)}”${objects}`];
}

function unpaintedText({ objects }: Measured): string {
  const names = objects.filter(({ worked }) => !worked).map(({ name }) => shown(name));
  return `not painted yet: ${names.join(', ')}; shares are not held to the plan until all is`;
}

/**
 * Groups of values and colour roles, each with what is planned and the budget, to which it is held once all is painted.
 */
function sharesText(
  { groups, valueBudget, roles, colourBudget, noRole, whole }: Measured,
  ink: Inks,
): string {
  const row = (
    name: string,
    share: number,
    planned: number,
    budget: Measured['valueBudget'],
    isHeld: boolean,
  ): string[] => {
    const entry = budget.find((one) => one.name === name);
    return [
      shown(name),
      percent(share),
      percent(planned),
      entry ? `${figure(entry.target * 100, 1)} % within ${figure(entry.tolerance * 100, 1)} %` : '',
      isHeld && entry && !entry.within ? (entry.share > entry.target ? 'too much' : 'too little') : '',
    ];
  };
  const rows = [
    ...groups.map(({ name, share, planned }) => row(name, share, planned, valueBudget, whole.values)),
    ...valueBudget
      .filter(({ name }) => !groups.some((group) => group.name === name))
      .map(({ name, share, planned }) => row(name, share, planned, valueBudget, whole.values)),
    ...roles.map(({ role, share, planned }) => row(role, share, planned, colourBudget, whole.colours)),
    ...(roles.length > 0 && noRole >= 0.0005 ? [['without role', percent(noRole)]] : []),
  ];
  const head = ['', 'seen', 'whole plan', 'budget', ''];
  return headedTable(head, rows, ['left', 'right', 'right', 'left', 'left'], ink);
}

function objectsText({ objects }: Measured, ink: Inks): string {
  if (objects.length === 0) return '';
  const rows = objects.map((seen) => [
    shown(seen.name),
    figure(seen.step, 1),
    seen.planned ? figure(seen.planned.step, 1) : seen.worked ? '' : 'not painted',
    seen.stepsOff === undefined ? '' : offText(seen.stepsOff),
    seen.munsell,
    seen.planned?.munsell ?? '',
    seen.difference === undefined ? '' : `${figure(seen.difference, 1)} off`,
  ]);
  const head = ['object', 'step', 'planned', '', 'colour', 'planned', ''];
  return headedTable(head, rows, ['left', 'right', 'right', 'left', 'left', 'left', 'right'], ink);
}

function headedTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  alignments: readonly Alignment[],
  ink: Inks,
): string {
  const [first = '', ...lines] = table([head, ...rows], alignments, '  ').split('\n');
  return [ink.quiet(first), ...lines].join('\n');
}

/** `1.2 darker`; as planned within a tenth of a step. */
function offText(stepsOff: number): string {
  const told = figure(Math.abs(stepsOff), 1);
  return told === '0' ? 'as planned' : `${told} ${stepsOff < 0 ? 'darker' : 'lighter'}`;
}

function movedText({ objects }: Measured): string {
  const named = (went: Seen['went']): readonly string[] =>
    objects.filter((seen) => seen.went === went).map(({ name }) => shown(name));
  const [nearer, away] = [named('nearer'), named('away')];
  return (
    (nearer.length === 0 ? '' : wrapped(nearer.join(', '), '  came nearer to the plan: ')) +
    (away.length === 0 ? '' : wrapped(away.join(', '), '  went away from the plan: '))
  );
}

/** Each object over the sittings, in the order of the plan: steps off, and how far its colour is. */
function progressText({ sittings }: RecordDocument): string {
  const measured = sittings.filter((entry): entry is Measured => entry.is === 'measured');
  if (measured.length < 2) return '';
  const names = [...new Set(measured.flatMap(({ objects }) => objects.map(({ name }) => name)))];
  const rows = names.map((name) => [
    shown(name),
    ...measured.map(({ objects }) => stoodText(objects.find((seen) => seen.name === name))),
  ]);
  const head = ['object', ...measured.map(({ sitting }) => `sitting ${sitting}`)];
  return table([head, ...rows], ['left', ...measured.map(() => 'right' as const)], '  ');
}

/** `-0.4, 8 off`; steps alone where only values count. */
function stoodText(seen: Seen | undefined): string {
  if (seen?.stepsOff === undefined) return '-';
  const steps = figure(seen.stepsOff, 1);
  const told = steps.startsWith('-') || steps === '0' ? steps : `+${steps}`;
  return seen.difference === undefined ? told : `${told}, ${figure(seen.difference, 1)} off`;
}
