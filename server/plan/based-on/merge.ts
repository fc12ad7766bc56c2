import { nameKey, type Node, type NodeOf, type Statement, type Word } from '../../../grammar/index.js';
import { every } from '../select.js';

/** Statements of which one is enough; that of the plan goes before that of its base with all that stands under it. */
const SINGLE: ReadonlySet<Statement['kind']> = new Set([
  'plan',
  'concept',
  'mood',
  'canvas',
  'divide',
  'focus',
  'horizon',
  'scale',
  'wheel',
  'path',
  'sketch',
  'grid',
  'due',
] as const);

/** Statements that are about the file they stand in. */
const OF_THE_FILE: ReadonlySet<Statement['kind']> = new Set(['mahl', 'based on', 'without'] as const);

/** Of these there may be any number beside each other, under a statement that changes another. */
const MANY: ReadonlySet<Statement['kind']> = new Set(['note', 'allow', 'task'] as const);

/** Statements under which a plan goes on with what its base says there, line by line. */
const GOING_ON: ReadonlySet<Statement['kind']> = new Set(['object', 'sitting', 'palette'] as const);

/**
 * The statements of a plan and of the one that it builds on, as one plan: what the plan says goes before what its base
 * says of the same. What has a name keeps its place in the order of the base; what is new comes after.
 */
export function built(base: readonly Node[], own: readonly Node[]): readonly Node[] {
  const owns = new Map<string, Node>();
  for (const node of own) {
    const name = nameOf(node.statement);
    // Of two palettes the last counts, of two things with one name the first.
    if (name !== undefined && (!owns.has(name) || node.statement.kind === 'palette')) owns.set(name, node);
  }
  const changing = new Map<Node, Node>();
  const kept = base.flatMap((node) => {
    const { statement } = node;
    if (OF_THE_FILE.has(statement.kind)) return [];
    const name = nameOf(statement);
    const change = name === undefined ? undefined : owns.get(name);
    if (!change) return [node];
    // Of two things in the base with one name it is the first that is changed; the second is told of there.
    if (changing.has(change)) return isNamed(statement) ? [node] : [];
    changing.set(change, node);
    return isNamed(statement) ? [changed(change, node)] : [];
  });
  const others = own.filter((node) => !isNamed(node.statement));
  const fresh = own.filter((node) => isNamed(node.statement) && !changing.has(node));
  return [...others.map((node) => inPlace(node)), ...kept, ...fresh];

  /** A palette goes on with what its base's has; one that is replaced knows what it replaces. */
  function inPlace(node: Node): Node {
    const before = changing.get(node);
    return before ? changed(node, before) : node;
  }
}

/** Things with names of their own, whose order among each other counts. */
function isNamed({ kind }: Statement): boolean {
  return (
    kind === 'object' ||
    kind === 'colour definition' ||
    kind === 'lead' ||
    kind === 'sitting' ||
    kind === 'paint'
  );
}

/** Whether a plan that says such a statement goes on under it with what its base says there. */
export function goesOn({ kind }: Statement): boolean {
  return GOING_ON.has(kind);
}

/** Whether a plan that says such a statement takes the place of the one that its base says, and of no other. */
export function isSaidWholly(statement: Statement): boolean {
  // A canvas may be divided by several statements, all of which one of the plan takes out.
  return nameOf(statement) !== undefined && !goesOn(statement) && statement.kind !== 'divide';
}

/** Whether one more such line stands beside those of the base. */
export function isOneOfMany({ kind }: Statement): boolean {
  return MANY.has(kind);
}

/** What a statement is about: two of one name are about the same. Nothing for those that stand beside each other. */
function nameOf(statement: Statement): string | undefined {
  const { kind } = statement;
  if (SINGLE.has(kind)) return kind;
  switch (statement.kind) {
    case 'budget':
      return `budget ${statement.of.choice}`;
    case 'rule':
      return `rule ${inOneForm(statement.rule.text)}`;
    case 'cue':
      return `cue ${inOneForm(statement.text.value)}`;
    case 'sitting':
      return `sitting ${inOneForm(statement.title.value)}`;
    case 'object':
    case 'colour definition':
    case 'lead':
    case 'paint':
      return `${kind} ${nameKey(statement.name.text)}`;
    case 'palette':
      return kind;
    default:
      return undefined;
  }
}

function inOneForm(text: string): string {
  return nameKey(text.trim().split(/\s+/u).join(' '));
}

/** A statement in the place of one of the base, with what it leaves of that. */
function changed(own: Node, base: Node): Node {
  return { ...own, children: childrenOf(own, base), changes: base };
}

function childrenOf(own: Node, base: Node): readonly Node[] {
  if (!goesOn(own.statement)) return own.children;
  if (own.statement.kind === 'palette') return palette(own.children, base.children);
  return [
    ...own.children.map((child) => changing(child, base.children)),
    ...left(own.children, base.children),
  ];
}

/** Paints go on in the order of the base; mother, film and tube of the plan go before those of its base. */
function palette(own: readonly Node[], base: readonly Node[]): readonly Node[] {
  const isPaint = ({ statement }: Node): boolean => statement.kind === 'paint';
  const others = own.filter((node) => !isPaint(node)).map((node) => changing(node, base));
  const rest = left(
    own.filter((node) => !isPaint(node)),
    base.filter((node) => !isPaint(node)),
  );
  return [...others, ...rest, ...built(base.filter(isPaint), own.filter(isPaint))];
}

/** A line under a statement with the one of the base that it stands for, if there is one of its kind. */
function changing(own: Node, base: readonly Node[]): Node {
  const slot = slotOf(own.statement);
  const before =
    slot === undefined ? undefined : base.findLast(({ statement }) => slotOf(statement) === slot);
  return before ? { ...own, changes: before } : own;
}

/** The lines of the base of whose kind the plan has none. */
function left(own: readonly Node[], base: readonly Node[]): readonly Node[] {
  const taken = new Set(own.map(({ statement }) => slotOf(statement)));
  const facing = new Set(
    every(own, 'edges').flatMap(({ statement }) => statement.against.map(({ text }) => nameKey(text))),
  );
  return base.flatMap((node) => {
    const slot = slotOf(node.statement);
    if (slot !== undefined && taken.has(slot)) return [];
    return isEdgesAgainst(node)
      ? (edgesWithout(node, ({ text }) => facing.has(nameKey(text))) ?? [])
      : [node];
  });
}

/** What a line under an object or a sitting says something about; nothing for those of which there may be many. */
function slotOf(statement: Statement): string | undefined {
  if (statement.kind === 'edges') return statement.against.length === 0 ? 'edges' : undefined;
  if (isOneOfMany(statement)) return undefined;
  return statement.kind === 'size along' ? 'size' : statement.kind;
}

export function isEdgesAgainst(node: Node): node is Node & NodeOf<'edges'> {
  return node.statement.kind === 'edges' && node.statement.against.length > 0;
}

/** The edges against all but some objects; nothing where none are left. */
export function edgesWithout(node: Node & NodeOf<'edges'>, isOut: (name: Word) => boolean): Node | undefined {
  const against = node.statement.against.filter((name) => !isOut(name));
  if (against.length === node.statement.against.length) return node;
  return against.length === 0 ? undefined : { ...node, statement: { ...node.statement, against } };
}
