import type { Place, ShapeForm, Statement, Word } from './syntax.js';

/** The places that a statement gives, in the order of the text. */
export function placesIn(statement: Statement): readonly Place[] {
  switch (statement.kind) {
    case 'at':
      return [statement.place];
    case 'focus':
      return [statement.at];
    case 'points':
      return statement.points;
    case 'shape':
      return placesOfShape(statement.shape);
    case 'lead':
      return [...(statement.from ? [statement.from] : []), ...statement.through, statement.to];
    default:
      return NONE;
  }
}

const NONE: readonly Place[] = [];

/** The name of the object that a place refers to, if it does. */
export function nameIn({ base }: Place): Word | undefined {
  switch (base.kind) {
    case 'object':
      return base.name;
    case 'edge':
      return base.of;
    case 'spot':
    case 'crossing':
      return base.of?.kind === 'name' ? base.of.name : undefined;
    case 'coordinates':
    case 'focus':
    case 'corner':
      return undefined;
  }
}

function placesOfShape(shape: ShapeForm): readonly Place[] {
  switch (shape.form) {
    case 'rectangle corners':
      return [shape.from, shape.to];
    case 'rectangle':
    case 'ellipse':
    case 'circle':
      return shape.at ? [shape.at] : NONE;
    case 'outline':
    case 'smooth':
      return shape.points;
    case 'path':
    case 'file':
      return NONE;
  }
}
