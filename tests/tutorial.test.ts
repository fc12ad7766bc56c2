import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { format } from '../grammar/index.js';
import { compose } from '../server/drawing/compose.js';
import { pageToText, renderToText } from '../server/drawing/headless.js';
import { planSheet } from '../server/drawing/plan-sheet/sheet.js';
import { plate } from './support/plate.js';
import { type View, views } from '../server/drawing/scene.js';
import { checked, mended } from './support/plan.js';

/**
 * The tutorial, `examples/tutorial/README.md`: its words are written by hand, its drawings are made from the plans
 * beside it. After a change that is meant to be seen, run this file with UPDATE_REFERENCE=1, look at the drawings, and
 * commit them.
 */
const folder = path.resolve(import.meta.dirname, '../examples/tutorial');
const page = readFileSync(path.join(folder, 'README.md'), 'utf8');
const names = readdirSync(folder)
  .flatMap((file) => (file.endsWith('.mahl') ? [file.slice(0, -'.mahl'.length)] : []))
  .sort((one, other) => Number.parseInt(one) - Number.parseInt(other));

const NOTHING = '**Nothing to look at:**';
const FENCE = /^```mahl ([\d]+-[a-z]+)\n([^]*?)^```$/gmu;
const IMAGE = /^!\[([^\]]+)\]\(drawings\/(\d+-[a-z]+)\.svg "([a-z ]+)"\)$/gmu;

interface Step {
  readonly name: string;
  readonly text: string;
  /** The lines that the step adds or changes, as the page shows them, with those that say where they belong. */
  readonly shown: readonly string[];
  /** What the page says between this step's first lines and the next step's. */
  readonly prose: string;
  readonly quotes: readonly string[];
}

const textOf = (name: string) => readFileSync(path.join(folder, `${name}.mahl`), 'utf8');
const linesOf = (text: string) => text.split('\n').filter(Boolean);

const steps: readonly Step[] = names.map((name) => {
  const blocks = [...page.matchAll(FENCE)];
  const own = blocks.filter(([, step]) => step === name);
  const next = blocks.find(({ index }, at) => index > (own[0]?.index ?? 0) && blocks[at]?.[1] !== name);
  const prose = page.slice(own[0]?.index, next?.index);
  return {
    name,
    text: textOf(name),
    shown: own.flatMap(([, , body = '']) => linesOf(body)),
    prose,
    quotes: [...prose.matchAll(/^> (.+)$/gmu)].map(([, quote = '']) => quote),
  };
});

/** What is told of a plan, by rule, as the page quotes it. */
function told(text: string): readonly (readonly [rule: string, sentence: string])[] {
  const { plan, findings } = checked(text);
  return [
    ...plan.problems.map(({ code, message }) => [code, message] as const),
    ...findings
      .filter(({ allowed }) => !allowed)
      .map(({ rule, message, advice }) => [rule, advice ? `${message} ${advice}` : message] as const),
  ];
}

/** The plan as each fix of what is told of it leaves it. */
function fixesOf(text: string): readonly string[] {
  return checked(text).findings.flatMap(({ allowed, fix }) => (allowed || !fix ? [] : mended(text, fix)));
}

/** The lines of one list that are left when those of the other are taken out, each as often as it is there. */
function without(lines: readonly string[], others: readonly string[]): readonly string[] {
  const left = [...others];
  return lines.filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** Where the lines stand in the text, one after the other; -1 from the first that does not. */
function placesOf(lines: readonly string[], text: string): readonly number[] {
  const all = text.split('\n');
  let from = 0;
  return lines.map((line) => {
    const at = all.indexOf(line, from);
    from = at < 0 ? all.length : at + 1;
    return at;
  });
}

function drawn(name: string, what: string): string {
  const { plan, measures, findings } = checked(textOf(name));
  if (what === 'plan sheet') return pageToText(planSheet(plan, measures, findings), { theme: 'light' });
  const [, isPage, view = '', marked] = /^(page of )?view (\w+)( with findings)?$/u.exec(what) ?? [];
  if (!(views as readonly string[]).includes(view)) throw new Error(`There is no picture '${what}'.`);
  if (isPage) return renderToText(compose(plan, measures, findings, view as View), { theme: 'light' });
  return plate(plan, measures, marked ? findings : [], view as View);
}

describe.each(steps)('step $name of the tutorial', ({ name, text, shown, prose, quotes }) => {
  const before = steps[names.indexOf(name) - 1];

  it('is a plan in the house style that can be read to the last word', () => {
    expect(format(text)).toBe(text);
    expect(checked(text).plan.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('shows every line that is new, in the order of the plan', () => {
    const blocks = [...page.matchAll(FENCE)].filter(([, step]) => step === name);
    expect(blocks.flatMap(([, , body = '']) => placesOf(linesOf(body), text))).not.toContain(-1);
    const added = without(linesOf(text), before === undefined ? [] : linesOf(before.text));
    expect(added.length).toBeGreaterThan(0);
    expect(without(added, shown)).toEqual([]);
  });

  it('takes nothing back that the step before has, unless the light bulb does', () => {
    const taken = before === undefined ? [] : without(linesOf(before.text), linesOf(text));
    const isFixed = before?.prose.includes('Ctrl+.') === true && fixesOf(before.text).includes(text);
    expect(isFixed ? [] : taken).toEqual([]);
  });

  it('quotes what is said of its plan, and leaves no rule out that speaks for the first time', () => {
    const said = told(text);
    expect(quotes.filter((quote) => !said.some(([, sentence]) => sentence === quote))).toEqual([]);
    const known = new Set(before === undefined ? [] : told(before.text).map(([rule]) => rule));
    const news = said.filter(([rule]) => !known.has(rule));
    const quoted = said.filter(([, sentence]) => quotes.includes(sentence)).map(([rule]) => rule);
    expect(news.filter(([rule]) => !quoted.includes(rule))).toEqual([]);
    expect(prose.includes(NOTHING)).toBe(said.length === 0);
  });
});

describe('the drawings of the tutorial', () => {
  const pictures = [...page.matchAll(IMAGE)].map(([, alt = '', name = '', what = '']) => ({
    alt,
    name,
    what,
  }));

  it('are all that are there, one or more a step', () => {
    expect(readdirSync(path.join(folder, 'drawings')).sort()).toEqual(
      pictures.map(({ name }) => `${name}.svg`).sort(),
    );
    expect(new Set(pictures.map(({ name }) => Number.parseInt(name))).size).toBe(steps.length);
  });

  it.each(pictures)('has $name drawn as $what', ({ name, what }) => {
    const step = steps.find((one) => Number.parseInt(one.name) === Number.parseInt(name));
    const file = path.join(folder, 'drawings', `${name}.svg`);
    const svg = drawn(step?.name ?? '', what);
    if (process.env['UPDATE_REFERENCE']) writeFileSync(file, svg);
    expect(readFileSync(file, 'utf8')).toBe(svg);
  });
});
