import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { type DivisionSystem, format } from '../../grammar/index.js';
import { measureSchema } from '../../server/cli/schema/measure.js';
import { plate } from '../support/plate.js';
import { views } from '../../server/drawing/scene.js';
import { chapters } from '../../server/findings/finding.js';
import { measureAnchors } from '../../server/language/reference.js';
import { openPlan } from '../../server/language/test-support.js';
import { withShownPhotographs } from '../support/shown-photographs.js';
import { bodyOf, checkedPlan, documentsOf, partInAny } from './measured.js';
import {
  blocksOf,
  figuresTold,
  holdsFigure,
  measureFolder,
  pageFile,
  planText,
  readPage,
  sectionsOf,
  withBodies,
} from './page.js';

/**
 * The page that tells what is measured, `server/measure/README.md`: its prose is written by hand, its plans, figures
 * and drawings are made. After a change that is meant to be seen, run this file with UPDATE_REFERENCE=1, look at the
 * page and its drawings, and commit them.
 */
const isWriting = Boolean(process.env['UPDATE_REFERENCE']);
const drawings = path.join(measureFolder, 'drawings');

if (isWriting) writeFileSync(pageFile, withBodies(readPage(), bodyOf));
const page = readPage();
const sections = sectionsOf(page);
const headings = [...page.matchAll(/^##+ (.+)$/gmu)].map(([, heading = '']) => heading);
const divisionSystems = [
  'golden',
  'thirds',
  'two to three',
  'quarters',
  'rabatment',
  'diagonals',
  'armature',
  'root 2',
  'root 3',
  'root 4',
  'root 5',
  'own',
] as const satisfies readonly DivisionSystem[];
const plans = readdirSync(path.join(measureFolder, 'plans')).map((file) => file.replace(/\.mahl$/u, ''));

function anchor(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');
}

describe('the reference of measures', () => {
  it.each(blocksOf(page).map((block) => ({ ...block, name: `${block.plan} ${block.of}` })))(
    'tells of $name what is measured now',
    (block) => {
      expect(block.body).toBe(bodyOf(block));
    },
  );

  it('shows every plan once, and none that is not there', () => {
    const shown = blocksOf(page).flatMap(({ language, plan }) => (language === 'mahl' ? [plan] : []));
    expect(shown.toSorted()).toEqual(plans.toSorted());
  });

  it.each(plans)('has the plan %s in the house style, with a title', (name) => {
    expect(format(planText(name))).toBe(planText(name));
    expect(checkedPlan(name).plan.title?.value).toBeTruthy();
  });

  it('lists its sections in their order', () => {
    const list = page.slice(0, page.indexOf('\n## '));
    const links = [...list.matchAll(/\]\(#([^)]+)\)/gu)].map(([, link]) => link);
    expect(links).toEqual(headings.map(anchor));
    expect(new Set(links).size).toBe(links.length);
  });

  it('has a section for what every rule of a chapter is measured by', () => {
    const unmeasured = ['concept', 'cautions'];
    const measured = chapters.filter((chapter) => !unmeasured.includes(chapter));
    expect(headings).toEqual(expect.arrayContaining(measured.map(capitalised)));
  });

  it('has a place for every hover that points to it', () => {
    const anchors = headings.map(anchor);
    expect(Object.values(measureAnchors).filter((wanted) => !anchors.includes(wanted))).toEqual([]);
  });

  it('shows every division of the canvas and every view', () => {
    const texts = plans.map(planText).join('\n');
    expect(divisionSystems.filter((system) => !texts.includes(`divide  ${system}\n`))).toEqual([]);
    expect(views.filter((view) => !page.includes(`\`${view}\``))).toEqual([]);
  });

  it('names everything that `measure --json` tells', () => {
    const about = ['schema', 'version', 'file', 'errors', 'title'];
    const told = sections.flatMap(({ jsonPaths }) => jsonPaths.map((name) => name.split('.')[0]));
    const parts = Object.keys(measureSchema.pipe[0].entries).filter((part) => !about.includes(part));
    expect(parts.filter((part) => !told.includes(part))).toEqual([]);
  });
});

describe.each(sections.map((section) => ({ section, name: section.heading })))('$name', ({ section }) => {
  const own = section.blocks.filter(({ language }) => language === 'mahl').map(({ plan }) => plan);

  it('has a plan, its drawing, a formula, a source, and says where it is told', () => {
    expect(own.length).toBeGreaterThan(0);
    expect(section.drawings.map(({ plan }) => plan)).toEqual(own);
    for (const line of ['- Formula: ', '- Source: ', '- Shown: ']) {
      expect(section.text).toContain(`\n${line}`);
    }
    expect(section.text).toMatch(/\n- In `[a-z]+ --json`: `/u);
  });

  it('tells no figure of its plan that is not measured', () => {
    const shown = section.blocks.map(({ body }) => body).join('\n');
    expect(figuresTold(section.text).filter((figure) => !holdsFigure(shown, figure))).toEqual([]);
  });

  it('names what is in the JSON', () => {
    const documents = own.flatMap(documentsOf);
    const missing = section.jsonPaths.filter((name) => partInAny(documents, name) === undefined);
    expect(missing).toEqual([]);
  });

  it('names hovers that its plan has', () => {
    for (const word of section.hovers) {
      const text =
        own.map(planText).find((candidate) => new RegExp(`^ *${word}\\b`, 'mu').test(candidate)) ?? '';
      const marked = text.replace(new RegExp(`^( *)(${word})\\b`, 'mu'), '$1|$2');
      const { service, uri, position } = openPlan(marked);
      expect(JSON.stringify(service.hover(uri, position)), word).toContain('server/measure/README.md#');
    }
  });
});

describe('the drawings of measures', () => {
  const all = sections.flatMap((section) => section.drawings);

  it.each(all)('$plan looks as it did', async ({ plan: name, view, marked }) => {
    const file = path.join(drawings, `${name}.svg`);
    const { plan, measures, findings } = checkedPlan(name);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(views).toContain(view);
    const svg = plate(plan, await withShownPhotographs(measures), marked ? findings : [], view);
    if (isWriting) {
      mkdirSync(drawings, { recursive: true });
      writeFileSync(file, svg);
    }
    expect(existsSync(file) ? readFileSync(file, 'utf8') : '').toBe(svg);
  });

  it('have none left of a plan that is gone', () => {
    const wanted = all.map(({ plan }) => `${plan}.svg`);
    const left = readdirSync(drawings).filter((name) => !wanted.includes(name));
    if (isWriting) left.forEach((name) => rmSync(path.join(drawings, name)));
    else expect(left).toEqual([]);
  });
});

function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
