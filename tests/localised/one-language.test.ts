import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Sentences, speaking } from '../../grammar/index.js';
import { german } from '../../server/entry/german.js';
import { exporterWith } from '../../server/entry/export.js';
import type { Renderers } from '../../server/entry/renderers.js';
import { cardOf, compareTwo } from '../../server/language/compared-plans.js';
import type { Scene } from '../../server/drawing/scene.js';
import { differenceInShort } from '../../server/drawing/wall/card.js';
import { comparePlans } from '../../server/findings/comparison/compare.js';
import { everything, openPlan, planUri } from '../../server/language/test-support.js';

const root = path.resolve(import.meta.dirname, '../..');
const text = readFileSync(path.join(root, 'server/findings/plans/rival.breaks.mahl'), 'utf8');

/** German of which each sentence is marked, so that no letter of it is taken for English. */
const language: Sentences = Object.fromEntries(
  Object.entries(german).map(([sentence, told]) => [sentence, `⟦${told}⟧`]),
);

function open() {
  return openPlan(text, { ...everything, language }).service;
}

/** The texts of a scene, those of the list of findings apart. */
function textsOf({ layers }: Scene): {
  readonly listed: readonly string[];
  readonly others: readonly string[];
} {
  const texts = layers.flatMap(({ name, marks }) =>
    marks.flatMap((mark) => (mark.kind === 'text' && name !== 'findings' ? [mark] : [])),
  );
  const isListed = (key: string): boolean => key.startsWith('finding');
  return {
    listed: texts.filter(({ key, text }) => isListed(key) && /\p{L}/u.test(text)).map((mark) => mark.text),
    others: texts.filter(({ key }) => !isListed(key)).map((mark) => mark.text),
  };
}

