import { describe, expect, it } from 'vitest';
import { comparedScenes } from '../../server/drawing/comparison/scenes.js';
import { comparedViews } from '../../server/drawing/scene.js';
import { doorwayPlan, worked } from '../../server/drawing/test-plans.js';
import { wallCard } from '../../server/drawing/wall/card.js';
import { comparePlans } from '../../server/findings/comparison/compare.js';
import { readFromPage, readInPage } from './messages.js';

const plan = worked(doorwayPlan);
const comparison = comparePlans(plan, worked(doorwayPlan.replace('(41, 12)', '(44, 14)')));

describe('what goes to a page with pictures side by side', () => {
  it.each(comparedViews)('is taken in the view %s', (view) => {
    const scenes = comparedScenes(comparison, view);
    const side = (scene: typeof scenes.later) => ({ name: 'a.mahl', scene, widthMillimetres: 800 });
    const message = {
      type: 'comparison',
      view,
      earlier: side(scenes.earlier),
      later: side(scenes.later),
      changes: [{ topic: 'objects', message: 'It is moved.', isPlaced: true }],
      remarks: [],
    };
    expect(readInPage(message)).toEqual(message);
    const card = { type: 'card', index: 3, card: wallCard(plan, view, 0), differs: 'in a word' };
    expect(readInPage(card)).toEqual(card);
  });

  it('is refused when it is not well formed, or has something besides', () => {
    expect(readInPage({ type: 'nothing', reason: 'why' })).toBeDefined();
    expect(readInPage({ type: 'nothing', reason: 'why', more: 1 })).toBeUndefined();
    expect(readInPage({ type: 'other' })).toBeUndefined();
    expect(readInPage(undefined)).toBeUndefined();
  });
});

describe('what comes from it', () => {
  it('asks for little, and is refused otherwise', () => {
    expect(readFromPage({ type: 'open', index: 2 })).toEqual({ type: 'open', index: 2 });
    expect(readFromPage({ type: 'open', index: -1 })).toBeUndefined();
    expect(readFromPage({ type: 'view', view: 'palette' })).toBeUndefined();
    expect(readFromPage({ type: 'open', index: 2, uri: 'file:///etc/passwd' })).toBeUndefined();
  });
});
