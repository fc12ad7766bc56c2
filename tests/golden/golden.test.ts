import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FileAnswer } from '../../server/plan/plan.js';
import { pageToText, renderToText } from '../../server/drawing/headless.js';
import { planSheet } from '../../server/drawing/plan-sheet/sheet.js';
import { type View, views } from '../../server/drawing/scene.js';
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

const drawings = plans.flatMap((plan) => viewsOf(plan).map((view) => ({ plan, view })));

function viewsOf(plan: string): readonly (View | 'sheet')[] {
  if (IN_EVERY_VIEW.has(plan)) return [...views, 'sheet'];
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
  return renderToText(sceneOf(text, view, readBeside), { theme: 'light' });
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
