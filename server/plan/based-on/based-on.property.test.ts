import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { type Node, nameKey, parse } from '../../../grammar/index.js';
import type { Plan, ReadFile } from '../plan.js';
import { resolvePlan } from '../resolve.js';
import { toldBy } from '../test-support.js';
import { facts } from './test-support.js';

const folder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../examples');
const texts = readdirSync(folder)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(path.join(folder, name), 'utf8'))
  .filter((text) => parse(text).nodes.every(({ statement }) => statement.kind !== 'based on'));

function reading(base?: string): ReadFile {
  return (name) => {
    if (name === 'base.mahl' && base !== undefined) return { ok: true, text: base };
    return { ok: true, text: readFileSync(path.join(folder, name), 'utf8') };
  };
}

const planOf = (text: string, base?: string): Plan => resolvePlan(parse(text), { readFile: reading(base) });

/** A plan without where things stand: what is left when all places are taken out. */
function placeless(plan: Plan): unknown {
  const places = new Set(['location', 'lines', 'node', 'statements', 'basedOn', 'files', 'problems']);
  return JSON.parse(
    JSON.stringify(plan, (key, value: unknown) =>
      places.has(key) || key.endsWith('Location') ? undefined : value,
    ),
  );
}

it('a plan that says nothing of its own is the plan that it is based on', () => {
  for (const text of texts) {
    const whole = planOf(text);
    expect(placeless(planOf('based on "base.mahl"', text))).toEqual(placeless(whole));
  }
});

it('a plan cut in two, one part based on the other, is the whole', () => {
  fc.assert(
    fc.property(fc.constantFrom(...texts), fc.infiniteStream(fc.boolean()), (text, coins) => {
      const toss = (): boolean => coins.next().value === true;
      const { base, own } = cutInTwo(text, toss);
      const whole = planOf(text);
      const cut = planOf(`based on "base.mahl"\n${own}`, base);
      expect([...facts(cut)].sort()).toEqual([...facts(whole)].sort());
      expect(toldBy(cut)).toEqual(toldBy(whole));
    }),
    { numRuns: 25 },
  );
});

it('whatever two plans say, they are read as one, and every place told is one of the plan’s own', () => {
  const lines = texts.flatMap((text) => text.split('\n'));
  const some = fc.array(fc.constantFrom(...lines), { maxLength: 60 }).map((chosen) => chosen.join('\n'));
  const names = fc.array(fc.constantFrom('sky', 'barn', 'track', 'rust', 'road', 'white', 'pan'), {
    minLength: 1,
    maxLength: 4,
  });
  fc.assert(
    fc.property(some, some, names, (base, own, left) => {
      const text = `based on "base.mahl"\nwithout ${left.join(', ')}\n${own}`;
      const plan = planOf(text, base);
      const last = text.split('\n').length;
      for (const { location } of plan.problems) {
        expect(location).not.toHaveProperty('file');
        expect(location.line).toBeLessThan(last);
      }
      for (const { lines: block } of [...plan.objects, ...plan.leads, ...plan.sittings])
        expect(block?.last ?? 0).toBeLessThan(last);
    }),
    { numRuns: Number(process.env['RUNS'] ?? 60) },
  );
});

/** Each statement goes to one of the two, and of the blocks of objects, sittings and palettes each line. */
function cutInTwo(text: string, toss: () => boolean): { readonly base: string; readonly own: string } {
  const lines = text.split('\n');
  const sides: [string[], string[]] = [[], []];
  const sideOf = new Map<string, boolean>();
  /** What belongs together goes to one side: all divisions, all shapes of an object. */
  const sideFor = (name: string): boolean => {
    const side = sideOf.get(name) ?? toss();
    sideOf.set(name, side);
    return side;
  };
  const put = (toOwn: boolean, { line, lastLine }: Node): void => {
    sides[toOwn ? 1 : 0].push(...lines.slice(line, lastLine + 1));
  };
  for (const node of parse(text).nodes) {
    const { statement, line, children } = node;
    if (statement.kind !== 'object' && statement.kind !== 'sitting' && statement.kind !== 'palette') {
      put(sideFor(statement.kind), node);
      continue;
    }
    const name =
      statement.kind === 'object'
        ? `object ${nameKey(statement.name.text)}`
        : statement.kind === 'sitting'
          ? statement.title.value
          : 'palette';
    const bare = statement.kind === 'sitting' ? `sitting "${statement.title.value}"` : name;
    const under = children.map((child) => ({ child, toOwn: sideFor(`${name} ${slotOf(child)}`) }));
    sides[0].push(lines[line] ?? '');
    under.filter(({ toOwn }) => !toOwn).forEach(({ child }) => put(false, child));
    if (!under.some(({ toOwn }) => toOwn)) continue;
    sides[1].push(bare);
    under.filter(({ toOwn }) => toOwn).forEach(({ child }) => put(true, child));
  }
  return { base: sides[0].join('\n'), own: sides[1].join('\n') };
}

function slotOf({ statement }: Node): string {
  return statement.kind === 'size along' ? 'size' : statement.kind;
}
