/**
 * The syntax tree of a plan. It knows text only: no canvas, no colours as colours, no editor.
 *
 * A plan is read line by line: every statement stands on one line, so each place in the tree is a pair of
 * columns in that line. Columns count UTF-16 code units from 0, the end is exclusive. A statement carries no
 * line number; its {@link Node} does. That is what lets an edit reuse every line it did not touch.
 */

import type {
  BudgetShare,
  CalendarDate,
  Choice,
  ColourRole,
  ColourSpec,
  Coordinates,
  DivisionSystem,
  Edges,
  Extent,
  Layer,
  Length,
  Means,
  ObjectRole,
  Percentage,
  Place,
  Plane,
  Quantity,
  RuleLimitTerm,
  Sentence,
  ShapeForm,
  Side,
  Span,
  Spot,
  ValueGroup,
  Word,
} from './terms.js';

export * from './terms.js';

export type Statement = StatementBase &
  (
    | { readonly kind: 'mahl'; readonly version: Quantity }
    | { readonly kind: 'plan'; readonly title: Sentence; readonly by?: Sentence }
    | { readonly kind: 'based on'; readonly file: Sentence }
    | { readonly kind: 'without'; readonly names: readonly Word[] }
    | { readonly kind: 'concept'; readonly text: Sentence }
    | { readonly kind: 'mood'; readonly text: Sentence }
    | { readonly kind: 'cue'; readonly text: Sentence; readonly carriedBy: readonly Word[] }
    | { readonly kind: 'avoid'; readonly text: Sentence }
    | { readonly kind: 'note'; readonly text: Sentence }
    | { readonly kind: 'canvas'; readonly size: CanvasSize }
    | { readonly kind: 'support'; readonly text: Sentence }
    | { readonly kind: 'ground'; readonly colour: ColourSpec; readonly role?: Choice<ColourRole> }
    | { readonly kind: 'medium'; readonly text: Sentence }
    | { readonly kind: 'divide'; readonly systems: readonly Choice<DivisionSystem>[] }
    | { readonly kind: 'uprights' | 'levels'; readonly at: readonly Length[] }
    | { readonly kind: 'focus'; readonly at: Place }
    | { readonly kind: 'win by'; readonly means: readonly Choice<Means>[] }
    | { readonly kind: 'horizon'; readonly at: Length }
    | { readonly kind: 'scale'; readonly steps: Quantity }
    | { readonly kind: 'group'; readonly groups: readonly ValueGroup[] }
    | { readonly kind: 'planes'; readonly trend: Choice<'lighten' | 'darken'> }
    | {
        readonly kind: 'budget';
        readonly of: Choice<'value' | 'colour'>;
        readonly shares: readonly BudgetShare[];
        readonly within?: Percentage;
      }
    | { readonly kind: 'wheel'; readonly wheel: Choice<'painters' | 'munsell'> }
    | {
        readonly kind: 'colour definition';
        readonly name: Word;
        readonly colour: ColourSpec;
        readonly role?: Choice<ColourRole>;
      }
    | { readonly kind: 'object'; readonly name: Word; readonly role?: Choice<ObjectRole> }
    | { readonly kind: 'plane'; readonly plane: Choice<Plane> }
    | { readonly kind: 'shape'; readonly shape: ShapeForm }
    /** A line of further points under `shape outline` or `shape smooth`. */
    | { readonly kind: 'points'; readonly points: readonly Place[] }
    | { readonly kind: 'at'; readonly place: Place; readonly by?: Choice<Spot> }
    | { readonly kind: 'size'; readonly extent: Extent }
    /** `size 30 cm high`, `size 40% wide`: the proportion is kept. */
    | { readonly kind: 'size along'; readonly length: Length; readonly along: Choice<'wide' | 'high'> }
    | { readonly kind: 'turn'; readonly degrees: Quantity }
    | { readonly kind: 'mirror'; readonly direction: Choice<'left to right' | 'top to bottom'> }
    | { readonly kind: 'resize'; readonly width: Percentage; readonly height?: Percentage }
    | {
        readonly kind: 'repeat';
        readonly times: Quantity;
        readonly every: Coordinates;
        readonly turning?: Quantity;
        readonly resized?: Percentage;
      }
    | { readonly kind: 'colour'; readonly colour: ColourSpec }
    | { readonly kind: 'glaze'; readonly colour: ColourSpec }
    | { readonly kind: 'value'; readonly step: Quantity }
    | { readonly kind: 'edges'; readonly edges: Choice<Edges>; readonly against: readonly Word[] }
    | { readonly kind: 'detail'; readonly detail: Choice<'fine' | 'some' | 'little'> }
    | {
        readonly kind: 'lead';
        readonly name: Word;
        readonly along?: { readonly object: Word; readonly side?: Choice<Side> };
        readonly from?: Place;
        readonly through: readonly Place[];
        readonly to: Place;
      }
    | { readonly kind: 'path'; readonly stops: readonly Word[] }
    | { readonly kind: 'palette' }
    | {
        readonly kind: 'paint';
        readonly name: Word;
        readonly index?: Word;
        readonly full?: ColourSpec;
        readonly tint?: { readonly colour: ColourSpec; readonly paint: Quantity; readonly white: Quantity };
        readonly temperature?: Choice<'warm' | 'cool'>;
      }
    | { readonly kind: 'mother'; readonly name: Word }
    | { readonly kind: 'film'; readonly thickness: Length }
    | { readonly kind: 'tube'; readonly millilitres: Quantity }
    | { readonly kind: 'sitting'; readonly title: Sentence; readonly on?: CalendarDate }
    | { readonly kind: 'works'; readonly names: readonly Word[] }
    | { readonly kind: 'layer'; readonly layer: Choice<Layer>; readonly body?: Choice<'lean' | 'fat'> }
    | { readonly kind: 'fat'; readonly share: Percentage }
    | { readonly kind: 'task'; readonly text: Sentence }
    | { readonly kind: 'photo'; readonly file: Sentence }
    | { readonly kind: 'corners'; readonly points: readonly Coordinates[] }
    | { readonly kind: 'grey'; readonly at: Coordinates }
    | { readonly kind: 'sketch'; readonly file: Sentence }
    | { readonly kind: 'opacity'; readonly share: Percentage }
    | { readonly kind: 'due'; readonly on: CalendarDate }
    | { readonly kind: 'away'; readonly from: CalendarDate; readonly to?: CalendarDate }
    | {
        readonly kind: 'grid';
        readonly count?: { readonly columns: Quantity; readonly rows: Quantity };
        readonly every?: Length;
      }
    /** `allow even count because "..."`, `allow hidden object for tower because "..."` */
    | {
        readonly kind: 'allow';
        readonly rule: Word;
        /** Of objects and leads. */
        readonly names: readonly Word[];
        /** A cue by its first words, instead of names. */
        readonly cue?: Sentence;
        readonly because: Sentence;
      }
    /** `rule hidden object warning, limit 50%`, `rule complement off opposite limit 40 degrees` */
    | {
        readonly kind: 'rule';
        readonly rule: Word;
        readonly severity?: Choice<'warning' | 'hint'>;
        readonly limit?: RuleLimitTerm;
      }
  );

