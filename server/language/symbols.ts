import {
  SymbolKind,
  type DocumentSymbol,
  type Range,
  type SymbolInformation,
} from 'vscode-languageserver-types';
import { type Node, said, type Span, type Statement, t } from '../../grammar/index.js';
import type { KnownPlan } from './library.js';
import { kindWords } from './names.js';
import { rangeOf } from './text.js';

/** The plan's parts as a painter would list them, each with what belongs to it. */
export function nestedSymbols({ tree, lines }: Pick<KnownPlan, 'tree' | 'lines'>): DocumentSymbol[] {
  return tree.nodes.flatMap((node) => symbolsOf(node, lines));
}

/** The same without nesting, for clients that know no better; `containerName` tells what each belongs to. */
export function flatSymbols(plan: KnownPlan): SymbolInformation[] {
  const { uri } = plan;
  const flatten = (symbols: readonly DocumentSymbol[], container?: string): SymbolInformation[] =>
    symbols.flatMap(({ name, kind, range, children }) => [
      {
        name,
        kind,
        location: { uri, range },
        ...(container === undefined ? {} : { containerName: container }),
      },
      ...flatten(children ?? [], name),
    ]);
  return flatten(nestedSymbols(plan));
}

function symbolsOf(node: Node, lines: readonly string[]): readonly DocumentSymbol[] {
  const range = blockRange(node, lines);
  const children = node.children.flatMap((child) => symbolsOf(child, lines));
  return titlesOf(node.statement).map(({ name, kind, detail, span }) => ({
    name,
    kind,
    range,
    selectionRange: rangeOf({ line: node.line, start: span.start, end: span.end }),
    ...(detail === undefined ? {} : { detail }),
    ...(children.length > 0 ? { children } : {}),
  }));
}

function blockRange({ line, lastLine, statement }: Node, lines: readonly string[]): Range {
  if (lastLine === line) return rangeOf({ line, start: statement.start, end: statement.end });
  return {
    start: { line, character: statement.start },
    end: { line: lastLine, character: lines[lastLine]?.length ?? 0 },
  };
}

interface Title {
  readonly name: string;
  readonly kind: SymbolKind;
  readonly detail?: string;
  /** The words that are selected when the symbol is chosen. */
  readonly span: Span;
}

/** What a statement is called in the outline; statements that only describe another have no title. */
function titlesOf(statement: Statement): readonly Title[] {
  const { keyword } = statement;
  switch (statement.kind) {
    case 'plan':
      return [title(statement.title.value || 'plan', SymbolKind.Module, statement.title)];
    case 'object':
      return [title(statement.name.text, SymbolKind.Object, statement.name, statement.role?.choice)];
    case 'colour definition':
      return [
        title(
          statement.name.text,
          SymbolKind.Constant,
          statement.name,
          joined(statement.colour.text, statement.role?.choice),
        ),
      ];
    case 'lead':
      return [title(statement.name.text, SymbolKind.Event, statement.name, said(kindWords.lead))];
    case 'paint':
      return [
        title(
          statement.name.text,
          SymbolKind.Constant,
          statement.name,
          joined(statement.index?.text, statement.temperature?.choice),
        ),
      ];
    case 'sitting':
      return [
        title(
          statement.title.value || 'sitting',
          SymbolKind.Event,
          statement.title,
          statement.on?.text ?? said(kindWords.sitting),
        ),
      ];
    case 'group':
      return statement.groups.map((group) =>
        title(
          group.name.text,
          SymbolKind.EnumMember,
          group.name,
          group.from.value === group.to.value
            ? t('step {0}', group.from.value)
            : t('steps {0}-{1}', group.from.value, group.to.value),
        ),
      );
    case 'budget':
      return [title(`${statement.of.choice} budget`, SymbolKind.Array, keyword)];
    case 'canvas':
    case 'divide':
    case 'focus':
    case 'scale':
    case 'path':
    case 'palette':
    case 'sketch':
    case 'horizon':
    case 'grid':
      return [title(statement.kind, SymbolKind.Property, keyword)];
    case 'allow':
      return [
        title(`allow ${statement.rule.text}`, SymbolKind.Boolean, statement.rule, statement.because.value),
      ];
    default:
      return [];
  }
}

function title(name: string, kind: SymbolKind, span: Span, detail?: string): Title {
  return { name, kind, span, ...(detail === undefined ? {} : { detail }) };
}

function joined(...parts: readonly (string | undefined)[]): string | undefined {
  const known = parts.filter((part) => part !== undefined);
  return known.length > 0 ? known.join(', ') : undefined;
}
