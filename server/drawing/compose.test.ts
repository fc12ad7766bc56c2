import { describe, expect, it } from 'vitest';
import { luminousReflectance } from '../plan/colour/value.js';
import { compose } from './compose.js';
import { type PathMark, type Scene, isBoardView, isHex, views } from './scene.js';
import { doorwayPlan, markOf, marksOf, sceneOf, worked } from './test-plans.js';

function path(scene: Scene, key: string): PathMark {
  const mark = markOf(scene, key);
  if (mark?.kind !== 'path') throw new Error(`No path with the key ${key}.`);
  return mark;
}

/** sRGB grey of a Munsell value: ASTM D1535 quintic, then the transfer curve of IEC 61966-2-1. */
function greyOfValue(value: number): string {
  const linear = luminousReflectance(value) / 100;
  const encoded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
  const channel = Math.round(encoded * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${channel}${channel}${channel}`;
}

const pictureViews = views.filter((view) => !isBoardView(view));

/** The lines to carry over have no tones. */
const toned = pictureViews.filter((view) => view !== 'transfer');

describe('every view', () => {
  it.each(views)('%s has keys that are unique, and subjects that exist', (view) => {
    const scene = sceneOf(doorwayPlan, view);
    const marks = scene.layers.flatMap(({ marks: all }) => all);
    const keys = marks.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { subject } of marks)
      if (subject !== undefined) expect(scene.subjects).toHaveProperty([subject]);
  });

  it.each(views)('%s is plain data, the same each time', (view) => {
    const scene = sceneOf(doorwayPlan, view);
    expect(JSON.parse(JSON.stringify(scene))).toEqual(scene);
    expect(sceneOf(doorwayPlan, view)).toEqual(scene);
  });

  it.each(toned)('%s draws the shapes from back to front on the ground', (view) => {
    const keys = marksOf(sceneOf(doorwayPlan, view), 'picture').map(({ key }) => key);
    expect(keys).toEqual([
      'ground',
      'object:sky',
      'object:tram',
      'object:doorway',
      'object:driver',
      'object:figure',
      'object:puddle',
      'object:puddle:hatch',
      'object:cover',
    ]);
  });

  it('transfer draws the same shapes as lines on paper', () => {
    const marks = marksOf(sceneOf(doorwayPlan, 'transfer'), 'picture');
    expect(marks.map(({ key }) => key)).toEqual(
      marksOf(sceneOf(doorwayPlan, 'drawing'), 'picture').flatMap(({ key }) =>
        key.endsWith(':hatch') ? [] : [key],
      ),
    );
    expect(new Set(marks.map((mark) => (mark.kind === 'path' ? mark.fill : undefined)))).toEqual(
      new Set(['mount']),
    );
  });

  it.each(toned)('%s hatches what has neither value nor colour, and says so', (view) => {
    const { legend } = sceneOf(doorwayPlan, view);
    expect(legend.find(({ key }) => key === 'hatch')?.text).toMatch(
      /^hatched, 1 %: no value or colour planned$/,
    );
  });

  it.each(views)('%s can be drawn for a plan without a word', (view) => {
    const scene = sceneOf('', view);
    expect(marksOf(scene, 'picture').map(({ key }) => key)).toEqual(['ground']);
    expect(scene.title).toContain('Untitled plan');
  });

  it('tells where in the text a mark comes from', () => {
    const { subjects } = sceneOf(doorwayPlan, 'drawing');
    const lines = doorwayPlan.split('\n');
    const tram = subjects['object:tram'];
    if (tram?.kind !== 'object') throw new Error('There is no tram.');
    expect(lines[tram.location.line]?.slice(tram.location.start, tram.location.end)).toBe('tram');
    expect([tram.lines.first, tram.lines.last].map((line) => lines[line])).toEqual([
      'object tram, dominant',
      '  value 3',
    ]);
  });

  it('gives the budgets as figures beside the bars', () => {
    const { budgets } = sceneOf(doorwayPlan, 'drawing');
    expect(budgets.map(({ of, tolerance }) => [of, tolerance])).toEqual([
      ['value', 0.05],
      ['colour', 0.05],
    ]);
    const dark = budgets[0]?.bars[0];
    expect(dark?.name).toBe('dark');
    expect(dark?.target).toBe(0.3);
    expect(dark?.within).toBe(false);
    expect(dark?.swatches).toEqual([greyOfValue(1)]);
  });

  it('describes itself for those who do not see it', () => {
    const { description } = sceneOf(doorwayPlan, 'values');
    expect(description).toContain('80 × 50 cm.');
    expect(description).toContain('Dominant: tram.');
    expect(description).toContain('Focal point on the upper right crossing of the golden section.');
    expect(description).toMatch(/dark \d+ % \(wanted 30 %\)/);
  });
});

describe('the drawing', () => {
  const scene = sceneOf(doorwayPlan, 'drawing');

  it('gives more weight to the line of what matters more, and dots a lost edge', () => {
    const stroke = (key: string) => path(scene, `object:${key}`).stroke;
    expect(stroke('tram')?.weight).toBe('heavy');
    expect(stroke('doorway')?.weight).toBe('medium');
    expect(stroke('sky')?.weight).toBe('fine');
    expect(stroke('puddle')).toMatchObject({ weight: 'hair', dash: 'dotted' });
  });

  it('shows the ground as the ground is', () => {
    expect(path(scene, 'ground').fill).toBe('#b9a48a');
  });

  it('has division lines, crossings, horizon, lead and focal point', () => {
    const keys = marksOf(scene, 'construction').map(({ key }) => key);
    expect(keys).toContain('division:golden:0');
    expect(keys).toContain('division:golden:0:upper right');
    expect(keys).toContain('horizon');
    expect(keys).toContain('lead:wires');
    expect(keys).toContain('focus');
    expect(path(scene, 'division:golden:0').stroke).toMatchObject({ weight: 'hair', dash: 'dashed' });
  });

  it('names what is seen and not what is hidden', () => {
    const texts = marksOf(scene, 'names').flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts).toContain('tram');
    expect(texts).toContain('cover');
    expect(texts).not.toContain('driver');
  });

  it('leads from a small thing to a name that stands beside it', () => {
    expect(markOf(scene, 'object:cover:leader')).toBeDefined();
    expect(markOf(scene, 'object:sky:leader')).toBeUndefined();
  });
});

describe('several divisions', () => {
  const scene = sceneOf('canvas 40 x 30 cm\ndivide golden\ndivide armature\ndivide rabatment', 'drawing');

  it('are told apart by their dashes, and each is named in the legend', () => {
    const dashes = ['golden:0', 'armature:1', 'rabatment:2'].map(
      (division) => path(scene, `division:${division}`).stroke?.dash,
    );
    expect(new Set(dashes).size).toBe(3);
    const named = scene.legend.filter(({ key }) => key.startsWith('division:')).map(({ text }) => text);
    expect(named).toEqual(['division: golden section', 'division: armature', 'division: rabatment']);
  });

  it('stay thin where they have many lines: the armature has fourteen', () => {
    const { d, stroke } = path(scene, 'division:armature:1');
    expect(d.match(/M/g)).toHaveLength(14);
    expect(stroke?.weight).toBe('hair');
  });
});

describe('washes', () => {
  const text = 'canvas 40 x 30 cm\nobject wall\n  shape rectangle (0, 0) to (40, 30)\n  value 3';

  it('are told for what they are where there are any', () => {
    expect(JSON.stringify(sceneOf(`${text}\n  colour #2f6f73`, 'drawing'))).toContain('washed thinly');
    expect(JSON.stringify(sceneOf(`${text}\n  colour #2f6f73`, 'colour'))).not.toContain('washed thinly');
    expect(JSON.stringify(sceneOf(text, 'drawing'))).not.toContain('washed thinly');
  });
});

