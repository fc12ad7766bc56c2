import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import * as v from 'valibot';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { session } from '../../tests/support/command-line.js';
import { planOf } from '../../tests/support/plan.js';
import { asPng, paintedCanvas } from '../../tests/support/taken-photographs.js';
import { cells } from './display.js';
import { recordSchema } from './schema/record.js';

const PLAN = `plan    "A stool by the stove"
canvas  40 x 30 cm
  ground  #8f8a86
focus   (27, 15)
budget  value dark 25%, middle 60%, light 15% within 5%
colour  plaster 5Y 5/2 dominant
colour  cherry 7.5R 3/8 complement
object  wall
  plane   background
  shape   rectangle (0, 0) to (40, 25)
  colour  plaster
object  floor
  plane   background
  shape   rectangle (0, 25) to (40, 30)
  value   4
object  stool, dominant
  shape   rectangle 15 x 18 at (27, 15)
  colour  cherry
  value   2
sitting "Block in" on 2027-03-01
  works   wall, floor, stool
  photo   "one.png"
sitting "Stool" on 2027-03-09
  works   stool
  photo   "two.png"
sitting "Look" on 2027-03-20
  photo   "three.png"
`;

const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-record-'));

/** Painted lighter than planned, then the wall darker; the third is not there. */
beforeAll(async () => {
  const plan = planOf(PLAN);
  const painted = { one: { stool: '#b8837f' }, two: { wall: '#5c594d', stool: '#7d3834' } };
  for (const [name, colours] of Object.entries(painted)) {
    const canvas = await paintedCanvas(plan, 240, (object) => (colours as Record<string, string>)[object]);
    writeFileSync(path.join(folder, `${name}.png`), asPng(canvas));
  }
  writeFileSync(path.join(folder, 'stool.mahl'), PLAN);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('mahlstick record', () => {
  it('tells in a painter’s words what photographs show', async () => {
    const { code, output, complaints } = await session(['record', 'stool.mahl'], '', folder);
    expect(output).toMatchInlineSnapshot(`
      "A stool by the stove

      1 Block in
        Mon 1 Mar 2027, one.png
        values from 5 to 7, mean 5.5, 4.9 in the whole plan
        draws the eye most at (22.1, 24.3) cm, 21.0 % of the diagonal from the focal
        point, which has 16.8 % of that contrast, in the plan 23.0 %
        It has no grey patch, so colours are as the camera balanced them.
        It does not say what colours it is in; sRGB is taken.

                       seen  whole plan  budget
        dark          0.0 %      22.5 %  25 % within 5 %  too little
        middle       83.3 %      60.8 %  60 % within 5 %  too much
        light        16.7 %      16.7 %  15 % within 5 %
        dominant    100.0 %      60.8 %  70 % within 5 %
        complement    0.0 %      22.5 %  20 % within 5 %

        object  step  planned               colour        planned
        wall       3        3  as planned   5Y 5.0/2.0    5Y 5.0/2.0     0.1 off
        floor      4        4  as planned   N 7.0/
        stool    3.4        2  1.4 lighter  5.3R 5.9/4.8  7.5R 3.0/8.0  29.2 off

      2 Stool
        Tue 9 Mar 2027, two.png
        values from 3.2 to 7, mean 4.2, 4.9 in the whole plan
        draws the eye most at (22.1, 24.4) cm, 21.1 % of the diagonal from the focal
        point, which has 15.2 % of that contrast, in the plan 23.0 %
        changed by 14 on average since “Block in”; most of all stool 26.6, wall 13.2
        and floor 0
        It has no grey patch, so colours are as the camera balanced them.
        It does not say what colours it is in; sRGB is taken.

                      seen  whole plan  budget
        dark        83.1 %      22.5 %  25 % within 5 %  too much
        middle       0.3 %      60.8 %  60 % within 5 %  too little
        light       16.7 %      16.7 %  15 % within 5 %
        dominant    77.5 %      60.8 %  70 % within 5 %
        complement  22.5 %      22.5 %  20 % within 5 %

        object  step  planned               colour        planned
        wall     2.4        3  0.6 darker   7.5Y 3.7/1.1  5Y 5.0/2.0    13.3 off
        floor      4        4  as planned   N 7.0/
        stool    2.1        2  0.1 lighter  7R 3.2/6.4    7.5R 3.0/8.0   3.8 off

        came nearer to the plan: stool
        went away from the plan: wall

      3 Look
        Sat 20 Mar 2027, three.png
        There is no such file.

      Progress
        object       sitting 1       sitting 2
        wall        0, 0.1 off  -0.6, 13.3 off
        floor                0               0
        stool   +1.4, 29.2 off   +0.1, 3.8 off

      What to look at
        warning: The photograph of “Look” on 20 March 2027 can’t be used. There is no
                 such file.
          Try: Name a JPEG, PNG or WebP that lies beside the plan, or take the line
               out.
        warning: After “Stool” the middle values cover 0.3 % of the canvas; the budget
                 is 60 % within 5 %, the plan has 60.8 %. Most of that is \`wall\`, 0.6
                 steps darker than planned: with it 60.6 % of the canvas has left
                 them. The darks miss theirs too.
          Try: Lighten \`wall\` by 0.6 steps: that brings the middle values to 60.8 %.
        hint: After “Stool” \`wall\` is farther from the plan than after “Block in”:
              13.3 off now, 0.1 then. It is now 0.6 steps darker than planned.
          Try: Nothing was planned for it in that sitting: look whether something was
               painted over its edge, or the light of the two photographs differs.

      Values are Munsell’s, from 0 black to 10 white; steps are those of the plan. A
      difference of colour is CIEDE2000: 1 can just be seen side by side, 5 at a
      glance. What is planned is what is to stand there after the sitting. A
      photograph is no measuring instrument: trust your eye before the canvas.
      "
    `);
    expect(Math.max(...output.split('\n').map(cells))).toBeLessThanOrEqual(80);
    expect([code, complaints]).toEqual([0, []]);
  });

  it('prints what its schema says', async () => {
    const { output } = await session(['record', '--json', 'stool.mahl'], '', folder);
    const document = v.parse(recordSchema, JSON.parse(output));
    const [first, second, third] = document.sittings;
    expect([first?.is, second?.is, third?.is]).toEqual(['measured', 'measured', 'unreadable']);
    if (second?.is !== 'measured') throw new Error('not measured');
    expect(second.objects.map(({ name, went }) => [name, went])).toEqual([
      ['wall', 'away'],
      ['floor', 'neither'],
      ['stool', 'nearer'],
    ]);
    expect(second.change?.since).toBe(1);
    expect(second.groups.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6);
  });

  it('draws the record', async () => {
    const { code } = await session(['record', 'stool.mahl', '-o', 'record.svg'], '', folder);
    expect(code).toBe(0);
    expect(readFileSync(path.join(folder, 'record.svg'), 'utf8')).toContain('image/jpeg;base64,');
  });

  it('refuses what does not go together', async () => {
    const refused = async (...words: readonly string[]) =>
      (await session(['record', 'stool.mahl', ...words], '', folder)).complaints;
    expect(await refused('--json', '-o', 'a.svg')).toEqual([
      '--json is printed and -o writes a drawing; give one of them.',
    ]);
    expect(await refused('--sitting', '1')).toEqual(['--sitting belongs to a drawing: give -o.']);
  });

  it('says so where no sitting names a photograph', async () => {
    const { output } = await session(['record', '-'], 'plan "Empty"\ncanvas 4 x 3 cm\nsitting "One"\n');
    expect(output).toBe('Empty\nNo sitting names a photograph.\n');
  });
});
