import { stepValue } from '../../plan/colour/value.js';
import type { StepGroup } from '../../plan/plan.js';
import type { Block } from './block.js';
import { greyOf, hexOf, lineOn } from '../picture/ink.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import type { Reading } from '../views/reading.js';
import type { Mark } from '../scene.js';
import { fitted } from './text-width.js';
import { headingMarks } from './heading.js';
import { percent } from './words.js';

/** The value scale as a strip of its steps, the darkest first, with the share of each and the groups below. */
export function scaleBlock({ plan, measures, layout, subjects }: Reading, width: number): Block {
  const { em } = layout;
  const { steps, groups } = plan.scale;
  const cell = width / steps;
  const high = 1.5 * em;
  const subject = subjects.all['scale'] === undefined ? undefined : 'scale';
  const figures = 0.82 * em;

  const stepMarks = (step: number, x: number, y: number): readonly Mark[] => {
    const grey = greyOf(stepValue(step, steps));
    const share = measures.values.steps[step - 1]?.share ?? 0;
    const middle = x + (step - 0.5) * cell;
    return [
      pathMark(`scale:${step}`, rectanglePath({ x: x + (step - 1) * cell, y, width: cell, height: high }), {
        fill: hexOf(grey),
        subject,
        tip: `Step ${step} of ${steps}: ${percent(share)} of the picture.`,
      }),
      textMark(`scale:${step}:number`, String(step), middle, y + high / 2 + 0.35 * figures, {
        size: figures,
        ink: hexOf(lineOn(grey)),
        anchor: 'middle',
        subject,
      }),
      textMark(`scale:${step}:share`, shareFigure(share), middle, y + high + 1.05 * em, {
        size: figures,
        ink: 'ink',
        anchor: 'middle',
        subject,
      }),
    ];
  };

  const groupMarks = (group: StepGroup, index: number, x: number, y: number): readonly Mark[] => {
    const left = x + (group.from - 1) * cell + 0.18 * em;
    const right = x + group.to * cell - 0.18 * em;
    const name = fitted(group.name, figures, right - left + 0.3 * em);
    const key = `scale:group:${index}`;
    const bracket = [
      { x: left, y: y - 0.22 * em },
      { x: left, y },
      { x: right, y },
      { x: right, y: y - 0.22 * em },
    ];
    return [
      pathMark(key, linePath(bracket), { stroke: { ink: 'quiet', weight: 'fine' }, subject }),
      textMark(`${key}:name`, name, (left + right) / 2, y + 0.95 * em, {
        size: figures,
        ink: 'quiet',
        anchor: 'middle',
        subject,
        tip: group.name,
      }),
    ];
  };

  return {
    height: 1.5 * em + high + 1.4 * em + (groups.length > 0 ? 1.45 * em : 0),
    marks: (x, y) => {
      const top = y + 1.5 * em;
      return [
        ...headingMarks('scale', 'Value scale', '% of the picture', { x, y, width, em }),
        ...Array.from({ length: steps }, (_, index) => stepMarks(index + 1, x, top)).flat(),
        pathMark('scale:frame', rectanglePath({ x, y: top, width, height: high }), {
          stroke: { ink: 'rule', weight: 'fine' },
          subject,
        }),
        ...groups.flatMap((group, index) => groupMarks(group, index, x, top + high + 1.7 * em)),
      ];
    },
  };
}

/** `12`, `0.4` for a share that would round to nothing, `–` for none. */
function shareFigure(share: number): string {
  if (share <= 0) return '–';
  const rounded = Math.round(share * 100);
  return rounded === 0 ? '<1' : String(rounded);
}
