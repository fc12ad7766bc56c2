import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

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

function sourceFiles(): readonly string[] {
  return ['grammar', 'server', 'client'].flatMap((room) =>
    readdirSync(path.join(root, room), { recursive: true, encoding: 'utf8' })
      .map((file) => path.posix.join(room, file.split(path.sep).join('/')))
      .filter((file) => /\.ts$/.test(file) && !/\.(test|d)\.ts$/.test(file)),
  );
}

function importsOf(file: string): readonly Import[] {
  const text = readFileSync(path.join(root, file), 'utf8');
  return ts
    .preProcessFile(text, true, true)
    .importedFiles.map(({ fileName }) => ({ from: file, specifier: fileName }));
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
    expect(sourceFiles().filter((file) => floorOf(file) < 0)).toEqual([]);
    expect(sourceFiles().length).toBeGreaterThan(50);
  });

  it('has no import that runs up, or reaches for the machine, the editor or the protocol too early', () => {
    expect(
      sourceFiles()
        .flatMap(importsOf)
        .flatMap((found) => fault(found) ?? []),
    ).toEqual([]);
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
