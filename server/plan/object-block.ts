import type { Node, NodeOf, StatementKind } from '../../grammar/index.js';
import { withOneMore } from './geometry/one-more.js';
import type { Problems } from './problems.js';
import { lastOf, single } from './select.js';

type Says<K extends StatementKind> = Node & NodeOf<K>;
type Sized = Says<'size'> | Says<'size along'>;

/** The statements under an object by what they say: of those that count once the last, told from one look at each. */
export class ObjectBlock {
  plane: Says<'plane'> | undefined;
  colour: Says<'colour'> | undefined;
  glaze: Says<'glaze'> | undefined;
  value: Says<'value'> | undefined;
  detail: Says<'detail'> | undefined;
  mirror: Says<'mirror'> | undefined;
  turn: Says<'turn'> | undefined;
  at: Says<'at'> | undefined;
  repeat: Says<'repeat'> | undefined;
  resize: Says<'resize'> | undefined;
  size: Sized | undefined;
  /** In the order of the text; missing for none. */
  shapes: Says<'shape'>[] | undefined;
  edges: Says<'edges'>[] | undefined;
  notes: Says<'note'>[] | undefined;
  allows: Says<'allow'>[] | undefined;
  /** Whether a shape comes from a file. */
  get hasFile(): boolean {
    return this.shapes?.some(({ statement }) => statement.shape.form === 'file') === true;
  }

  /** Whether something is said again that counts once. */
  #isRepeated = false;

  constructor(readonly children: readonly Node[]) {
    for (const child of children) this.#take(child);
  }

  /** The statement of a kind that counts once; of several the last one, and the others are warned about. */
  one<K extends StatementKind>(kind: K, last: Says<K> | undefined, problems: Problems): Says<K> | undefined {
    return this.#isRepeated ? single(this.children, kind, problems) : last;
  }

  /** The statement that gives the size; of several the last one, and the others are warned about. */
  sized(problems: Problems): Sized | undefined {
    if (!this.#isRepeated) return this.size;
    const all = this.children.filter(({ statement: { kind } }) => kind === 'size' || kind === 'size along');
    return lastOf(all, problems) as Sized | undefined;
  }

  #take(child: Node): void {
    switch (child.statement.kind) {
      case 'shape':
        this.shapes = withOneMore(this.shapes, child as Says<'shape'>);
        return;
      case 'edges':
        this.edges = withOneMore(this.edges, child as Says<'edges'>);
        return;
      case 'note':
        this.notes = withOneMore(this.notes, child as Says<'note'>);
        return;
      case 'allow':
        this.allows = withOneMore(this.allows, child as Says<'allow'>);
        return;
      case 'colour':
        this.#isRepeated ||= this.colour !== undefined;
        this.colour = child as Says<'colour'>;
        return;
      case 'value':
        this.#isRepeated ||= this.value !== undefined;
        this.value = child as Says<'value'>;
        return;
      case 'plane':
        this.#isRepeated ||= this.plane !== undefined;
        this.plane = child as Says<'plane'>;
        return;
      case 'detail':
        this.#isRepeated ||= this.detail !== undefined;
        this.detail = child as Says<'detail'>;
        return;
      case 'at':
        this.#isRepeated ||= this.at !== undefined;
        this.at = child as Says<'at'>;
        return;
      case 'size':
      case 'size along':
        this.#isRepeated ||= this.size !== undefined;
        this.size = child as Sized;
        return;
      case 'turn':
        this.#isRepeated ||= this.turn !== undefined;
        this.turn = child as Says<'turn'>;
        return;
      case 'mirror':
        this.#isRepeated ||= this.mirror !== undefined;
        this.mirror = child as Says<'mirror'>;
        return;
      case 'resize':
        this.#isRepeated ||= this.resize !== undefined;
        this.resize = child as Says<'resize'>;
        return;
      case 'repeat':
        this.#isRepeated ||= this.repeat !== undefined;
        this.repeat = child as Says<'repeat'>;
        return;
      case 'glaze':
        this.#isRepeated ||= this.glaze !== undefined;
        this.glaze = child as Says<'glaze'>;
        return;
      default:
        return;
    }
  }
}
