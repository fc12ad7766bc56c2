import type { Length, Node } from '../../../grammar/index.js';
import type { Axis } from '../../plan/lengths.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
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
  return stretchEdit(plan, object, { across: factor, down: factor }, rounding);
}

/** How many times as wide and as high. */
export type Factors = Readonly<Record<Axis, number>>;

/**
 * The same with a factor for each way, before the object is turned. What has one length for both ways, a `circle` or a
 * `size … wide`, takes the factor of that length.
 */
export function stretchEdit(
  { canvas }: Pick<Plan, 'canvas'>,
  { node, outline }: PlanObject,
  factors: Factors,
  rounding: Rounding = 'nearest',
): readonly FixEdit[] | undefined {
  const isPossible = [factors.across, factors.down].every((factor) => factor > 0 && Number.isFinite(factor));
  if (outline.path.length === 0 || !isPossible) return undefined;
  const resize = every(node.children, 'resize').at(-1);
  if (resize) {
    const { width, height } = resize.statement;
    if (!height) return [replace(locate(resize, width), percentsWords(width.percent, factors, rounding))];
    return [
      replace(locate(resize, width), percentWords(width.percent, factors.across, rounding)),
      replace(locate(resize, height), percentWords(height.percent, factors.down, rounding)),
    ];
  }
  const sized = lengthsOf(node.children);
  if (!sized) return [addLine(node, 'resize', percentsWords(100, factors, rounding))];
  return sized.lengths
    .filter(({ axis }) => factors[axis] !== 1)
    .map(({ length, axis }) =>
      replace(
        locate(sized.node, length),
        lengthWords(length, canvas, axis, (old) => old * factors[axis], rounding),
      ),
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

/** `120%`, or `120% x 80%` where the two ways differ. */
function percentsWords(percent: number, { across, down }: Factors, rounding: Rounding): string {
  const wide = percentWords(percent, across, rounding);
  const high = percentWords(percent, down, rounding);
  return wide === high ? wide : `${wide} x ${high}`;
}

function percentWords(percent: number, factor: number, rounding: Rounding): string {
  const changed = percent * factor;
  return `${rounded(changed, changed - percent, DECIMALS_OF_PERCENT, rounding)}%`;
}
