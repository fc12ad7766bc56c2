import { readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { sourcesIn } from './support/sources.js';

const root = path.resolve(import.meta.dirname, '..');

/** From the ground up: a file imports from its own floor and those below it, never from one above. */
const FLOORS: readonly (readonly string[])[] = [
  ['grammar'],
  ['server/plan'],
  ['server/measure'],
  ['server/findings'],
  ['server/drawing'],
  ['server/photograph'],
  ['server/language'],
  ['server/entry', 'server/cli', 'client'],
];
const ENTRY_POINTS = FLOORS.length - 1;
const LANGUAGE = FLOORS.length - 2;

/** Files that touch the machine although they stand below the entry points; each is loaded by an entry point only. */
const KNOWS_THE_MACHINE = new Set(['server/drawing/png.ts', 'server/drawing/headless.ts']);

const PROTOCOL = /^vscode-(languageserver|languageclient|jsonrpc)/;

interface Import {
  readonly from: string;
  readonly specifier: string;
}

function floorOf(file: string): number {
  return FLOORS.findIndex((rooms) => rooms.some((room) => file.startsWith(`${room}/`)));
}

const sourceFiles = sourcesIn(root, ['grammar', 'server', 'client']);

function importsOf(file: string): readonly Import[] {
  const text = readFileSync(path.join(root, file), 'utf8');
  return ts
    .preProcessFile(text, true, true)
    .importedFiles.map(({ fileName }) => ({ from: file, specifier: fileName }));
}

/** The files that a file needs to run: what it takes types of alone is not among them. */
function neededBy(file: string): readonly string[] {
  const text = readFileSync(path.join(root, file), 'utf8');
  return ts.createSourceFile(file, text, ts.ScriptTarget.Latest).statements.flatMap((statement) => {
    if (!ts.isImportDeclaration(statement) && !ts.isExportDeclaration(statement)) return [];
    const { moduleSpecifier } = statement;
    if (!moduleSpecifier || !ts.isStringLiteral(moduleSpecifier) || isOfTypes(statement)) return [];
    if (!moduleSpecifier.text.startsWith('.')) return [];
    return path.posix.join(path.posix.dirname(file), moduleSpecifier.text.replace(/\.js$/, '.ts'));
  });
}

function isOfTypes(statement: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  if (ts.isExportDeclaration(statement)) {
    const named = statement.exportClause;
    return (
      statement.isTypeOnly ||
      (named !== undefined && ts.isNamedExports(named) && named.elements.every((one) => one.isTypeOnly))
    );
  }
  const clause = statement.importClause;
  if (clause === undefined || clause.name !== undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const named = clause.namedBindings;
  return named !== undefined && ts.isNamedImports(named) && named.elements.every((one) => one.isTypeOnly);
}

/** Files each of which needs the next to run, and the last the first; nothing where there are none. */
function circleOf(needs: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const settled = new Set<string>();
  const follow = (file: string, way: readonly string[]): readonly string[] | undefined => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
    if (settled.has(file)) return undefined;
    for (const needed of needs.get(file) ?? []) {
      const circle = follow(needed, [...way, file]);
      if (circle) return circle;
    }
    settled.add(file);
    return undefined;
  };
  for (const file of needs.keys()) {
    const circle = follow(file, []);
    if (circle) return circle;
  }
  return undefined;
}

/** What is wrong with an import; nothing when it runs along a floor or down. */
function fault({ from, specifier }: Import): string | undefined {
  const floor = floorOf(from);
  if (specifier.startsWith('.')) {
    const target = path.posix.join(path.posix.dirname(from), specifier);
    const targetFloor = floorOf(target);
    if (target === 'package.json' && floor === ENTRY_POINTS) return undefined;
    if (targetFloor < 0) return `${from} reaches outside the floors: ${target}`;
    return targetFloor > floor ? `${from} imports upwards: ${target}` : undefined;
  }
  if (floor < ENTRY_POINTS && !KNOWS_THE_MACHINE.has(from)) {
    const isNode = specifier.startsWith('node:') || builtinModules.includes(specifier);
    if (isNode) return `${from} knows the machine: ${specifier}`;
  }
  if (specifier === 'vscode' && !from.startsWith('client/')) return `${from} knows the editor`;
  if (PROTOCOL.test(specifier) && floor < LANGUAGE) return `${from} knows the protocol: ${specifier}`;
  return undefined;
}

describe('the floors of the house', () => {
  it('holds every source file on one floor', () => {
    expect(sourceFiles.filter((file) => floorOf(file) < 0)).toEqual([]);
    expect(sourceFiles.length).toBeGreaterThan(50);
  });

  it('has no import that runs up, or reaches for the machine, the editor or the protocol too early', () => {
    expect(sourceFiles.flatMap(importsOf).flatMap((found) => fault(found) ?? [])).toEqual([]);
  });

  it('has no files that need each other to run, in a circle', () => {
    expect(circleOf(new Map(sourceFiles.map((file) => [file, neededBy(file)])))).toBeUndefined();
  });

  it('knows a circle', () => {
    const needs = new Map([
      ['a.ts', ['b.ts', 'd.ts']],
      ['b.ts', ['c.ts']],
      ['c.ts', ['d.ts', 'b.ts']],
      ['d.ts', []],
    ]);
    expect(circleOf(needs)).toEqual(['b.ts', 'c.ts', 'b.ts']);
    expect(neededBy('server/findings/rules/even-count.ts')).toContain('server/findings/words/words.ts');
    expect(neededBy('server/findings/rules/even-count.ts')).not.toContain('server/findings/finding.ts');
  });

  it.each([
    ['server/plan/x.ts', '../measure/areas.js', 'imports upwards'],
    ['grammar/x.ts', '../server/plan/plan.js', 'imports upwards'],
    ['server/measure/x.ts', 'node:fs', 'knows the machine'],
    ['server/findings/x.ts', 'vscode-languageserver', 'knows the protocol'],
    ['server/language/x.ts', 'vscode', 'knows the editor'],
  ])('would refuse in %s an import of %s', (from, specifier, reason) => {
    expect(fault({ from, specifier })).toContain(reason);
  });
});

/** What writes to a disk: of node, of the editor, and of libraries. */
const WRITES =
  /\b(?:(?:write|append|copy)File(?:Sync)?|createWriteStream|f?truncate(?:Sync)?|write-file-atomic)\b/;
/** Each writes a file whole or not at all. */
const WRITES_WHOLE = ['server/cli/write-whole.ts', 'client/export/write-whole.ts'];

describe('files', () => {
  it('are written in two places alone, which write them whole', () => {
    const writing = sourceFiles.filter((file) => WRITES.test(readFileSync(path.join(root, file), 'utf8')));
    expect(writing.sort()).toEqual([...WRITES_WHOLE].sort());
  });
});
