import { nameBySides } from '../plan/stock.js';
import { balanceText, emphasisText, eyePathText, huesText, notanText } from './design-text.js';
import { inks, shown, table, type Inks } from './display.js';
import { figure, percent } from './measure-figures.js';
import type { MeasureDocument } from './schema/measure.js';
import { section } from './sections.js';

/** What is measured on a plan, for people: tables with a heading each. */
export function measureText(document: MeasureDocument, coloured: boolean): string {
  const ink = inks(coloured);
  const sections = [
    headingText(document, ink),
    ...section('Division', divisionText(document), ink),
    ...section('Centre of interest', focusText(document), ink),
    ...section('Objects, as they are seen', objectsText(document), ink),
    ...section('Values', valuesText(document), ink),
    ...section('Tones and planes', notanText(document), ink),
    ...section('Value budget', budgetText(document.values.budget, ink), ink),
    ...section('Colours', coloursText(document), ink),
    ...section('Hues', huesText(document), ink),
    ...section('Colour budget', budgetText(document.colours.budget, ink), ink),
    ...section('Emphasis', emphasisText(document), ink),
    ...section('Balance', balanceText(document), ink),
    ...section('Eye path', eyePathText(document), ink),
  ];
  return sections.join('\n');
}

function headingText({ title, canvas }: MeasureDocument, ink: Inks): string {
  const { support, medium, ground } = canvas;
  const materials = [medium, support].filter((text) => text !== undefined).join(' on ');
  const parts = [
    sizeText(canvas),
    ...(materials === '' ? [] : [shown(materials)]),
    ...proportionText(canvas),
    `ground ${ground.colour}, value ${figure(ground.munsellValue, 1)}`,
  ];
  return `${ink.strong(shown(title ?? 'Untitled plan'))}\n${parts.join(', ')}\n`;
}

/**
 * `figure 20, 73 x 60 cm`, by its stock name where it has one; `18 x 14 in, a stock size` for one named by its sides.
 */
function sizeText({ width, height, unit, stock, proportion }: MeasureDocument['canvas']): string {
  const size = `${figure(width)} x ${figure(height)} ${unit}`;
  const named = proportion.named.filter(({ sameSize }) => sameSize).map(({ name }) => name);
  const bySides = nameBySides({ width, height, unit });
  const names = stock === undefined ? named.filter((name) => name !== bySides) : [stock];
  return [...names, size, ...(named.includes(bySides) ? ['a stock size'] : [])].join(', ');
}

/** `golden section`, `3 : 4`; nothing for a proportion without a name. */
function proportionText({ proportion }: MeasureDocument['canvas']): readonly string[] {
  const shape = proportion.named.find(({ kind }) => kind !== 'paper' && kind !== 'stock');
  return shape === undefined ? [] : [shape.name];
}

function divisionText({ divisions, canvas }: MeasureDocument): string {
  const rows = divisions.flatMap(({ system, crossings }) =>
    crossings.map(({ name, at }, index) => [
      index === 0 ? system : '',
      name,
      `${figure(at.x)} ${canvas.unit} from the left`,
      `${figure(at.y)} ${canvas.unit} from the top`,
    ]),
  );
  return table(rows, ['left', 'left', 'right', 'right'], '  ');
}

function focusText({ focus, canvas }: MeasureDocument): string {
  if (!focus) return '';
  const { at, nearestCrossing: nearest, fromCentre, dominants } = focus;
  const lines = [
    `(${figure(at.x)}, ${figure(at.y)}) ${canvas.unit}, ${percent(fromCentre)} of the diagonal from the middle`,
  ];
  if (nearest) {
    const away =
      nearest.distanceShare < 0.0005
        ? 'at'
        : `${figure(nearest.distance)} ${canvas.unit} (${percent(nearest.distanceShare)} of the diagonal) from`;
    lines.push(`${away} the ${nearest.name} crossing of ${nearest.system}`);
  }
  for (const { object, holds, distanceShare } of dominants) {
    const name = `\`${shown(object)}\``;
    if (holds) lines.push(`${name} holds it`);
    else if (distanceShare === null) lines.push(`nothing is seen of ${name}`);
    else lines.push(`${name} misses it by ${percent(distanceShare)} of the diagonal`);
  }
  return lines.map((line) => `  ${line}\n`).join('');
}

