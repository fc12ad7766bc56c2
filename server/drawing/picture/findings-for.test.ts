import { describe, expect, it } from 'vitest';
import { rules } from '../../findings/rules.js';
import type { Finding } from '../../findings/finding.js';
import { compose } from '../compose.js';
import { type Scene, type View, views } from '../scene.js';
import { markOf, worked } from '../test-plans.js';

const location = { line: 0, start: 0, end: 6 };

function finding(rule: string, more: Partial<Finding> = {}): Finding {
  return {
    rule,
    severity: 'hint',
    message: `${rule}.`,
    location,
    related: [],
    objects: [],
    at: { x: 20, y: 20 },
    ...more,
  };
}

function sceneWith(findings: readonly Finding[], view: View): Scene {
  const { plan, measures } = worked('canvas 80 x 60 cm');
  return compose(plan, measures, findings, view);
}

function shows(view: View, rule: string): boolean {
  return markOf(sceneWith([finding(rule)], view), `finding:${rule}`) !== undefined;
}

describe('the findings that a view shows', () => {
  it.each([
    ['no focus', ['drawing', 'emphasis']],
    ['lead past focus', ['drawing', 'path']],
    ['spots', ['drawing', 'notan', 'values']],
    ['merged neighbours', ['drawing', 'notan', 'values']],
    ['complement off opposite', ['drawing', 'colour']],
    ['even count', ['drawing']],
  ])('%s', (rule, wanted) => {
    expect(views.filter((view) => shows(view, rule))).toEqual(wanted);
  });

  it('are all of them in the drawing, but for those of the budgets, which their bars show, and cautions', () => {
    const missing = rules.filter(({ id }) => !shows('drawing', id)).map(({ id, chapter }) => [id, chapter]);
    expect(missing.filter(([, chapter]) => chapter !== 'cautions').map(([id]) => id)).toEqual([
      'value budget',
      'colour budget',
      'usual colour shares',
    ]);
    expect(missing).toHaveLength(3 + rules.filter(({ isCaution }) => isCaution).length);
  });

  it('are marked at their place in the picture', () => {
    const mark = markOf(
      sceneWith([finding('spots', { at: { x: 60, y: 30 } })], 'values'),
      'finding:spots:number',
    );
    expect(mark?.kind === 'text' && Math.hypot(mark.x - 60, mark.y - 30) < 5).toBe(true);
  });

  it('bear numbers that count up without a gap, so that each number in the list is found in the picture', () => {
    const nowhere: Finding = {
      rule: 'leads from one side',
      severity: 'hint',
      message: 'All leads.',
      location,
      related: [],
      objects: [],
    };
    const scene = sceneWith([finding('spots'), nowhere, finding('like sizes')], 'drawing');
    const number = (key: string) => {
      const mark = markOf(scene, `finding:${key}:number`);
      return mark?.kind === 'text' ? mark.text : undefined;
    };
    expect(['spots', 'leads from one side', 'like sizes'].map(number)).toEqual(['1', undefined, '2']);
    expect(['spots:listed', 'leads from one side:listed', 'like sizes:listed'].map(number)).toEqual([
      '1',
      undefined,
      '2',
    ]);
    expect(markOf(scene, 'finding:leads from one side:listed')).toBeDefined();
  });
});
