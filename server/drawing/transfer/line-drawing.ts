import type { ObjectMeasure } from '../../measure/measures.js';
import { type Matrix, mirror } from '../../plan/geometry/matrix.js';
import { type Outline, pathData, transform } from '../../plan/geometry/outline.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { pathMark } from '../marks.js';
import type { Ink, Mark, Stroke, Weight } from '../scene.js';

/** What the line drawing is made with. */
export interface Pencil {
  readonly paper: Ink;
  readonly line: Ink;
}

export interface DrawnObject {
  readonly object: PlanObject;
  /** Where it is drawn, in the units of the drawing. */
  readonly outline: Outline;
  readonly key: string;
  readonly subject?: string;
  readonly tip?: string;
}

const WEIGHTS: Readonly<Record<NonNullable<PlanObject['role']>, Weight>> = {
  dominant: 'heavy',
  secondary: 'medium',
  minor: 'medium',
};
const DECIMALS = 3;

/** Whether something in front covers an object of which a part is seen. */
export function isPartlyCovered({
  share,
  hiddenShare,
}: Pick<ObjectMeasure, 'share' | 'hiddenShare'>): boolean {
  return share > 0 && hiddenShare > 0;
}

/** Left and right changed over on a canvas of this width. */
export function mirrorOf({ width }: Pick<Plan['canvas'], 'width'>): Matrix {
  return mirror('left to right', { x: width / 2, y: 0 });
}

/** Where an object is drawn: as the plan has it, or moved by a matrix. */
export function placed({ outline }: PlanObject, matrix: Matrix | undefined): Outline {
  return matrix === undefined ? outline : transform(outline, matrix);
}

/**
 * Shapes as lines, without tones, from back to front: what is in front covers what is behind with the paper itself.
 * Every line has its middle on the border of its shape.
 */
export function visibleLines(objects: readonly DrawnObject[], { paper, line }: Pencil): readonly Mark[] {
  return objects.map(({ object, outline, key, subject, tip }) => {
    const weight = WEIGHTS[object.role ?? 'minor'];
    const stroke: Stroke = { ink: line, weight };
    return pathMark(key, pathData(outline, DECIMALS), {
      fill: paper,
      fillRule: outline.fillRule,
      // Shapes of one object that run into each other have one line round them all.
      stroke: outline.rings.length > 1 ? { ...stroke, under: true } : stroke,
      subject,
      tip,
    });
  });
}

/** The lines of what is partly covered, dotted: over lines that are seen they are not noticed, having their ink. */
export function coveredLines(objects: readonly DrawnObject[], { line }: Pencil): readonly Mark[] {
  return objects.map(({ outline, key, subject }) =>
    pathMark(`${key}:covered`, pathData(outline, DECIMALS), {
      stroke: { ink: line, weight: 'fine', dash: 'dotted' },
      subject,
    }),
  );
}