function objectsText({ objects }: MeasureDocument): string {
  if (objects.length === 0) return '';
  const rows = objects.map((object) => [
    shown(object.name),
    object.role ?? '',
    object.plane,
    object.step === undefined ? '-' : figure(object.step),
    shown(object.colourName ?? object.colour ?? '-'),
    percent(object.share),
    someShare(object.hiddenShare),
    someShare(object.offCanvasShare),
    coverers(object.coveredBy),
  ]);
  const head = ['object', 'role', 'plane', 'value', 'colour', 'seen', 'hidden', 'off canvas', 'covered by'];
  return table(
    [head, ...rows],
    ['left', 'left', 'left', 'right', 'left', 'right', 'right', 'right', 'left'],
    '  ',
  );
}

/** Nothing where it would read `0.0 %`. */
function someShare(share: number): string {
  return share < 0.0005 ? '' : percent(share);
}

function coverers(names: readonly string[]): string {
  const first = names.slice(0, 3).map(shown).join(', ');
  return names.length > 3 ? `${first} and ${names.length - 3} more` : first;
}

function valuesText({ values }: MeasureDocument): string {
  const rows = values.steps.map(({ step, munsellValue, share }) => {
    const group = values.groups.find(({ from, to }) => step >= from && step <= to);
    return [figure(step), figure(munsellValue, 1), percent(share), shown(group?.name ?? '')];
  });
  const groups = values.groups.map(({ name, share }) => `${shown(name)} ${percent(share)}`).join(', ');
  const notes = [
    groups,
    ...(values.munsellMean === undefined
      ? []
      : [`mean value ${figure(values.munsellMean, 1)}, ${values.key ?? 'middle'} key`]),
    ...(values.range === undefined
      ? []
      : [`nine tenths between ${figure(values.range.from, 1)} and ${figure(values.range.to, 1)}`]),
    ...(values.bareShare > 0 ? [`bare ground ${percent(values.bareShare)}`] : []),
    ...(values.unplannedShare > 0 ? [`without value or colour ${percent(values.unplannedShare)}`] : []),
  ];
  const steps = table(
    [['step', 'Munsell', 'share', 'group'], ...rows],
    ['right', 'right', 'right', 'left'],
    '  ',
  );
  return `${steps}  ${notes.join('; ')}\n`;
}

function coloursText({ colours, objects }: MeasureDocument): string {
  if (objects.length === 0 && colours.named.length === 0) return '';
  const rows = colours.named.map(({ name, colour, role, share }) => [
    shown(name),
    colour,
    role ?? '',
    percent(share),
  ]);
  const named = rows.length === 0 ? '' : table(rows, ['left', 'left', 'left', 'right'], '  ');
  const notes = [
    ...colours.roles.filter(({ share }) => share > 0).map(({ role, share }) => `${role} ${percent(share)}`),
    ...(colours.noRoleShare > 0 ? [`without a part ${percent(colours.noRoleShare)}`] : []),
    ...(colours.bareShare > 0 ? [`bare ground ${percent(colours.bareShare)}`] : []),
  ];
  return `${named}${notes.length === 0 ? '' : `  ${notes.join('; ')}\n`}`;
}

function budgetText(budget: MeasureDocument['values']['budget'], ink: Inks): string {
  if (budget.length === 0) return '';
  const rows = budget.map(({ name, share, target, tolerance, difference, within }) => [
    shown(name),
    percent(share),
    percent(target),
    percent(tolerance),
    within
      ? 'kept'
      : ink.warning(`${percent(Math.abs(difference))} too ${difference > 0 ? 'much' : 'little'}`),
  ]);
  const head = ['', 'measured', 'wanted', 'within', ''];
  return table([head, ...rows], ['left', 'right', 'right', 'right', 'left'], '  ');
}
