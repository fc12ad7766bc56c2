import assert from 'node:assert/strict';
import { format, parse, type SyntaxTree } from '../../grammar/index.js';
import { compose } from '../../server/drawing/compose.js';
import { renderToText } from '../../server/drawing/headless.js';
import type { View } from '../../server/drawing/scene.js';
import { check } from '../../server/findings/check.js';
import { linesOf } from '../../server/language/text.js';
import { measure } from '../../server/measure/measure.js';
import type { Measures } from '../../server/measure/measures.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { foreignIn } from '../hostile/beyond-words.js';
import { readExampleFile } from '../support/spoilt-plans.js';
import { unfinished } from '../support/unfinished.js';

/** What rounding may add to a part or to a sum of parts. */
const SLACK = 1e-6;

/**
 * Takes a text the whole way to a drawing and holds every stage to what it promises whatever the text.
 * @throws AssertionError for what does not hold
 */
export function takeTheWholeWay(text: string, view: View): void {
  const tree = parse(text);
  holdTree(text, tree);
  const plan = resolvePlan(tree, { readFile: readExampleFile });
  const measures = measure(plan);
  holdAreas(plan, measures);
  const findings = check(plan, measures);
  for (const { message } of [...tree.problems, ...plan.problems, ...findings])
    assert.match(message, /^\S[^]*[.?]$/u, 'a sentence to the painter');
  const scene = compose(plan, measures, findings, view, { handling: true });
  assert.deepEqual(unfinished({ plan, measures, scene }), [], 'figures that are no numbers');
  const drawing = renderToText(scene, { theme: 'light' });
  assert.doesNotMatch(drawing, /="[^"]*(?:NaN|Infinity|undefined)[^"]*"/u);
  assert.deepEqual(foreignIn(drawing), [], 'what is not of our own making');
}

function holdTree(text: string, tree: SyntaxTree): void {
  const lines = linesOf(text.replace(/^\ufeff/u, ''));
  assert.equal(tree.lineCount, lines.length);
  for (const { line, start, end } of tree.problems)
    assert(0 <= start && start <= end && end <= (lines[line]?.length ?? -1), 'a problem outside of the text');
  const formatted = format(text);
  assert.equal(format(formatted), formatted, 'what is formatted is not as it would be formatted');
}

function holdAreas({ canvas }: Plan, { areas, objects }: Measures): void {
  const canvasArea = canvas.width * canvas.height;
  for (const { share, hiddenShare, offCanvasShare } of objects)
    for (const part of [share, hiddenShare, offCanvasShare])
      assert(part >= -SLACK && part <= 1 + SLACK, `a part of ${part}`);
  for (const { visibleArea, onCanvasArea } of areas.layers)
    for (const area of [visibleArea, onCanvasArea])
      assert(area >= 0 && area <= canvasArea * (1 + SLACK), `an area of ${area} on ${canvasArea}`);
  const whole = objects.reduce((sum, { share }) => sum + share, areas.bareShare);
  assert(Math.abs(whole - 1) <= SLACK, `parts that add up to ${whole}`);
}
