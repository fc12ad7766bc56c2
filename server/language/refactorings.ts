import type { Range } from 'vscode-languageserver-types';
import { isKind, type BudgetShare, type NodeOf, t } from '../../grammar/index.js';
import { focusEdit } from '../findings/edits.js';
import type { Fix, FixEdit } from '../findings/finding.js';
import { crossingOffMiddle, IN_THE_MIDDLE } from '../findings/seen/crossings.js';
import { quoted } from '../findings/words/words.js';
import { isOnLine } from '../plan/based-on/here.js';
import { formatLike } from '../plan/colour/format.js';
import { valueOf } from '../plan/colour/value.js';
import type { PlanObject } from '../plan/plan.js';
import { locate } from '../plan/problems.js';
import { every } from '../plan/select.js';
import { nodeAt } from './places.js';
import { sittingMoves } from './sitting-moves.js';
import type { Snapshot } from './snapshot.js';

/** Below this two values read alike, and so do a place and the crossing that it lies on. */
const ALIKE = { munsellValue: 0.05, partOfDiagonal: 1e-6 };

/** What can be made of the line that the caret is on without anything being wrong with it. */
export function refactorings(snapshot: Snapshot, { start: { line } }: Range): readonly Fix[] {
  const node = nodeAt(snapshot.tree, line);
  if (node === undefined) return [];
  if (isKind(node, 'budget')) return budgetAsMeasured(snapshot, node);
  if (isKind(node, 'focus')) return focusOnCrossing(snapshot);
  if (isKind(node, 'sitting')) return sittingMoves(snapshot, line);
  if (isKind(node, 'colour') || isKind(node, 'value')) return colourAtValue(snapshot, line);
  return [];
}

/** Whole percentages that add up as the measured shares do. */
function budgetAsMeasured({ measures }: Snapshot, node: NodeOf<'budget'>): readonly Fix[] {
  const { statement } = node;
  const budget = statement.of.choice === 'value' ? measures.values.budget : measures.colours.budget;
  const measured = statement.shares.map(({ start }) =>
    budget.find(({ location }) => isOnLine(location, node.line) && location?.start === start),
  );
  if (measured.some((entry) => entry === undefined)) return [];
  const percents = wholePercents(measured.map((entry) => entry?.share ?? 0));
  const changed = statement.shares.filter(({ share }, index) => share.percent !== percents[index]);
  if (changed.length === 0) return [];
  const edit = (entry: BudgetShare): FixEdit => ({
    kind: 'replace',
    location: locate(node, entry.share),
    text: `${percents[statement.shares.indexOf(entry)] ?? 0}%`,
  });
  return [{ title: t('Set the budget to what is measured'), edits: changed.map(edit) }];
}

/** Rounded so that the sum is rounded too: those that lose most by it get what is left. */
function wholePercents(shares: readonly number[]): readonly number[] {
  const exact = shares.map((share) => share * 100);
  const whole = exact.map(Math.floor);
  const sum = exact.reduce((total, percent) => total + percent, 0);
  let left = Math.round(sum) - whole.reduce((total, percent) => total + percent, 0);
  const byLoss = exact
    .map((percent, index) => ({ index, loss: percent - Math.floor(percent) }))
    .sort((a, b) => b.loss - a.loss);
  for (const { index } of byLoss) {
    if (left-- <= 0) break;
    whole[index] = (whole[index] ?? 0) + 1;
  }
  return whole;
}

/** The middle of the canvas is a crossing of some divisions, but no place to send a focal point to. */
function focusOnCrossing({ plan, measures }: Snapshot): readonly Fix[] {
  const crossing = crossingOffMiddle(plan, measures, IN_THE_MIDDLE);
  const { nearest } = measures.focus ?? {};
  if (crossing === undefined || nearest === undefined) return [];
  if (nearest.distanceShare <= ALIKE.partOfDiagonal) return [];
  const edits = focusEdit(plan, crossing.words);
  return edits === undefined
    ? []
    : [{ title: t('Move the focal point to the nearest crossing, {0}', crossing.words), edits }];
}

/** A colour that is written out at an object comes to be written as it is painted: at the value stated beside it. */
function colourAtValue({ plan }: Snapshot, line: number): readonly Fix[] {
  const object = plan.objects.find(({ lines }) => lines && lines.first <= line && line <= lines.last);
  const written = object && every(object.node.children, 'colour').at(-1);
  if (object === undefined || written === undefined || written.statement.colour.kind === 'name') return [];
  const text = asPainted(object);
  if (text === undefined) return [];
  const location = locate(written, written.statement.colour);
  return [
    {
      title: t('Fit the colour of {0} to its value', quoted(object.name)),
      edits: [{ kind: 'replace', location, text }],
    },
  ];
}

function asPainted({ colour, painted, value, stepStated }: PlanObject): string | undefined {
  if (colour === undefined || painted === undefined || value === undefined || !stepStated) return undefined;
  if (Math.abs(valueOf(colour.colour) - value) < ALIKE.munsellValue) return undefined;
  return formatLike(painted, colour.colour.notation);
}
