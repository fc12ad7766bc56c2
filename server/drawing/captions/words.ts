import type { DivisionSystem } from '../../../grammar/index.js';
import { counted } from '../../findings/words/words.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { View } from '../scene.js';

/** `68 %`; less than one in two hundred, but not nothing, is `under 1 %`. */
export function percent(share: number): string {
  const rounded = Math.round(share * 100);
  return rounded === 0 && share > 0 ? 'under 1 %' : `${rounded} %`;
}

/** `84 %`, or `2.5 times` for what is much more than the whole: hundreds of per cent are hard to read. */
export function partOrTimes(share: number): string {
  return share < 1.495 ? percent(share) : `${Number(share.toFixed(share < 10 ? 1 : 0))} times`;
}

/** `80 × 50 cm`, with the stock name when the canvas was given by one. */
export function canvasSize({ width, height, unit, stock }: Canvas): string {
  // To the millimetre in metres, which a canvas may be as small as.
  const [across, down] = [width, height].map((side) => plainNumber(side, unit === 'm' ? 3 : 2));
  const size = `${across} × ${down} ${unit}`;
  return stock === undefined ? size : `${stock}, ${size}`;
}

/** What there is no room for: `and two more leads`. */
export function andMore(count: number, one: string, many: string): string {
  return `and ${counted(count)} more ${count === 1 ? one : many}`;
}

const SYSTEMS: Readonly<Record<DivisionSystem, string>> = {
  golden: 'golden section',
  thirds: 'thirds',
  'two to three': 'two to three',
  quarters: 'quarters',
  rabatment: 'rabatment',
  diagonals: 'diagonals and reciprocals',
  armature: 'armature',
  'root 2': 'root 2',
  'root 3': 'root 3',
  'root 4': 'root 4',
  'root 5': 'root 5',
  own: 'own division',
};

export function systemName(system: DivisionSystem): string {
  return SYSTEMS[system];
}

/** Words of the plan, which stand between backticks in a message, in quotation marks. */
export function inQuotes(message: string): string {
  return message.replace(/`([^`]*)`/gu, '‘$1’');
}

export function planTitle(plan: Plan): string {
  const title = plan.title?.value.trim();
  return title === undefined || title === '' ? 'Untitled plan' : title;
}

/** `values in five steps` */
export function viewCaption(view: View, plan: Plan): string {
  switch (view) {
    case 'drawing':
      return 'drawing';
    case 'notan':
      return `notan in ${counted(plan.scale.groups.length)} tones`;
    case 'values':
      return `values in ${counted(plan.scale.steps)} steps`;
    case 'colour':
      return 'colours laid in flat';
    case 'squint':
      return 'squint, with half-shut eyes';
    case 'mirror':
      return 'as a mirror shows it';
    case 'path':
      return 'path of the eye';
    case 'emphasis':
      return 'emphasis, where the eye is drawn';
    case 'transfer':
      return 'transfer, the lines to carry over';
    case 'palette':
      return 'palette, its paints and what is mixed of them';
    case 'sittings':
      return 'sittings, what is painted when';
    case 'record':
      return 'record, the photographs beside the plan';
  }
}
