import { describe, expect, it } from 'vitest';
import type { EyePathMeasure } from '../../measure/eye-path/eye-path.js';
import { compose } from '../compose.js';
import type { Scene } from '../scene.js';
import { markOf, marksOf, sceneOf, worked } from '../test-plans.js';

const plan = `canvas 80 x 50 cm
focus (50, 20)
scale 5
object wall
  plane background
  shape rectangle (0, 0) to (80, 50)
  value 2
object hut, dominant
  shape rectangle (45, 15) to (55, 25)
  value 5
object cart, secondary
  shape rectangle (10, 35) to (18, 42)
  value 1
path cart, hut
lead lane from lower left corner to focus
lead rail from right edge at 40% to (70, 30)`;

function withPath(change: Partial<EyePathMeasure>): Scene {
  const { plan: read, measures, findings } = worked(plan);
  return compose(read, { ...measures, eyePath: { ...measures.eyePath, ...change } }, findings, 'path');
}

const legend = (scene: Scene, key: string) => scene.legend.find((entry) => entry.key === key)?.text;

describe('the path of the eye', () => {
  const scene = sceneOf(plan, 'path');

  it('names each lead, and says where it comes from and how it meets the focal point', () => {
    expect(markOf(scene, 'lead:lane:name')).toMatchObject({ text: 'lane', subject: 'lead:lane' });
    expect(legend(scene, 'lead:lane')).toBe('lane, from the lower left corner: runs into the focal point');
    expect(legend(scene, 'sides')).toBe(
      'leads come in over the edge: one from the right and one from the lower left corner',
    );
  });

  it('carries a lead that misses on to where it leaves the canvas, with the distance from the focal point', () => {
    // From (80, 20) through (70, 30) the line is x + y = 100; (50, 20) lies 30 / root 2 = 21.2 cm off, past (65, 35).
    expect(markOf(scene, 'lead:rail:on')).toMatchObject({ d: 'M70 30L50 50', stroke: { dash: 'dashed' } });
    expect(markOf(scene, 'lead:rail:miss')).toMatchObject({ d: 'M65 35L50 20' });
    expect(markOf(scene, 'lead:rail:miss:distance')).toMatchObject({ text: '21.2 cm' });
    expect(legend(scene, 'lead:rail')).toMatch(
      /^rail, from the right edge: passes the focal point by 21\.2 cm, 22 %/,
    );
    expect(markOf(scene, 'lead:lane:miss')).toBeUndefined();
  });

  it('tells the pull of its stops as a part of the focal point’s, or of the strongest one’s without it', () => {
    const { measures } = worked(plan);
    const [cart, hut] = measures.eyePath.stops.map(({ strength }) => strength);
    const focal = measures.emphasis.focal?.strength ?? NaN;
    const part = (strength: number | undefined, of: number | undefined) =>
      `${Math.round((100 * (strength ?? NaN)) / (of ?? NaN))} %`;
    expect(cart).not.toBe(hut);
    expect(legend(scene, 'stops')).toBe('stops of the path, with their pull as a part of the focal point’s');
    expect(legend(scene, 'stop:1')).toBe(`cart, ${part(cart, focal)}`);
    expect(legend(scene, 'stop:2')).toBe(`hut, ${part(hut, focal)}`);
    const without = sceneOf(plan.replace('focus (50, 20)\n', '').replaceAll('to focus', 'to hut'), 'path');
    expect(legend(without, 'stops')).toContain('the strongest one’s');
    expect(['stop:1', 'stop:2'].map((key) => legend(without, key))).toContain('hut, 100 %');
  });

  it('says where a lead goes on to that crosses what it aims at and is drawn to the edge', () => {
    const through = sceneOf(
      `${plan}\nlead wire from left edge at 90% to upper right corner\nlead beam from left edge at 40% to right edge at 40%`,
      'path',
    );
    expect(legend(through, 'lead:wire')).toBe(
      'wire, from the left edge: crosses what dominates at the focal point and goes on to the upper right corner',
    );
    expect(legend(through, 'lead:beam')).toBe(
      'beam, from the left edge: crosses the focal point and goes on to the right edge',
    );
  });

  it('numbers the stops, and joins them in their order', () => {
    expect(markOf(scene, 'stop:1')).toMatchObject({ subject: 'object:cart' });
    expect(markOf(scene, 'stop:2:number')).toMatchObject({ text: '2' });
    expect(markOf(scene, 'stop:1:way')).toBeDefined();
    expect(markOf(scene, 'stop:2:way')).toBeUndefined();
    expect(legend(scene, 'stop:2')).toBe('hut, 100 %');
  });

  it('points in at the edge where a lead comes in, on the mount and not on the picture', () => {
    const entry = marksOf(scene, 'names').find(({ key }) => key === 'lead:rail:entry');
    const xs =
      entry?.kind === 'path' ? [...entry.d.matchAll(/[ML]([\d.]+) /g)].map(([, x]) => Number(x)) : [];
    expect(xs).toHaveLength(3);
    expect(Math.min(...xs)).toBeGreaterThan(80);
  });

  it('shows a way out as an arrow along the border that ends at the edge, and tells what it runs between', () => {
    const exits = withPath({
      exits: [{ at: { x: 80, y: 12 }, side: 'right', areas: [0, -1], pull: 0.5, length: 20, heading: -30 }],
    });
    const arrow = markOf(exits, 'exit:1');
    expect(arrow).toMatchObject({ subject: 'object:wall' });
    expect(arrow?.kind === 'path' && arrow.d.startsWith('M80 12L')).toBe(true);
    // Four ems back from the edge, 30 degrees below the level.
    const back = 4 * exits.em;
    const [x, y] = [80 - back * Math.cos(Math.PI / 6), 12 + back * 0.5];
    const shaft = markOf(exits, 'exit:1:shaft');
    const [, fromX, fromY] = /^M([\d.]+) ([\d.]+)L/.exec(shaft?.kind === 'path' ? shaft.d : '') ?? [];
    expect(Number(fromX)).toBeCloseTo(x, 2);
    expect(Number(fromY)).toBeCloseTo(y, 2);
    expect(legend(exits, 'exit:1')).toBe('a way out at the right edge, between wall and the bare ground');
    expect(legend(scene, 'exit:1')).toBeUndefined();
  });

  it('is told to those who do not see it', () => {
    expect(scene.description).toContain('Lane, from the lower left corner: runs into the focal point.');
    expect(scene.description).toContain('Stops of the path');
  });
});
