import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Photographs } from '../../server/measure/photograph/photographs.js';
import { type Deviation, photographOf, photographsAt } from '../../server/measure/photograph/test-support.js';
import type { FileAnswer, Plan } from '../../server/plan/plan.js';
import { pageToText, renderToText } from '../../server/drawing/headless.js';
import { planSheet } from '../../server/drawing/plan-sheet/sheet.js';
import { type View, views } from '../../server/drawing/scene.js';
import { photographedScene } from '../../server/drawing/record/test-record.js';
import { sceneOf, worked } from '../../server/drawing/test-plans.js';

/**
 * The examples as they were drawn when somebody last looked at them. After a change that is meant to be seen,
 * run this file with UPDATE_GOLDEN=1, look at the drawings, and commit them with the change.
 */
const golden = new URL('./', import.meta.url);
const examples = new URL('../../examples/', import.meta.url);
const plans = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => name.slice(0, -'.mahl'.length));

/** One landscape and one tall poster in every view and as the plan sheet; the others as drawings. */
const IN_EVERY_VIEW: ReadonlySet<string> = new Set(['winter-barn', 'moth-night']);
/** A still life with few paints and a figure in many sittings, with what they are painted with and when. */
const AT_THE_EASEL: ReadonlySet<string> = new Set(['quinces', 'seamstress']);

/** The one of them that has photographs, which are drawn as they would be if it were painted so. */
const PHOTOGRAPHED = 'quinces';
const painted: Readonly<Record<string, readonly Deviation[]>> = {
  'record/quinces-02.jpg': [
    { object: 'pan', steps: 1 },
    { object: 'quinces', steps: -0.6 },
  ],
  'record/quinces-03.jpg': [
    { object: 'pan', steps: 0.3 },
    { object: 'quinces', steps: -1.1 },
    { object: 'leaves', colour: [45, 30, 20] },
  ],
};

const drawings = plans.flatMap((plan) => viewsOf(plan).map((view) => ({ plan, view })));

function viewsOf(plan: string): readonly (View | 'sheet')[] {
  if (IN_EVERY_VIEW.has(plan)) return [...views, 'sheet'];
  if (plan === PHOTOGRAPHED) return ['drawing', 'palette', 'sittings', 'record'];
  return AT_THE_EASEL.has(plan) ? ['drawing', 'palette', 'sittings'] : ['drawing'];
}

function readBeside(path: string): FileAnswer {
  const file = new URL(path, examples);
  return existsSync(file)
    ? { ok: true, text: readFileSync(file, 'utf8') }
    : { ok: false, reason: `${path} is not there.` };
}

function draw(plan: string, view: View | 'sheet'): string {
  const text = readFileSync(new URL(`${plan}.mahl`, examples), 'utf8');
  if (view === 'sheet') {
    const { plan: read, measures, findings } = worked(text, readBeside);
    return pageToText(planSheet(read, measures, findings), { theme: 'light' });
  }
  const scene =
    view === 'record' && plan === PHOTOGRAPHED
      ? photographedScene(text, {}, 'record', photographsOf)
      : sceneOf(text, view, readBeside);
  return withoutPixels(renderToText(scene, { theme: 'light' }));
}

function photographsOf(plan: Plan): Photographs {
  return photographsAt(
    Object.fromEntries(
      plan.sittings.flatMap(({ photo }, sitting) =>
        photo === undefined
          ? []
          : [[photo.file, photographOf(plan, sitting, { deviations: painted[photo.file] ?? [], noise: 1 })]],
      ),
    ),
  );
}

/** Pictures in pixels by a digest of them: which one it is can be compared, and what it shows is tried elsewhere. */
function withoutPixels(svg: string): string {
  return svg.replace(/href="data:([^;]+);base64,([^"]+)"/g, (_, type: string, pixels: string) => {
    const digest = createHash('sha256').update(pixels).digest('hex').slice(0, 16);
    return `href="data:${type};sha256,${digest}"`;
  });
}

describe('examples', () => {
  it.each(drawings)('$plan looks in the view $view as it did', ({ plan, view }) => {
    const file = new URL(`${plan}.${view}.svg`, golden);
    const svg = draw(plan, view);
    if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(file, svg);
    expect(svg).toBe(readFileSync(file, 'utf8'));
  });

  it('have no drawing left of a plan that is gone', () => {
    const kept = readdirSync(golden).filter((name) => name.endsWith('.svg'));
    expect(kept.sort()).toEqual(drawings.map(({ plan, view }) => `${plan}.${view}.svg`).sort());
  });
});
