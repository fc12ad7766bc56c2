import { nameKey, t } from '../../../grammar/index.js';
import type { Spot } from '../../drawing/scene.js';
import { decimalsOf } from '../../findings/edits/edit.js';
import { plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, refusal } from './attempt.js';
import type { HandChange } from './change.js';
import { newLead, newObject } from './new-lines.js';
import { coordinates, namedPlaceAt } from './places.js';

/** Points on the line of an outline, and on each line that goes on with it. */
const POINTS_IN_LINE = 8;
const LEAST_POINTS = 3;

type NewBox = Extract<HandChange, { kind: 'new box' }>;
type NewLine = Extract<HandChange, { kind: 'new line' }>;

/** A rectangle or an ellipse as a new object. */
export function drawBox(snapshot: Snapshot, { form, from, to }: NewBox): Attempt {
  const { plan } = snapshot;
  const decimals = decimalsOf(plan.canvas.unit);
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  const [width, height] = [plainNumber(right - left, decimals), plainNumber(bottom - top, decimals)];
  if (width === '0' || height === '0')
    return refusal(t('This has no width or no height: draw it a little larger.'));
  const corner = coordinates({ x: left, y: top }, plan);
  const opposite = coordinates({ x: right, y: bottom }, plan);
  if (corner === opposite)
    return refusal(t('This is too small to be written down: draw it a little larger.'));
  const middle = coordinates({ x: (left + right) / 2, y: (top + bottom) / 2 }, plan);
  const words =
    form === 'rectangle' ? `rectangle ${corner} to ${opposite}` : `ellipse ${width} x ${height} at ${middle}`;
  const name = freshName(snapshot, 'new-shape');
  return newObject(snapshot, { first: `object ${name}`, under: [`shape ${words}`], name });
}

/** A new object by its outline, or a new lead; points that are written alike count once. */
export function drawLine(snapshot: Snapshot, { form, points }: NewLine): Attempt {
  const written = withoutRepeats(points.map((point) => coordinates(point, snapshot.plan)));
  return form === 'lead' ? drawLead(snapshot, points, written) : drawOutline(snapshot, written);
}

function drawOutline(snapshot: Snapshot, written: readonly string[]): Attempt {
  const isClosed = written.length > 1 && written[0] === written.at(-1);
  const places = isClosed ? written.slice(0, -1) : written;
  if (new Set(places).size < LEAST_POINTS) return refusal(t('An outline needs three points at least.'));
  const rows = Array.from({ length: Math.ceil(places.length / POINTS_IN_LINE) }, (_, row) =>
    places.slice(row * POINTS_IN_LINE, (row + 1) * POINTS_IN_LINE).join(' '),
  );
  const [first = '', ...further] = rows;
  const name = freshName(snapshot, 'new-shape');
  return newObject(snapshot, {
    first: `object ${name}`,
    under: [`shape outline ${first}`],
    further,
    name,
  });
}

function drawLead(snapshot: Snapshot, points: readonly Spot[], written: readonly string[]): Attempt {
  const [from, ...rest] = written;
  const aim = points.at(-1);
  const end = rest.at(-1);
  if (from === undefined || end === undefined || !aim) return refusal(t('A lead needs a place to go to.'));
  const through = rest.slice(0, -1);
  const name = freshName(snapshot, 'new-lead');
  const ways = through.length > 0 ? ` through ${through.join(' ')}` : '';
  const to = namedPlaceAt(aim, snapshot.plan) ?? end;
  return newLead(snapshot, { first: `lead ${name} from ${from}${ways} to ${to}`, under: [], name });
}

function withoutRepeats(written: readonly string[]): readonly string[] {
  return written.filter((place, index) => place !== written[index - 1]);
}

/** A name that nothing in the plan has: `new-shape`, `new-shape-2`. */
function freshName({ names, tree, plan }: Snapshot, wanted: string): string {
  const inTheText = [...names.definitions, ...names.uses];
  const taken = new Set(
    [...inTheText, ...plan.objects, ...plan.leads, ...plan.colours].map(({ key }) => key),
  );
  tree.lostNames.forEach((name) => taken.add(nameKey(name)));
  let name = wanted;
  for (let count = 2; taken.has(name); count++) name = `${wanted}-${count}`;
  return name;
}
