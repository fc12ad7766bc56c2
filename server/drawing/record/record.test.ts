import { describe, expect, it } from 'vitest';
import type { RecordMeasure } from '../../measure/photograph/record.js';
import { compose } from '../compose.js';
import { renderToText } from '../headless.js';
import { pageOf } from '../paper.js';
import { pdfOf } from '../pdf/pdf.js';
import { roboto } from '../pdf/roboto.js';
import type { Scene } from '../scene.js';
import { markOf, marksOf, sceneOf, worked } from '../test-plans.js';
import { readPdf } from '../../../tests/support/pdf.js';
import { photographed, photographedPlan } from './test-record.js';

const read = photographed(photographedPlan);
const sceneAt = (sitting?: number): Scene =>
  compose(read.plan, read.measures, read.findings, 'record', { sitting });
const latest = sceneAt();
const first = sceneAt(0);

const textsOf = (scene: Scene): readonly string[] =>
  scene.layers.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text.replaceAll('\u00A0', ' ')] : [])),
  );
const imagesOf = (scene: Scene): readonly string[] =>
  marksOf(scene, 'picture').flatMap((mark) => (mark.kind === 'image' ? [mark.key] : []));

/** The measures with something else in the record. */
function recorded(record: RecordMeasure | undefined): Scene {
  const { plan, measures, findings } = worked(photographedPlan);
  const rest = Object.fromEntries(Object.entries(measures).filter(([name]) => name !== 'record'));
  return compose(plan, { ...(rest as typeof measures), ...(record ? { record } : {}) }, findings, 'record');
}