describe('a sheet for a narrow page', () => {
  const { plan, measures, findings } = worked(doorwayPlan);
  const of = (isNarrow: boolean) => compose(plan, measures, findings, 'drawing', { isNarrow });
  const text = (scene: Scene, key: string) => {
    const mark = markOf(scene, key);
    return mark?.kind === 'text' ? mark : undefined;
  };

  it('has the captions in one column below the picture, in letters larger beside it', () => {
    const [wide, narrow] = [of(false), of(true)];
    const columns = (scene: Scene) => {
      const [values, colours] = ['value', 'colour'].map((key) => text(scene, `bars:${key}:heading`));
      return values !== undefined && colours !== undefined && values.x === colours.x ? 1 : 2;
    };
    expect([columns(wide), columns(narrow)]).toEqual([2, 1]);
    expect(narrow.em / narrow.sheet.width).toBeGreaterThan(1.3 * (wide.em / wide.sheet.width));
    expect(narrow.sheet.width).toBeCloseTo(wide.sheet.width, 9);
  });
});

describe('values', () => {
  it('shows each object in the grey of its step', () => {
    const scene = sceneOf(doorwayPlan, 'values');
    // Five steps are Munsell values 1, 3, 5, 7 and 9.
    expect(path(scene, 'object:figure').fill).toBe(greyOfValue(1));
    expect(path(scene, 'object:tram').fill).toBe(greyOfValue(5));
    expect(path(scene, 'object:sky').fill).toBe(greyOfValue(7));
    expect(path(scene, 'object:doorway').fill).toBe(greyOfValue(9));
  });

  it('numbers the objects by step', () => {
    const scene = sceneOf(doorwayPlan, 'values');
    expect(markOf(scene, 'object:tram:name')).toMatchObject({ kind: 'text', text: '3' });
  });
});

