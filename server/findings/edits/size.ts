import type { Length, Node, Percentage } from '../../../grammar/index.js';
import type { Axis } from '../../plan/lengths.js';
import type { Canvas, Plan, PlanObject } from '../../plan/plan.js';
import { locate } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import type { FixEdit } from '../finding.js';
import { addLine, lengthWords, replace, type Rounding, rounded } from './edit.js';

const DECIMALS_OF_PERCENT = 2;

/**
 * The object `factor` times as wide and as high, about its middle, or about the place it is set down by where its
 * `at` says one (`by bottom`). Its `resize`, its `size` or the numbers of its shape say so, or it gets a `resize`.
 * Nothing when it has no shape or the factor can't be.
 *
 * @param rounding whether the written numbers may fall short of the change; `onward` for what has to end beyond a
 * limit.
 */
export function sizeEdit(
  plan: Pick<Plan, 'canvas'>,
  object: PlanObject,
  factor: number,
  rounding: Rounding = 'nearest',
): readonly FixEdit[] | undefined {
  const { children } = object.node;
  if (object.outline.path.length === 0 || !(factor > 0) || !Number.isFinite(factor)) return undefined;
  const resize = every(children, 'resize').at(-1);
  if (resize) {
    const { width, height } = resize.statement;
    return [width, ...(height ? [height] : [])].map((share) =>
      replace(locate(resize, share), percentWords(share, factor, rounding)),
    );
  }
  const sized = lengthsOf(children);
  if (!sized) return [addLine(object.node, 'resize', percentWords({ percent: 100 }, factor, rounding))];
  return sized.lengths.map(({ length, axis }) =>
    replace(locate(sized.node, length), timesAsLong(length, axis, factor, plan.canvas, rounding)),
  );
}

interface SizedLine {
  readonly node: Pick<Node, 'line'>;
  readonly lengths: readonly { readonly length: Length; readonly axis: Axis }[];
}

/** The line whose lengths alone say how large the object is. */
function lengthsOf(children: readonly Node[]): SizedLine | undefined {
  const size = children.findLast(
    ({ statement }) => statement.kind === 'size' || statement.kind === 'size along',
  );
  if (size?.statement.kind === 'size') {
    const { width, height } = size.statement.extent;
    return { node: size, lengths: bothWays(width, height) };
  }
  if (size?.statement.kind === 'size along') {
    const { length, along } = size.statement;
    return { node: size, lengths: [{ length, axis: along.choice === 'wide' ? 'across' : 'down' }] };
  }
  const [node, ...others] = every(children, 'shape');
  if (!node || others.length > 0) return undefined;
  const { shape } = node.statement;
  switch (shape.form) {
    case 'rectangle':
    case 'ellipse':
      return { node, lengths: bothWays(shape.extent.width, shape.extent.height) };
    case 'circle':
      return { node, lengths: [{ length: shape.across, axis: 'across' }] };
    case 'rectangle corners':
    case 'outline':
    case 'smooth':
    case 'path':
    case 'file':
      return undefined;
  }
}

function bothWays(width: Length, height: Length): SizedLine['lengths'] {
  return [
    { length: width, axis: 'across' },
    { length: height, axis: 'down' },
  ];
}

function timesAsLong(length: Length, axis: Axis, factor: number, canvas: Canvas, rounding: Rounding): string {
  return lengthWords(length, canvas, axis, (old) => old * factor, rounding);
}

function percentWords({ percent }: Pick<Percentage, 'percent'>, factor: number, rounding: Rounding): string {
  const changed = percent * factor;
  return `${rounded(changed, changed - percent, DECIMALS_OF_PERCENT, rounding)}%`;
}
