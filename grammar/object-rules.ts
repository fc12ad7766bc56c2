import { spanOf } from './lexer.js';
import { PictureRules } from './picture-rules.js';
import type { StatementBody } from './statement-rules.js';
import type { Choice, ObjectRole, Place, ShapeForm } from './syntax.js';
import { choice, keyword, Times } from './tokens.js';
import { spanning } from './phrases.js';
import { makeExtent } from './values.js';

/** The statements about an object, one rule each. */
export abstract class ObjectRules extends PictureRules {
  readonly object = this.statement('object', () => {
    this.CONSUME(keyword('object'));
    const name = this.SUBRULE(this.newName);
    this.keep({ kind: 'object', name });
    const role = this.OPTION(() => {
      this.SUBRULE(this.separator);
      return this.choiceOf<ObjectRole>(this.CONSUME(choice.ObjectRole));
    });
    return { kind: 'object', name, ...(role && { role }) };
  });

  readonly plane = this.statement('plane', () => {
    this.CONSUME(keyword('plane'));
    return { kind: 'plane', plane: this.choiceOf<'middle'>(this.CONSUME(choice.Plane)) };
  });

  readonly shape = this.statement('shape', () => {
    this.CONSUME(keyword('shape'));
    return { kind: 'shape', shape: this.SUBRULE(this.shapeForm) };
  });

  readonly shapeForm = this.RULE('shapeForm', (): ShapeForm =>
    this.OR([
      { ALT: () => this.SUBRULE(this.rectangle) },
      { ALT: () => this.SUBRULE(this.ellipse) },
      { ALT: () => this.SUBRULE(this.circle) },
      { ALT: () => this.SUBRULE(this.outline) },
      { ALT: () => this.SUBRULE(this.smooth) },
      { ALT: () => this.SUBRULE(this.pathData) },
      { ALT: () => this.SUBRULE(this.fileShape) },
    ]),
  );

  readonly rectangle = this.RULE('rectangle', (): ShapeForm => {
    this.CONSUME(keyword('rectangle'));
    return this.OR<ShapeForm>([
      {
        ALT: () => {
          const extent = this.SUBRULE(this.extent);
          const at = this.OPTION(() => this.SUBRULE(this.shapePlace));
          return { form: 'rectangle', extent, ...(at && { at }) };
        },
      },
      {
        ALT: () => {
          const from = this.SUBRULE1(this.place);
          this.CONSUME(keyword('to'));
          return { form: 'rectangle corners', from, to: this.SUBRULE2(this.place) };
        },
      },
    ]);
  });

  readonly ellipse = this.RULE('ellipse', (): ShapeForm => {
    this.CONSUME(keyword('ellipse'));
    const extent = this.SUBRULE(this.extent);
    const at = this.OPTION(() => this.SUBRULE(this.shapePlace));
    return { form: 'ellipse', extent, ...(at && { at }) };
  });

  readonly circle = this.RULE('circle', (): ShapeForm => {
    this.CONSUME(keyword('circle'));
    const across = this.SUBRULE(this.length);
    const at = this.OPTION(() => this.SUBRULE(this.shapePlace));
    return { form: 'circle', across, ...(at && { at }) };
  });

  readonly shapePlace = this.RULE('shapePlace', (): Place => {
    this.CONSUME(keyword('at'));
    return this.SUBRULE(this.place);
  });

  readonly outline = this.RULE('outline', (): ShapeForm => {
    this.CONSUME(keyword('outline'));
    return { form: 'outline', points: this.OPTION(() => this.SUBRULE(this.places)) ?? [] };
  });

  readonly smooth = this.RULE('smooth', (): ShapeForm => {
    this.CONSUME(keyword('smooth'));
    return { form: 'smooth', points: this.OPTION(() => this.SUBRULE(this.places)) ?? [] };
  });

  readonly pathData = this.RULE('pathData', (): ShapeForm => {
    this.CONSUME(keyword('path'));
    return { form: 'path', data: this.SUBRULE(this.sentence) };
  });

  readonly fileShape = this.RULE('fileShape', (): ShapeForm => {
    this.CONSUME(keyword('from'));
    const file = this.SUBRULE1(this.sentence);
    const part = this.OPTION(() => {
      this.CONSUME(keyword('part'));
      return this.SUBRULE2(this.sentence);
    });
    return { form: 'file', file, ...(part && { part }) };
  });

