import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { format, parse } from '../grammar/index.js';
import { compose } from '../server/drawing/compose.js';
import { boardViews, type View, views } from '../server/drawing/scene.js';
import { check } from '../server/findings/check.js';
import { measure } from '../server/measure/measure.js';
import { resolvePlan } from '../server/plan/resolve.js';

const folder = path.resolve(import.meta.dirname, '../examples');
const names = readdirSync(folder).filter((name) => name.endsWith('.mahl'));

function textOf(name: string): string {
  return readFileSync(path.join(folder, name), 'utf8');
}

function read(text: string) {
  const tree = parse(text);
  const plan = resolvePlan(tree, {
    readFile: (file) => ({ ok: true, text: textOf(file) }),
  });
  const measures = measure(plan);
  return { tree, plan, measures, findings: check(plan, measures) };
}

interface Meant {
  /** The rules that speak up, once for each finding, in the order in which they are told. */
  readonly told: readonly string[];
  /** The rules that the plan sets aside with a reason, in the same way. */
  readonly setAside: readonly string[];
}

/** What is found in the examples because it is meant to be; nothing else is, and nothing in any other example. */
const meant: Readonly<Record<string, Meant>> = {
  // Both budgets are broken on purpose, as its head says: each in all three of its parts.
  'moth-night.mahl': {
    told: ['colour budget', 'colour budget', 'colour budget'],
    setAside: ['value budget', 'value budget', 'value budget'],
  },
  // Oil on the palette, and rags with it; a metal in a paint is told once for each.
  'goldfinch.mahl': { told: ['oily rags'], setAside: [] },
  'noon-greek.mahl': { told: ['oily rags'], setAside: [] },
  'quinces.mahl': {
    told: ['hazardous pigment', 'hazardous pigment', 'oily rags'],
    setAside: ['primary without a side'],
  },
  // The darks of a room at night, deeper than paint can be mixed.
  'seamstress.mahl': {
    told: ['oily rags'],
    setAside: ['colour beyond the palette', 'colour beyond the palette', 'colour beyond the palette'],
  },
  'winter-barn.mahl': { told: ['hazardous pigment', 'hazardous pigment', 'oily rags'], setAside: [] },
  // What holds of the paints that it takes from the other plan holds here too; no tube is as dark as firs at dusk.
  'winter-barn-dusk.mahl': {
    told: ['hazardous pigment', 'hazardous pigment', 'oily rags'],
    setAside: ['colour beyond the palette'],
  },
  // Ten lines leave the wall behind the table to the ground.
  'ten.mahl': { told: ['bare ground'], setAside: [] },
};
/** Views that show no picture of the whole plan. */
const boards: ReadonlySet<View> = new Set(boardViews);

const nothing: Meant = { told: [], setAside: [] };

/** The rules that speak up: findings that are not set aside. */
function rulesFound(text: string): readonly string[] {
  const standing = read(text).findings.filter(({ allowed }) => !allowed);
  return [...new Set(standing.map(({ rule }) => rule))].sort();
}

/** Changes the one place where `from` stands, at or after the line that begins the block `under`. */
function changed(name: string, from: string, to: string, under = ''): string {
  const text = textOf(name);
  const block = text.indexOf(under);
  const place = text.indexOf(from, block);
  if (block < 0 || place < 0) throw new Error(`${name} has no ${from} under ${under}`);
  return text.slice(0, place) + to + text.slice(place + from.length);
}

