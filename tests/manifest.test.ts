import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { usualHints } from '../server/language/hint-settings.js';
import { bundles } from './support/bundle-options.js';
import { manifestIn, rawManifest } from './support/manifest.js';

const root = path.resolve(import.meta.dirname, '..');

interface Setting {
  readonly markdownDescription?: string;
  readonly scope?: string;
  readonly order?: number;
}

interface Entry {
  readonly command: string;
  readonly when?: string;
  readonly group?: string;
}

interface Manifest {
  readonly version: string;
  readonly icon: string;
  readonly keywords: readonly string[];
  readonly categories: readonly string[];
  readonly engines: { readonly vscode: string };
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly bin: Readonly<Record<string, string>>;
  readonly contributes: {
    readonly commands: readonly {
      readonly command: string;
      readonly category: string;
      readonly icon?: string;
    }[];
    readonly menus: Readonly<Record<string, readonly Entry[]>>;
    readonly keybindings: readonly Entry[];
    readonly configuration: readonly {
      readonly title: string;
      readonly properties: Readonly<Record<string, Setting>>;
    }[];
  };
}

const manifest = manifestIn() as Manifest;
const { commands, menus, keybindings, configuration } = manifest.contributes;
const declared = commands.map(({ command }) => command);
const settings = Object.assign({}, ...configuration.map(({ properties }) => properties)) as Record<
  string,
  Setting
>;
const sources = readdirSync(path.join(root, 'client'), { recursive: true, encoding: 'utf8' })
  .filter((file) => /(?<!\.test|\.d)\.ts$/u.test(file))
  .map((file) => readFileSync(path.join(root, 'client', file), 'utf8'));

/** What a pattern finds in the sources of the extension: its first group, each once. */
function inSources(pattern: RegExp): readonly string[] {
  return [...new Set(sources.flatMap((text) => [...text.matchAll(pattern)].map(([, found = '']) => found)))];
}

