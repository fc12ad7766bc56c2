import { mirroredTransfer } from '../../measure/transfer/mirrored.js';
import { type Transfer, transferOf } from '../../measure/transfer/key-points.js';
import type { Point } from '../../plan/geometry/point.js';
import { capitalised } from '../../plan/problems.js';
import { systemName } from '../captions/words.js';
import { BOLD_WIDTH, textWidth } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, linePath, rectanglePath } from '../path-data.js';
import { divisionDash } from '../picture/construction.js';
import { placeLabel } from '../picture/labels.js';
import { regionOf } from '../picture/region.js';
import { objectTip } from '../picture/shapes.js';
import type { Box, Mark } from '../scene.js';
import { gridLines, gridNames } from '../transfer/grid-marks.js';
import {
  type DrawnObject,
  coveredLines,
  isPartlyCovered,
  mirrorOf,
  placed,
  visibleLines,
} from '../transfer/line-drawing.js';
import { dotBoxes, pointMarks } from '../transfer/point-marks.js';
import { gridInWords } from '../transfer/words.js';
import { type PictureMarks, type Reading, seenObjects } from './reading.js';

/** The drawing on paper: it follows the page it is looked at on. */
const PENCIL = { paper: 'mount', line: 'ink' } as const;
const NAME_EMS = 0.82;

/** What is measured off in the view, turned round where that is wanted. */
function transferIn({ plan, isMirrored }: Reading): Transfer {
  const transfer = transferOf(plan);
  return isMirrored ? mirroredTransfer(transfer, plan.canvas) : transfer;
}

/** Shapes as lines without tones, with the lettered grid that carries them over and the points to measure off. */
export function drawTransfer(reading: Reading): PictureMarks {
  const { plan, layout, picture, subjects, isMirrored } = reading;
  const { em } = layout;
  const transfer = transferIn(reading);
  const objects = drawnObjects(reading);
  const subject = subjects.all['grid'] === undefined ? undefined : 'grid';
  const covered = objects.filter(({ object }) => {
    const measure = reading.measures.objects[object.index];
    return measure !== undefined && isPartlyCovered(measure);
  });
  const names = nameMarks(reading, dotBoxes(transfer.objects, em));
  const points = pointMarks(
    transfer.objects,
    (object) => subjects.objects[object],
    (object) => capitalised(plan.objects[object]?.name ?? ''),
    { em, picture, taken: names.taken, ink: PENCIL.line, paper: PENCIL.paper },
  );
  return {
    shapes: [
      pathMark('ground', rectanglePath(picture), { fill: PENCIL.paper }),
      ...visibleLines(objects, PENCIL),
    ],
    construction: [
      ...coveredLines(covered, PENCIL),
      ...lightLines(reading),
      ...gridLines(transfer.grid, picture, {
        ink: 'hint',
        subject,
        tip: `Transfer grid${isMirrored ? ', turned round' : ''}: ${gridInWords(transfer.grid, plan.canvas)}.`,
      }),
      pathMark('edge', rectanglePath(picture), { stroke: { ink: 'ink', weight: 'medium' } }),
    ],
    names: [...gridNames(transfer.grid, em, { ink: 'hint', subject }), ...names.marks, ...points.marks],
    taken: [...names.taken, ...points.taken],
    leftOut: points.leftOut,
  };
}

function drawnObjects(reading: Reading): readonly DrawnObject[] {
  const { plan, subjects, isMirrored } = reading;
  const matrix = isMirrored ? mirrorOf(plan.canvas) : undefined;
  return plan.coveringOrder.flatMap((index): readonly DrawnObject[] => {
    const object = plan.objects[index];
    const subject = subjects.objects[index];
    if (object === undefined || subject === undefined || object.outline.path.length === 0) return [];
    return [
      { object, outline: placed(object, matrix), key: subject, subject, tip: objectTip(object, reading) },
    ];
  });
}

/** Division, horizon, leads and focal point, lighter than the drawing, as they are rubbed out later. */
function lightLines({ plan, layout, subjects, isMirrored }: Reading): readonly Mark[] {
  const { canvas, horizon, focus, leads } = plan;
  const over = ({ x, y }: Point): Point => ({ x: isMirrored ? canvas.width - x : x, y });
  const shown = plan.divisions.flatMap(({ system, lines }, index) =>
    lines.length === 0
      ? []
      : [
          pathMark(
            `division:${system}:${index}`,
            lines.map(({ from, to }) => linePath([over(from), over(to)])).join(''),
            {
              stroke: { ink: 'quiet', weight: 'hair', dash: divisionDash(index) },
              subject: subjects.divisions[index],
              tip: `${capitalised(systemName(system))}.`,
            },
          ),
        ],
  );
  return [
    ...shown,
    ...(horizon === undefined
      ? []
      : [
          pathMark(
            'horizon',
            linePath([
              { x: 0, y: horizon.value },
              { x: canvas.width, y: horizon.value },
            ]),
            {
              stroke: { ink: 'quiet', weight: 'fine' },
              subject: 'horizon',
              tip: 'Horizon.',
            },
          ),
        ]),
    ...leads.flatMap(({ points, name }, index) => {
      const subject = subjects.leads[index];
      if (subject === undefined || points.length < 2) return [];
      return [
        pathMark(subject, linePath(points.map(over)), {
          stroke: { ink: 'quiet', weight: 'fine', dash: 'long' },
          subject,
          tip: `Lead: ${name}.`,
        }),
      ];
    }),
    ...(focus === undefined
      ? []
      : [
          pathMark('focus', circlePath(over(focus.at), 0.5 * layout.em), {
            stroke: { ink: 'quiet', weight: 'fine' },
            subject: 'focus',
            tip: 'Focal point.',
          }),
        ]),
  ];
}

/** Names of the objects where there is room, so that numbers are told whose they are. */
function nameMarks(
  reading: Reading,
  dots: readonly Box[],
): { readonly marks: readonly Mark[]; readonly taken: readonly Box[] } {
  const { layout, picture, cells, plan, isMirrored } = reading;
  const size = NAME_EMS * layout.em;
  const taken: Box[] = [];
  const marks: Mark[] = [];
  for (const { object, subject } of seenObjects(reading)) {
    const heart = regionOf(cells, object.index)?.heart;
    if (heart === undefined) continue;
    const at = isMirrored ? { x: plan.canvas.width - heart.x, y: heart.y } : heart;
    const width = textWidth(object.name, size) * BOLD_WIDTH;
    const extent = { width, height: 1.15 * size };
    const box =
      placeLabel(extent, [at], [0, 0.6 * size, 1.4 * size, 2.5 * size], [...taken, ...dots], picture) ??
      placeLabel(extent, [at], [0, 0.6 * size], taken, picture);
    if (box === undefined) continue;
    taken.push(box);
    marks.push(
      textMark(`${subject}:name`, object.name, box.x + box.width / 2, box.y + box.height / 2 + 0.35 * size, {
        size,
        ink: 'ink',
        halo: 'mount',
        anchor: 'middle',
        face: object.role === 'dominant' ? 'strong' : 'text',
        subject,
      }),
    );
  }
  return { marks, taken };
}