describe.each(names)('%s', (name) => {
  const { tree, plan, measures, findings } = read(textOf(name));

  it('is read to the last word', () => {
    expect(tree.problems).toEqual([]);
    expect(plan.problems.filter(({ severity }) => severity !== 'hint')).toEqual([]);
  });

  it('is in the house style', () => {
    expect(format(textOf(name))).toBe(textOf(name));
  });

  it('has exactly the findings that it is meant to have', () => {
    const rulesOf = (allowed: boolean) =>
      findings.filter((finding) => Boolean(finding.allowed) === allowed).map(({ rule }) => rule);
    expect({ told: rulesOf(false), setAside: rulesOf(true) }).toEqual(meant[name] ?? nothing);
  });

  it('sets aside with a reason only', () => {
    const reasons = findings.flatMap(({ allowed }) => allowed ?? []).map(({ reason }) => reason);
    expect(reasons.filter((reason) => reason === undefined || reason.length < 20)).toEqual([]);
  });

  it('has one dominant object, and it lies at the centre of interest', () => {
    expect(
      measures.focus?.dominants.map(({ holds, distanceShare = Infinity }) => holds || distanceShare < 0.05),
    ).toEqual([true]);
  });

  it.each(views.filter((view) => !boards.has(view)))('is drawn as %s', (view) => {
    const scene = compose(plan, measures, findings, view);
    const picture = scene.layers.find((layer) => layer.name === 'picture');
    const drawn = new Set(
      picture?.marks.map(({ subject }) => subject).filter((subject) => subject?.startsWith('object')),
    );
    expect(drawn.size).toBe(
      plan.objects.filter((_, index) => (measures.objects[index]?.share ?? 0) > 0).length,
    );
  });

  it('shows each of its paints, and the picture after each of its sittings', () => {
    for (const [view, kind, count] of [
      ['palette', 'paint', plan.palette?.paints.length ?? 0],
      ['sittings', 'sitting', plan.sittings.length],
    ] as const) {
      const { layers, subjects } = compose(plan, measures, findings, view);
      const shown = new Set(layers.flatMap(({ marks }) => marks.map(({ subject }) => subject)));
      const drawn = Object.entries(subjects).filter(
        ([key, subject]) => subject.kind === kind && shown.has(key),
      );
      expect(drawn).toHaveLength(count);
    }
  });
});

describe('what the examples are there to show', () => {
  it('has every example in its list', () => {
    const list = readFileSync(path.join(folder, 'README.md'), 'utf8');
    expect(names.filter((name) => !list.includes(`(${name})`))).toEqual([]);
  });

  it('says a whole plan in ten lines', () => {
    const lines = textOf('ten.mahl').trimEnd().split('\n');
    expect(lines).toHaveLength(10);
    expect(lines.every((line) => line.trim() !== '')).toBe(true);
  });
});

describe('what the list of examples says to try first', () => {
  it('lets the ground of `ten.mahl` show behind the pear', () => {
    const canvas = 'canvas  40 x 30 cm\n';
    const { plan, measures } = read(changed('ten.mahl', canvas, `${canvas}  ground  #5b3450\n`));
    expect(plan.canvas.ground.step).toBe(2);
    expect(measures.values.bareShare).toBeGreaterThan(0.5);
  });

  it('breaks the value budget of `winter-barn.mahl` with a darker sky', () => {
    const darker = changed('winter-barn.mahl', 'value   4', 'value   3', 'object  sky');
    expect(rulesFound(darker)).toContain('value budget');
  });

  it('gives the hands of `seamstress.mahl` a rival with a hard-edged lamp', () => {
    const harder = changed('seamstress.mahl', 'edges   soft', 'edges   hard', 'object  lamp');
    expect(rulesFound(harder)).toContain('rival');
    expect(read(harder).findings.find(({ rule }) => rule === 'rival')?.message).toContain('`lamp`');
  });

  it('puts the lantern of `winter-barn-dusk.mahl` out with the door as dark as by day', () => {
    const out = changed('winter-barn-dusk.mahl', '  value   4\n', '', 'object  door');
    expect(read(out).plan.objects.find(({ name }) => name === 'door')?.step).toBe(1);
    expect(rulesFound(out)).toContain('chroma out of reach');
  });

  it('leaves the pan of `quinces.mahl` away from another centre of interest', () => {
    const moved = changed('quinces.mahl', 'focus   lower right', 'focus   upper left');
    expect(read(moved).measures.focus?.dominants[0]).toMatchObject({ holds: false });
    expect(rulesFound(moved)).not.toEqual([]);
  });

  it('breaks the colour budget of `goldfinch.mahl` with a small sun', () => {
    const smaller = changed('goldfinch.mahl', 'circle 17', 'circle 9');
    expect(rulesFound(smaller)).toContain('colour budget');
  });

  it('hears about the values of `moth-night.mahl` without its allowance', () => {
    const line = /^allow .*\n/m.exec(textOf('moth-night.mahl'))?.[0] ?? '';
    expect(rulesFound(changed('moth-night.mahl', line, ''))).toContain('value budget');
  });

  it('breaks the value budget of `noon-greek.mahl` with a grey cat', () => {
    const grey = changed('noon-greek.mahl', 'value   1', 'value   4', 'object  γάτα');
    expect(rulesFound(grey)).toContain('value budget');
  });
});