describe('the commands of the manifest', () => {
  it('are those that the extension registers, but for the one that only links call', () => {
    const registered = inSources(/\bregister(?:Command)?\(\s*'(?:mahlstick\.)?(\w+)'/gu);
    expect(registered.map((name) => `mahlstick.${name}`).sort()).toEqual([...declared].sort());
    expect(inSources(/\bregisterCommand\(\s*(\w+),/gu)).toEqual(['openReferenceCommand']);
  });

  it('are those that the extension calls and menus and keys name', () => {
    const called = inSources(/(?:executeCommand\(|command: )'(mahlstick\.\w+)'/gu);
    const named = [...Object.values(menus).flat(), ...keybindings].map(({ command }) => command);
    expect(called.length).toBeGreaterThan(2);
    expect([...called, ...named].filter((command) => !declared.includes(command))).toEqual([]);
  });

  it('stand in the palette only where they can run; a new plan can be begun anywhere', () => {
    const conditional = (menus['commandPalette'] ?? []).filter(({ when }) => when);
    expect(conditional.map(({ command }) => command).sort()).toEqual(
      declared.filter((command) => command !== 'mahlstick.newPlan').sort(),
    );
  });

  it('have an icon where they stand in a bar', () => {
    const bar = (menus['editor/title'] ?? []).filter(({ group }) => group?.startsWith('navigation'));
    expect(bar.length).toBeGreaterThan(2);
    const bare = commands.filter(({ icon }) => icon === undefined).map(({ command }) => command);
    expect(bar.filter(({ command }) => bare.includes(command))).toEqual([]);
    expect(new Set(commands.map(({ category }) => category))).toEqual(new Set(['Mahlstick']));
  });
});

/** Contexts of VS Code that conditions may ask for. */
const OF_THE_EDITOR = new Set([
  'activeWebviewPanelId',
  'editorFocus',
  'editorLangId',
  'explorerResourceIsFolder',
  'isInDiffEditor',
  'resourceLangId',
]);

it('conditions ask for contexts that VS Code has or the extension sets, and for each of these', () => {
  const conditions = [...Object.values(menus).flat(), ...keybindings].flatMap(({ when }) => when ?? []);
  const asked = new Set(
    conditions.flatMap(
      (condition) => condition.replaceAll(/(?:==|!=) *(?:'[^']*'|\w+)/gu, '').match(/[A-Za-z][\w.]*/gu) ?? [],
    ),
  );
  const set = inSources(/'setContext', '(mahlstick\.\w+)'/gu);
  expect([...asked].filter((context) => !OF_THE_EDITOR.has(context)).sort()).toEqual([...set].sort());
});

describe('the settings of the manifest', () => {
  it('are those that extension and server read', () => {
    const read = [
      'mahlstick.rules',
      'mahlstick.preview.view',
      // Read by the library that speaks to the server.
      'mahlstick.trace.server',
      ...Object.keys(usualHints).map((hint) => `mahlstick.hints.${hint}`),
    ];
    expect(Object.keys(settings).sort()).toEqual(read.sort());
    expect(inSources(/getConfiguration\('mahlstick'\)\s*\.get(?:<\w+>)?\('([\w.]+)'\)/gu)).toEqual([
      'preview.view',
    ]);
  });

  it.each(Object.entries(settings))('%s is explained, and has its scope and place', (_, setting) => {
    expect(setting.markdownDescription).toMatch(/^[A-Z].*\.$/su);
    expect(setting.scope).toMatch(/^(?:window|resource|language-overridable)$/u);
    expect(setting.order).toBeGreaterThan(0);
  });

  it('stand in an order of their own in each group', () => {
    for (const { properties } of configuration) {
      const orders = Object.values(properties).map(({ order }) => order);
      expect(new Set(orders).size).toBe(orders.length);
    }
  });
});

describe('the packages', () => {
  /** What a list that begins by leaving out everything lets in again. */
  const letIn = (list: string) =>
    readFileSync(path.join(root, list), 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('!'))
      .map((line) => line.slice(1).replace(/^\//u, ''));
  const inExtension = letIn('.vscodeignore');
  const matches = (file: string) =>
    inExtension.some((pattern) =>
      new RegExp(`^${pattern.replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`, 'u').test(file),
    );

  it('have every file that the manifest names', () => {
    const named = [...rawManifest.matchAll(/"\.?\/?((?:dist|grammar|client)\/[^"*]+\.\w+)"/gu)].map(
      ([, file = '']) => file,
    );
    expect(named.length).toBeGreaterThan(12);
    const [onlyNpm = ''] = Object.values(manifest.bin);
    expect(named.filter((file) => file !== onlyNpm && !matches(file))).toEqual([]);
    expect(named.filter((file) => !file.startsWith('dist/') && !existsSync(path.join(root, file)))).toEqual(
      [],
    );
    expect(letIn('.npmignore')).toContain(onlyNpm);
  });

  it('have the bundles that are built for them, and no other', async () => {
    const built = await bundles();
    const scripts = (list: readonly string[]) => list.filter((file) => /^dist\/.*\.js$/u.test(file)).sort();
    const names = (given: typeof built) => given.map(({ name }) => `dist/${name}.js`).sort();
    expect(scripts(inExtension)).toEqual(names(built.filter(({ shipped }) => shipped)));
    expect(scripts(letIn('.npmignore'))).toEqual(names(built.filter(({ onCommandLine }) => onCommandLine)));
  });

  it('have the licence of what is in them, and what is told in other languages', () => {
    for (const file of ['LICENSE', 'NOTICE', 'dist/licences.txt', 'CHANGELOG.md', 'package.nls.json'])
      expect(matches(file)).toBe(true);
    for (const file of ['package.nls.de.json', 'client/l10n/bundle.l10n.de.json']) {
      expect(matches(file)).toBe(true);
      expect(existsSync(path.join(root, file))).toBe(true);
    }
  });
});

describe('the page in a gallery', () => {
  it('has words to be found by, no more than a gallery takes', () => {
    expect(manifest.keywords.length).toBeLessThanOrEqual(20);
    expect(new Set(manifest.keywords).size).toBe(manifest.keywords.length);
    expect(manifest.categories.length).toBeGreaterThan(1);
  });

  it('tells first of changes what is new in this version', () => {
    const [version] = /(?<=^## ).+$/mu.exec(readFileSync(path.join(root, 'CHANGELOG.md'), 'utf8')) ?? [];
    expect(version).toBe(manifest.version);
  });

  it('has an icon of the size that it is shown in', () => {
    const png = readFileSync(path.join(root, manifest.icon));
    expect(png.toString('latin1', 1, 4)).toBe('PNG');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([128, 128]);
  });

  it('is for the version of VS Code whose interface it is written against', () => {
    expect(manifest.engines.vscode).toBe(manifest.devDependencies['@types/vscode']);
  });
});