  readonly points = this.statement('points', () => ({
    kind: 'points',
    points: this.SUBRULE(this.places),
  }));

  readonly at = this.statement('at', () => {
    this.CONSUME(keyword('at'));
    const place = this.SUBRULE(this.place);
    this.keep({ kind: 'at', place });
    const by = this.OPTION(() => {
      this.CONSUME(keyword('by'));
      return this.SUBRULE(this.anchor);
    });
    return { kind: 'at', place, ...(by && { by }) };
  });

  readonly size = this.statement('size', () => {
    this.CONSUME(keyword('size'));
    const width = this.SUBRULE1(this.length);
    return this.OR<StatementBody>([
      {
        ALT: () => {
          this.CONSUME(Times);
          const height = this.SUBRULE2(this.length);
          return { kind: 'size', extent: this.ACTION(() => makeExtent(width, height)) };
        },
      },
      {
        ALT: () => {
          const along = this.choiceOf<'wide' | 'high'>(this.CONSUME(choice.Dimension));
          return { kind: 'size along', length: width, along };
        },
      },
    ]);
  });

  readonly turn = this.statement('turn', () => {
    this.CONSUME(keyword('turn'));
    return { kind: 'turn', degrees: this.SUBRULE(this.angle) };
  });

  readonly mirror = this.statement('mirror', () => {
    this.CONSUME(keyword('mirror'));
    const direction = this.SUBRULE(this.mirrorDirection);
    return { kind: 'mirror', direction };
  });

  readonly mirrorDirection = this.phrase('mirrorDirection', (): Choice<'left to right' | 'top to bottom'> =>
    this.OR<Choice<'left to right' | 'top to bottom'>>([
      {
        ALT: () => {
          const left = this.CONSUME(keyword('left'));
          this.CONSUME1(keyword('to'));
          const right = this.CONSUME(keyword('right'));
          return { choice: 'left to right', ...spanning(spanOf(left), spanOf(right)) };
        },
      },
      {
        ALT: () => {
          const top = this.CONSUME(keyword('top'));
          this.CONSUME2(keyword('to'));
          const bottom = this.CONSUME(keyword('bottom'));
          return { choice: 'top to bottom', ...spanning(spanOf(top), spanOf(bottom)) };
        },
      },
    ]),
  );

  readonly resize = this.statement('resize', () => {
    this.CONSUME(keyword('resize'));
    const width = this.SUBRULE1(this.percentage);
    const height = this.OPTION(() => {
      this.CONSUME(Times);
      return this.SUBRULE2(this.percentage);
    });
    return { kind: 'resize', width, ...(height && { height }) };
  });

  readonly repeat = this.statement('repeat', () => {
    this.CONSUME(keyword('repeat'));
    const times = this.SUBRULE(this.quantity);
    this.CONSUME(keyword('every'));
    const every = this.SUBRULE(this.coordinates);
    this.keep({ kind: 'repeat', times, every });
    const turning = this.OPTION1(() => {
      this.CONSUME(keyword('turning'));
      return this.SUBRULE(this.angle);
    });
    const resized = this.OPTION2(() => {
      this.CONSUME(keyword('resized'));
      return this.SUBRULE(this.percentage);
    });
    return { kind: 'repeat', times, every, ...(turning && { turning }), ...(resized && { resized }) };
  });

  readonly colour = this.statement('colour', () => {
    this.CONSUME(keyword('colour'));
    return { kind: 'colour', colour: this.SUBRULE(this.colourSpec) };
  });

  readonly glaze = this.statement('glaze', () => {
    this.CONSUME(keyword('glaze'));
    return { kind: 'glaze', colour: this.SUBRULE(this.colourSpec) };
  });

  readonly value = this.statement('value', () => {
    this.CONSUME(keyword('value'));
    return { kind: 'value', step: this.SUBRULE(this.quantity) };
  });

  readonly edges = this.statement('edges', () => {
    this.CONSUME(keyword('edges'));
    const edges = this.choiceOf<'hard'>(this.CONSUME(choice.Edges));
    const against = this.OPTION(() => {
      this.CONSUME(keyword('against'));
      return this.SUBRULE(this.knownNames);
    });
    return { kind: 'edges', edges, against: against ?? [] };
  });

  readonly detail = this.statement('detail', () => {
    this.CONSUME(keyword('detail'));
    return { kind: 'detail', detail: this.choiceOf<'some'>(this.CONSUME(choice.Detail)) };
  });
}