describe('the record of a painting', () => {
  it('has plan, photograph and what is off side by side, as large as each other, and all sittings in a row', () => {
    expect(imagesOf(latest)).toEqual([
      'record:photograph',
      'record:values',
      'record:colours',
      'record:strip:0',
      'record:strip:1',
    ]);
    const sizes = ['record:photograph', 'record:values', 'record:colours'].map((key) => {
      const mark = markOf(latest, key);
      return mark?.kind === 'image' ? [mark.box.width, mark.box.height] : [];
    });
    expect(new Set(sizes.map(String)).size).toBe(1);
    const [width = 0, height = 0] = sizes[0] ?? [];
    expect(width / height).toBeCloseTo(4 / 3, 2);
    expect(textsOf(latest)).toEqual(
      expect.arrayContaining(['Plan', 'Photograph', 'Values off', 'Colours off', 'no photograph']),
    );
  });

  it('keeps everything on its board', () => {
    for (const scene of [latest, first]) {
      const { x, y, width, height } = scene.picture;
      for (const mark of marksOf(scene, 'picture')) {
        if (mark.kind !== 'image') continue;
        expect(mark.box.x).toBeGreaterThanOrEqual(x);
        expect(mark.box.y).toBeGreaterThanOrEqual(y);
        expect(mark.box.x + mark.box.width).toBeLessThanOrEqual(x + width);
        expect(mark.box.y + mark.box.height).toBeLessThanOrEqual(y + height);
      }
    }
  });

  it('shows the latest photograph unless another is asked for, and says what can be chosen', () => {
    expect(latest.record).toEqual({
      sittings: [
        { sitting: 0, subject: 'sitting:Lay in', name: 'Lay in' },
        { sitting: 1, subject: 'sitting:Colour', name: 'Colour' },
      ],
      chosen: 1,
    });
    expect(first.record?.chosen).toBe(0);
    // One without a photograph can't be shown.
    expect(sceneAt(2).record?.chosen).toBe(1);
    expect(sceneAt(99).record?.chosen).toBe(1);
    expect(compose(read.plan, read.measures, [], 'notan').record).toBeUndefined();
    expect(markOf(latest, 'record:strip:1:chosen:edge')).toBeDefined();
    expect(markOf(latest, 'record:strip:0:chosen:edge')).toBeUndefined();
  });

  it('tells of each object how far it is from the plan and what became of it, the worst first', () => {
    const rows = marksOf(latest, 'captions').flatMap((mark) =>
      mark.kind === 'text' && /^record:objects:object:[^:]+:words$/.test(mark.key)
        ? [`${mark.subject}: ${mark.text}`]
        : [],
    );
    expect(rows[0]).toMatch(/^object:fruit: 1\.\d steps too dark, its colour \d+ off, and went away$/);
    expect(rows[1]).toMatch(/^object:jug: 0\.4 steps too light, and came nearer$/);
    expect(textsOf(latest)).toContain('One more is as planned');
    expect(latest.description).toMatch(
      /Objects, the farthest from the plan first: fruit, 1\.\d steps too dark/,
    );
  });

  it('leads from every picture and row to the words that it stands for', () => {
    expect(markOf(latest, 'record:photograph')?.subject).toBe('sitting:Colour');
    expect(markOf(latest, 'record:strip:0')?.subject).toBe('sitting:Lay in');
    expect(markOf(latest, 'record:plan:object:jug')?.subject).toBe('object:jug');
    expect(markOf(latest, 'record:object:jug:outline')?.subject).toBe('object:jug');
    const known = new Set(Object.keys(latest.subjects));
    const named = latest.layers.flatMap(({ marks }) => marks.flatMap(({ subject }) => subject ?? []));
    expect(named.filter((subject) => !known.has(subject))).toEqual([]);
  });

  it('draws the shares over the sittings beside what is planned', () => {
    const dark = markOf(latest, 'record:shares:values:dark:bed');
    expect(dark?.tip?.replaceAll('\u00A0', ' ')).toMatch(
      /^Dark: \d+ % after 1 Lay in and \d+ % after 2 Colour; planned 30 %\.$/,
    );
    const places = [0, 1].map((index) => markOf(latest, `record:shares:values:dark:at:${index}`));
    expect(places.every((mark) => mark?.kind === 'path')).toBe(true);
    expect(places.map((mark) => (mark?.kind === 'path' ? mark.fill : ''))).toEqual(['sheet', 'ink']);
  });

  it('has keys that are told apart', () => {
    for (const scene of [latest, first, sceneAt(2)]) {
      const keys = scene.layers.flatMap(({ marks }) => marks.map(({ key }) => key));
      expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
    }
  });

  it('says how to begin where no photograph is named', () => {
    const scene = sceneOf('canvas 4 x 3 cm\n', 'record');
    expect(scene.record).toBeUndefined();
    expect(textsOf(scene).join(' ')).toContain('No photograph yet.');
    expect(scene.description).toContain('photo "record/01.jpg"');
    expect(textsOf(recorded(undefined)).join(' ')).toContain('No photograph yet.');
  });

  it('says what is on its way and why something can’t be read, in place of the picture', () => {
    const scene = recorded({
      sittings: [
        { sitting: 0, is: 'on its way' },
        { sitting: 1, is: 'unreadable', reason: 'There is no such file.' },
      ],
    });
    expect(scene.record?.chosen).toBe(1);
    expect(imagesOf(scene)).toEqual([]);
    const said = textsOf(scene);
    expect(said).toEqual(expect.arrayContaining(['on its way', 'can’t be read', 'There is no such file.']));
    expect(scene.description).toContain('There is no such file.');
    expect(scene.description).toContain('1\u00A0Lay in, Mon 11 Jan 2027, on its way');
  });

  it('is read in a narrow page, with its pictures below each other', () => {
    const narrow = compose(read.plan, read.measures, read.findings, 'record', { isNarrow: true });
    const lefts = ['record:photograph', 'record:values', 'record:colours'].map((key) => {
      const mark = markOf(narrow, key);
      return mark?.kind === 'image' ? mark.box.x : NaN;
    });
    expect(new Set(lefts).size).toBe(1);
  });

  it('gives the page the photographs with their corners when it is asked what can be changed', () => {
    const scene = compose(read.plan, read.measures, read.findings, 'record', { handling: true });
    expect(scene.handling).toBeUndefined();
    expect(scene.photographs?.map(({ sitting, name }) => [sitting, name])).toEqual([
      [0, 'Lay in'],
      [1, 'Colour'],
    ]);
    expect(latest.photographs).toBeUndefined();
  });

  it('writes its pictures out once and the same ones again as long as they are the same', () => {
    const again = sceneAt();
    for (const key of ['record:photograph', 'record:values', 'record:strip:0']) {
      const [one, other] = [latest, again].map((scene) => markOf(scene, key));
      expect(one?.kind === 'image' && other?.kind === 'image' && one.href === other.href).toBe(true);
    }
    expect(JSON.stringify(latest).length).toBeLessThan(400_000);
  });

  it('is printed with words that can be found and its pictures in it', async () => {
    const { page } = pageOf(latest, read.plan, 'A4');
    const { pdf, missing } = await pdfOf(page, { theme: 'light', fonts: { ...roboto, more: [] } });
    expect(missing).toEqual([]);
    const { text } = await readPdf(pdf);
    for (const words of ['Values off', 'Objects', 'fruit', 'came nearer']) expect(text).toContain(words);
    expect(Buffer.from(pdf).toString('latin1')).toContain('/DCTDecode');
    expect(renderToText(latest, { theme: 'dark' }).match(/<image /g)).toHaveLength(5);
  });
});
