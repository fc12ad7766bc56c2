import type { Hover, Position } from 'vscode-languageserver-types';
import {
  classify,
  type ColourSpec,
  type Node,
  said,
  speaking,
  type Statement,
  statements,
  t,
} from '../../grammar/index.js';
import type { Rule } from '../findings/finding.js';
import { ruleById } from '../findings/rules.js';
import { ruleInShort } from '../findings/words/rule-in-short.js';
import { isOnLine } from '../plan/based-on/here.js';
import { parseColour } from '../plan/colour/colour.js';
import type { OwnLocation } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { baseFigures } from './figures/base.js';
import { canvasFigures } from './figures/canvas.js';
import { gridFigures, sketchFigures } from './figures/transfer.js';
import { colourBalanceFigures, colourFigures, wheelFigures } from './figures/colour.js';
import { conceptFigures, cueFigures } from './figures/concept.js';
import { horizonFigures, leadFigures, pathFigures } from './figures/eye-path.js';
import { divisionFigures } from './figures/division.js';
import { focusFigures, meansFigures } from './figures/focus.js';
import { objectFigures } from './figures/object.js';
import { allowanceFigures, notations, type Paragraphs, prose } from './figures/paragraphs.js';
import { mediumFigures, mixtureFigures, paintFigures, paletteFigures } from './figures/paint.js';
import { photographFigures } from './figures/photograph.js';
import { dueFigures, sittingFigures } from './figures/sitting.js';
import { tokenFigures } from './figures/token.js';
import { budgetFigures, groupFigures, planesFigures, scaleFigures } from './figures/values.js';
import { nameAt } from './names.js';
import { nodeAt } from './places.js';
import { findingPage, measurePage, statementPage } from './reference.js';
import type { Snapshot } from './snapshot.js';
import { contentOf, styleFor, type Style } from './style.js';
import { rangeOf, touches } from './text.js';

/** What is computed about the word under the caret, or what the word means. */
export function hover(snapshot: Snapshot, position: Position, abilities: Abilities): Hover | undefined {
  return speaking(abilities.language, () => {
    const style = styleFor(abilities.hoverMarkdown, abilities);
    const found = aboutName(snapshot, position, style) ?? aboutStatement(snapshot, position, style);
    if (found === undefined) return undefined;
    const paragraphs = [...baseFigures(snapshot.plan, position.line, style), ...found.paragraphs];
    if (paragraphs.length === 0) return undefined;
    return { contents: contentOf(style, paragraphs), range: rangeOf(found.location) };
  });
}

interface Found {
  readonly location: OwnLocation;
  readonly paragraphs: Paragraphs;
}

function aboutName(snapshot: Snapshot, { line, character }: Position, style: Style): Found | undefined {
  const name = nameAt(snapshot.names, line, character);
  if (name === undefined) return undefined;
  const paragraphs = nameFigures(snapshot, name, line, style);
  return paragraphs.length === 0 ? undefined : { location: name.location, paragraphs };
}

function nameFigures(
  snapshot: Snapshot,
  { kind, key }: NonNullable<ReturnType<typeof nameAt>>,
  line: number,
  style: Style,
): Paragraphs {
  const { plan } = snapshot;
  switch (kind) {
    case 'object': {
      const object = plan.objects.find((candidate) => candidate.key === key);
      return object === undefined
        ? []
        : [...objectFigures(snapshot, object, style), ...mixtureFigures(snapshot, object.index, style)];
    }
    case 'colour':
      return colourFigures(
        snapshot,
        plan.colours.findIndex((colour) => colour.key === key),
        style,
      );
    case 'group':
      return groupFigures(snapshot, key, style);
    case 'paint': {
      const paint = plan.palette?.paints.find((candidate) => candidate.key === key);
      return paint === undefined ? [] : paintFigures(snapshot, paint, style);
    }
    case 'lead':
      return leadFigures(snapshot, key, style);
    case 'sitting':
      return sittingFigures(snapshot, line, style);
  }
}

function aboutStatement(snapshot: Snapshot, { line, character }: Position, style: Style): Found | undefined {
  const node = nodeAt(snapshot.tree, line);
  if (node === undefined) return undefined;
  const { statement } = node;
  if (character < statement.start || character > statement.end) return undefined;
  const location = { line, start: statement.start, end: statement.end };
  const { keyword } = statement;
  if (touches(keyword, character) && keyword.end > keyword.start) {
    return {
      location: { line, start: keyword.start, end: keyword.end },
      paragraphs: [...figuresOf(snapshot, node, style), ...meaningOf(statement, style)],
    };
  }
  const colour = writtenColourAt(statement, character);
  if (colour !== undefined) {
    const read = parseColour(colour.text);
    const place = { line, start: colour.start, end: colour.end };
    if (read.ok) return { location: place, paragraphs: [notations(read.colour, style)] };
  }
  return (
    aboutToken(snapshot, node, character, style) ?? { location, paragraphs: figuresOf(snapshot, node, style) }
  );
}

