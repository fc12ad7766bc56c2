import { expect, it } from 'vitest';
import type { Scene } from '../drawing/scene.js';
import { changedScene } from '../drawing/scene-change.js';
import { doorwayPlan, sceneOf } from '../drawing/test-plans.js';
import { GivenScenes } from './given-scenes.js';
import type { ChangedScene, WholeScene } from './protocol.js';

const first = sceneOf(doorwayPlan, 'drawing');
const second = sceneOf(doorwayPlan.replace('circle 2', 'circle 3'), 'drawing');

/** The drawing that a client comes to, which had `before`. */
function come(answer: WholeScene | ChangedScene, before: Scene): Scene | undefined {
  return 'change' in answer ? changedScene(before, answer.change) : undefined;
}

it('tells a client that asks for no changes all of a drawing, under no number', () => {
  const given = new GivenScenes();
  expect(given.answer({ version: 1, scene: first }, undefined)).toEqual({ version: 1, scene: first });
});

it('tells all of the first drawing, and of the next what is another in it', () => {
  const given = new GivenScenes();
  const { id = 0, ...whole } = given.answer({ version: 1, scene: first }, 0);
  expect(whole).toEqual({ version: 1, scene: first });
  const next = given.answer({ version: 2, scene: second }, id);
  expect(next).toMatchObject({ version: 2, id: id + 1 });
  expect(come(next, first)).toEqual(second);
  expect(come(given.answer({ version: 3, scene: first }, next.id), second)).toEqual(first);
});

it('tells all of a drawing in another view, and to a client whose drawing it does not know', () => {
  const given = new GivenScenes();
  const { id } = given.answer({ version: 1, scene: first }, 0);
  const notan = sceneOf(doorwayPlan, 'notan');
  expect(given.answer({ version: 1, scene: notan }, id)).toMatchObject({ scene: notan });
  expect(given.answer({ version: 1, scene: first }, 99)).toMatchObject({ scene: first });
});

it('tells what is another in a drawing that is only tried, and goes on from the one that the client has', () => {
  const given = new GivenScenes();
  const { id } = given.answer({ version: 1, scene: first }, 0);
  const tried = given.tried({ version: 1, scene: second }, id);
  expect('change' in tried ? changedScene(first, tried.change) : undefined).toEqual(second);
  expect(given.tried({ version: 1, scene: second }, undefined)).toEqual({ version: 1, scene: second });
  expect(come(given.answer({ version: 2, scene: second }, id), first)).toEqual(second);
});

it('keeps the drawings of eight previews, of which each has one, and forgets what was given longest ago', () => {
  const given = new GivenScenes();
  const ids = Array.from({ length: 8 }, () => given.answer({ version: 1, scene: first }, 0).id);
  const next = ids.map((id) => given.answer({ version: 2, scene: second }, id));
  expect(next.every((answer) => 'change' in answer)).toBe(true);
  given.answer({ version: 1, scene: first }, 0);
  expect(given.answer({ version: 3, scene: first }, next[0]?.id)).toHaveProperty('scene');
  expect(given.answer({ version: 3, scene: first }, next[7]?.id)).toHaveProperty('change');
});