describe('a reader of German', () => {
  it('is told what is found in German beside the drawing, in the list on it and in what is tried by hand', () => {
    const service = open();
    const scene = service.scene(planUri, 'drawing');
    const tried = service.tryChange({
      textDocument: { uri: planUri },
      version: 1,
      view: 'drawing',
      change: { kind: 'value', subject: 'object:yard', step: 3 },
    });
    expect(service.snapshot(planUri)?.findings[0]?.message).toMatch(/^⟦/u);
    for (const one of [scene, tried && 'scene' in tried ? tried.scene : undefined]) {
      const { listed, others } = textsOf(one as Scene);
      expect(listed[0]).toBe('⟦Anzusehen⟧');
      expect(listed[1]).toMatch(/^⟦/u);
      expect(others.join(' ')).not.toMatch(/[⟦⟧]/u);
      expect(others.length).toBeGreaterThan(3);
    }
  });

  it('is refused in German what a hand can’t change, and offered in German what a line can become', () => {
    const service = open();
    const refused = (version: number, step: number) => {
      const answer = service.tryChange({
        textDocument: { uri: planUri },
        version,
        view: 'drawing',
        change: { kind: 'value', subject: 'object:yard', step },
      });
      return answer && 'refused' in answer ? answer.refused : '';
    };
    expect(refused(0, 3)).toMatch(/^⟦.*⟧$/u);
    expect(refused(1, 99)).toMatch(/^⟦.*⟧$/u);
    const line = text.split('\n').findIndex((words) => words.startsWith('focus'));
    const here = { line, character: 0 };
    const titles = service
      .codeActions(planUri, { start: here, end: here }, ['refactor.rewrite'])
      .map(({ title }) => title);
    expect(titles.filter((title) => !title.startsWith('⟦'))).toEqual([]);
  });

  it('is refused in German what can’t be renamed, and told in German what a link opens', () => {
    const marked =
      'based on "oven.mahl"\nobject wall\n  note "a"\nobject stove\n  shape circle 3 at (4, 4)\n';
    const { service } = openPlan(marked, { ...everything, language });
    const [link] = service.links(planUri);
    expect(link?.tooltip).toBe('⟦Den Plan öffnen, auf dem dieser aufbaut⟧');
    const refused = (name: string): string => {
      const answer = service.rename(planUri, { line: 1, character: 8 }, name);
      return answer && 'refused' in answer ? answer.refused : '';
    };
    expect(refused('two words')).toMatch(/^⟦Ein Name ist ein Wort.*„two words“ ist kein solches Wort\.⟧$/u);
    expect(refused('stove')).toBe('⟦⟦Zeile 4⟧ vergibt diesen Namen schon: ⟦Gegenstand⟧ „stove“.⟧');
  });

  it('reads in German in the outline what the entries of a plan are', () => {
    const outlined =
      'scale 5\n  group dark 1-2, light 5\nlead path from (0, 4) to (4, 4)\nsitting "Lay in"\n';
    const { service } = openPlan(outlined, { ...everything, language });
    const details = JSON.stringify(service.symbols(planUri));
    for (const told of ['Stufen 1-2', 'Stufe 5', 'Führungslinie', 'Sitzung'])
      expect(details).toContain(`"detail":"⟦${told}⟧"`);
  });

  it('is told in German about a file that is written and about a comparison', async () => {
    const params = { textDocument: { uri: planUri } };
    const snapshot = open().snapshot(planUri);
    if (snapshot === undefined) throw new Error('the plan is open');
    const pdfOf = () => Promise.resolve({ pdf: new Uint8Array(), missing: ['☃', '☄'] });
    const exporter = exporterWith(() => ({ pdfOf }) as unknown as Renderers);
    const remarksOn = async (what: 'drawing' | 'pages', format: 'pdf' | 'ics') => {
      const made = await exporter(snapshot, { ...params, what, format }, undefined);
      return 'remarks' in made ? made.remarks : [made.refused];
    };
    const told = [
      ...(await remarksOn('drawing', 'pdf')),
      ...(await remarksOn('pages', 'pdf')),
      ...(await remarksOn('drawing', 'ics')),
    ];
    expect(told.length).toBeGreaterThanOrEqual(4);
    const compared = await compareTwo(
      open(),
      {
        earlier: { uri: planUri, text: `${text}\nobjekt oven` },
        later: { uri: planUri, text: text.replace(/canvas .*/u, 'canvas 50 x 50 cm') },
        view: 'drawing',
      },
      () => Promise.resolve(true),
      language,
    );
    const remarks = compared && 'remarks' in compared ? compared.remarks : [];
    expect(remarks).toHaveLength(2);
    expect([...told, ...remarks].filter((remark) => !remark.startsWith('⟦'))).toEqual([]);
    expect(JSON.stringify(compared && 'changes' in compared ? compared.changes : '')).not.toMatch(/[⟦⟧]/u);
  });

  it('sees variants on the wall with German words, round a picture that is English', async () => {
    const asked = { plan: { uri: planUri, text }, view: 'drawing' } as const;
    const answer = await cardOf(open(), asked, [], () => Promise.resolve(true), language);
    const { scene, found, key } = answer?.card ?? {};
    expect(found).toMatch(/^⟦insgesamt dunkel⟧; ⟦1 Hinweis⟧$/u);
    expect(key).toBe('⟦insgesamt dunkel⟧');
    expect(JSON.stringify(scene)).not.toMatch(/[⟦⟧]/u);
    const snapshot = open().snapshot(planUri);
    if (snapshot === undefined) throw new Error('the plan is open');
    const other = openPlan(text.replace(/value {3}\d/u, 'value   4')).service.snapshot(planUri) ?? snapshot;
    expect(speaking(language, () => differenceInShort(comparePlans(snapshot, other)))).toMatch(
      /^⟦Anders als „.*“: ⟦/u,
    );
  });

  it.each(['sheet', 'drawing'] as const)('gives away a %s that is English in all it says', async (what) => {
    const write = (drawn: unknown): string => JSON.stringify(drawn);
    const exporter = exporterWith(() => ({ renderToText: write, pageToText: write }) as unknown as Renderers);
    const snapshot = open().snapshot(planUri);
    const made =
      snapshot &&
      (await exporter(snapshot, { textDocument: { uri: planUri }, what, format: 'svg' }, undefined));
    const svg = made && 'svg' in made ? made.svg : '';
    expect(svg).toContain('To look at');
    expect(svg).not.toMatch(/[⟦⟧]/u);
  });

  it('compares two plans in English, which is told of all that differs', async () => {
    const later = text.replace(/value {3}\d/u, 'value   4');
    const compared = await compareTwo(
      open(),
      { earlier: { uri: planUri, text }, later: { uri: planUri, text: later }, view: 'drawing' },
      () => Promise.resolve(true),
      language,
    );
    expect(compared && 'changes' in compared ? compared.changes.length : 0).toBeGreaterThan(0);
    expect(JSON.stringify(compared)).not.toMatch(/[⟦⟧]/u);
  });
});