describe('notan', () => {
  it('is a few flat tones and nothing else', () => {
    const scene = sceneOf(doorwayPlan, 'notan');
    const fills = marksOf(scene, 'picture').flatMap((mark) =>
      mark.kind === 'path' ? (mark.fill ?? []) : [],
    );
    expect(new Set(fills).size).toBe(3);
    expect(fills.every(isHex)).toBe(true);
    for (const layer of ['construction', 'names'] as const) expect(marksOf(scene, layer)).toEqual([]);
  });

  it('has two tones for two groups', () => {
    const text = doorwayPlan.replace('group dark 1-2, middle 3, light 4-5', 'group dark 1-2, light 3-5');
    const fills = marksOf(sceneOf(text, 'notan'), 'picture').flatMap((mark) =>
      mark.kind === 'path' ? (mark.fill ?? []) : [],
    );
    expect(new Set(fills).size).toBe(2);
  });
});

describe('colour', () => {
  const scene = sceneOf(doorwayPlan, 'colour');

  it('names colours and gives each role a sign of its own form', () => {
    expect(markOf(scene, 'object:sky:name')).toMatchObject({ text: 'teal' });
    const form = (object: string) => path(scene, `object:${object}:role`).d.replace(/[\d.\- ]+/g, ' ');
    expect(form('sky')).toBe(form('tram'));
    expect(markOf(scene, 'object:tram:role:half')).toBeDefined();
    expect(markOf(scene, 'object:sky:role:half')).toBeUndefined();
    expect(form('doorway')).not.toBe(form('sky'));
  });
});

describe('the swatch of a colour', () => {
  const scene = sceneOf(doorwayPlan, 'colour');
  const fill = (key: string) => {
    const mark = markOf(scene, key);
    return mark?.kind === 'path' ? mark.fill : undefined;
  };

  it('has the tone in which it is seen, not that of its notation', () => {
    expect(fill('legend:colour:teal:sign')).toBe(fill('object:sky'));
    expect(fill('object:sky')).not.toBe('#2f6f73');
  });

  it('has the tones side by side where it is painted at several values, the largest first', () => {
    expect(fill('legend:colour:rust:sign')).toBe(fill('object:tram'));
    expect(fill('legend:colour:rust:sign:2')).toBe(fill('object:figure'));
    expect(fill('object:tram')).not.toBe(fill('object:figure'));
    expect(fill('legend:colour:ochre:sign:2')).toBeUndefined();
  });
});

describe('a colour of many objects', () => {
  const posts = Array.from(
    { length: 30 },
    (_, index) => `object post${index}\n  shape rectangle 1 x 6 at (${2 * index + 5}, 20)\n  colour rust`,
  );
  const plan = `canvas 80 x 40 cm\ncolour rust 7.5R 4/10 dominant\n${posts.join('\n')}`;

  it('is named on some of them, and the others are not said to have had no room', () => {
    const scene = sceneOf(plan, 'colour');
    const names = marksOf(scene, 'names').filter(({ key }) => key.endsWith(':name'));
    expect(names).toHaveLength(6);
    expect(JSON.stringify(scene)).not.toContain('no room');
  });
});

describe('findings', () => {
  const offFocus = doorwayPlan.replace('focus upper right', 'focus lower left');

  it('are marked where they are and listed with the same number', () => {
    const scene = sceneOf(offFocus, 'drawing');
    const key = 'finding:dominant off focus:tram';
    const inPicture = marksOf(scene, 'findings').find((mark) => mark.key === `${key}:number`);
    const inList = marksOf(scene, 'captions').find((mark) => mark.key === `${key}:listed:number`);
    expect(inPicture).toMatchObject({ kind: 'text' });
    expect(inList?.kind === 'text' && inPicture?.kind === 'text' && inList.text === inPicture.text).toBe(
      true,
    );
    expect(scene.subjects[key]).toMatchObject({ kind: 'finding', name: 'dominant off focus' });
  });

  it('that the plan sets aside are not marked', () => {
    const { plan, measures, findings } = worked(
      `${offFocus}allow dominant off focus because "the emptiness is the subject"\n`,
    );
    expect(findings.some(({ rule, allowed }) => rule === 'dominant off focus' && allowed !== undefined)).toBe(
      true,
    );
    const scene = compose(plan, measures, findings, 'drawing');
    expect(markOf(scene, 'finding:dominant off focus:tram')).toBeUndefined();
  });

  it('on a budget are shown at its bar, with the way it is off and not by colour alone', () => {
    const scene = sceneOf(doorwayPlan, 'drawing');
    const figures = markOf(scene, 'bar:value:dark:figures');
    expect(figures).toMatchObject({ face: 'strong', ink: 'warning' });
    expect(markOf(scene, 'bar:value:dark:off')?.tip).toMatch(/^The darks cover/);
    expect(marksOf(scene, 'findings').some(({ key }) => key.startsWith('finding:value budget'))).toBe(false);
  });
});