export interface StatementBase extends Span {
  /** The word that opens the line, as written (`color` stays `color`); empty for a line of points. */
  readonly keyword: Word;
}

export type StatementKind = Statement['kind'];
export type StatementOf<K extends StatementKind> = Extract<Statement, { readonly kind: K }>;

/** `24 x 18 in`, `figure 20`, `A3 upright`; upright or landscape says which side is up, whatever the sides say. */
export type CanvasSize = (
  { readonly by: 'extent'; readonly extent: Extent } | { readonly by: 'stock'; readonly stock: Word }
) & { readonly orientation?: Choice<'upright' | 'landscape'> };

/** A statement at its line, with what is indented under it. */
export interface Node {
  /**
   * The plan in whose text it stands, by its path from this one, where that is a plan that this one builds on. Parsing
   * never sets it.
   */
  readonly file?: string;
  /** The statement of such a plan that this one changes, with what it leaves as it was among `children`. */
  readonly changes?: Node;
  /** Zero-based. */
  readonly line: number;
  /** The last line of the block, this line for a statement without one. */
  readonly lastLine: number;
  readonly statement: Statement;
  readonly children: readonly Node[];
}

export type NodeOf<K extends StatementKind> = Omit<Node, 'statement'> & {
  readonly statement: StatementOf<K>;
};

/** What is wrong with the text of a line, with the edit that would mend it where there is one. */
export interface Problem {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly code: ProblemCode;
  readonly message: string;
  readonly fix?: { readonly title: string; readonly replacement: string };
}

export type ProblemCode =
  | 'unreadable text'
  | 'unknown word'
  | 'misplaced statement'
  | 'incomplete statement'
  | 'unexpected text'
  | 'unclosed sentence'
  | 'uneven indentation'
  | 'unknown version';

export interface Comment extends Span {
  readonly line: number;
  /** With its `//`. */
  readonly text: string;
}

export interface SyntaxTree {
  readonly nodes: readonly Node[];
  /**
   * Statements that could be read but have no place in the plan: those that stand where they do not belong,
   * and those under a line that could not be read. They take no part in the picture; names in them still
   * count as written, for searching and renaming.
   */
  readonly detached: readonly Node[];
  readonly problems: readonly Problem[];
  /** Names that lines were to give of which no statement is left, so that nobody is told there is no such thing. */
  readonly lostNames: readonly string[];
  /** Kinds of statements that lines were to be of which nothing is left, so that nobody is told that there is none. */
  readonly lostKinds: ReadonlySet<Statement['kind']>;
  readonly comments: readonly Comment[];
  readonly lineCount: number;
}

/** Visits every node, parents before children. */
export function walk(nodes: readonly Node[], visit: (node: Node, parents: readonly Node[]) => void): void {
  const stack: Node[] = [];
  const step = (node: Node): void => {
    visit(node, stack);
    stack.push(node);
    node.children.forEach(step);
    stack.pop();
  };
  nodes.forEach(step);
}

/** Two names are the same name when their keys are equal: case and Unicode composition do not count. */
export function nameKey(text: string): string {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    // Nearly every name is its own key: of ASCII characters without capitals.
    if (code > 0x7f || (code >= 0x41 && code <= 0x5a)) return text.normalize('NFC').toLowerCase();
  }
  return text;
}

export function isKind<K extends StatementKind>(node: Node, kind: K): node is Node & NodeOf<K> {
  return node.statement.kind === kind;
}