/**
 * A word of a statement, with what is computed of the statement or of what it stands under, or else what the statement
 * says.
 */
function aboutToken(snapshot: Snapshot, node: Node, character: number, style: Style): Found | undefined {
  const { line } = node;
  const tokens = classify(snapshot.tree, line, line).filter((span) => span.class !== 'comment');
  // Between two words the caret stands before the second: `30` and `%` have no space between them.
  const token =
    tokens.find(({ start, end }) => start <= character && character < end) ??
    tokens.find((span) => touches(span, character));
  if (token === undefined) return undefined;
  const own = tokenFigures(snapshot, node, token, style);
  const figures = figuresOf(snapshot, node, style);
  return {
    location: { line, start: token.start, end: token.end },
    paragraphs: [...own, ...(figures.length > 0 ? figures : meaningOf(node.statement, style))],
  };
}

/** The figures that belong to a statement as a whole. */
function figuresOf(snapshot: Snapshot, node: Node, style: Style): Paragraphs {
  const { statement } = node;
  switch (statement.kind) {
    case 'canvas':
      return canvasFigures(snapshot, style);
    case 'divide':
      return divisionFigures(snapshot, node.line, style);
    case 'focus':
      return focusFigures(snapshot, style);
    case 'scale':
      return scaleFigures(snapshot, style);
    case 'planes':
      return planesFigures(snapshot, style);
    case 'grid':
      return gridFigures(snapshot, node.line, style);
    case 'sketch':
      return sketchFigures(snapshot, style);
    case 'horizon':
      return horizonFigures(snapshot, style);
    case 'win by':
      return meansFigures(snapshot, style);
    case 'path':
      return pathFigures(snapshot, style);
    case 'wheel':
      return wheelFigures(snapshot, style);
    case 'plan':
    case 'concept':
    case 'mood':
    case 'avoid':
      return conceptFigures(snapshot, style);
    case 'cue':
      return cueFigures(snapshot, node.line, style);
    case 'budget':
      return statement.of.choice === 'value'
        ? budgetFigures(snapshot, 'value', style)
        : [...budgetFigures(snapshot, 'colour', style), ...colourBalanceFigures(snapshot, style)];
    case 'allow': {
      const allowance = snapshot.plan.allowances.find(({ location }) => isOnLine(location, node.line));
      return [
        ...(allowance === undefined ? [] : [allowanceFigures(allowance, style)]),
        ...ruleFigures(statement.rule.text, style),
      ];
    }
    case 'rule':
      return ruleFigures(statement.rule.text, style);
    case 'palette':
      return paletteFigures(snapshot, style);
    case 'sitting':
    case 'layer':
    case 'fat':
    case 'film':
      return sittingFigures(snapshot, node.line, style);
    case 'photo':
      return photographFigures(snapshot, node.line, style);
    case 'due':
      return dueFigures(snapshot, style);
    case 'medium':
      return mediumFigures(statement.text.value, style);
    default:
      return [];
  }
}

function ruleFigures(id: string, style: Style): Paragraphs {
  const rule = ruleById(id.toLowerCase());
  return rule === undefined ? [] : ruleMeaning(rule, style);
}

/** What a rule says, how grave it is, where it begins to be broken and where it comes from. */
export function ruleMeaning(rule: Rule, style: Style): Paragraphs {
  return [
    style.text(ruleInShort(rule)),
    style.text(said(rule.explanation)),
    style.text(t('From: {0}', said(rule.source))),
    ...referenceAt(findingPage(style.reference, rule.id), style),
  ];
}

function meaningOf(statement: Statement, style: Style): Paragraphs {
  const entry = statements.find((candidate) => candidate.kind === statement.kind);
  if (entry === undefined) return [];
  const measured = measurePage(style.reference, statement);
  return [
    ...statementMeaning(entry, style),
    ...(measured === undefined ? [] : [style.link(t('How it is measured'), measured)]),
  ];
}

/** What a statement says, how it is written, and what holds without it. */
export function statementMeaning(entry: (typeof statements)[number], style: Style): Paragraphs {
  return [
    style.text(said(entry.meaning)),
    style.example(entry.form),
    ...(entry.byDefault === undefined ? [] : [prose(said(`Left out: ${entry.byDefault}.`), style)]),
    ...referenceAt(statementPage(style.reference, entry.words.join(' ')), style),
  ];
}

function referenceAt(address: string | undefined, style: Style): Paragraphs {
  return address === undefined ? [] : [style.link(t('Reference'), address)];
}

function writtenColourAt(statement: Statement, column: number): ColourSpec | undefined {
  switch (statement.kind) {
    case 'ground':
    case 'colour definition':
    case 'colour':
    case 'glaze':
      return [statement.colour].find((spec) => touches(spec, column));
    case 'paint':
      return [statement.full, statement.tint?.colour].find(
        (spec) => spec !== undefined && touches(spec, column),
      );
    default:
      return undefined;
  }
}
