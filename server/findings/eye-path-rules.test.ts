import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checked, mended, type Checked } from '../../tests/support/plan.js';
import { standing } from './check.js';
import type { Finding } from './finding.js';

const SCENE = `canvas  40 x 30 cm
focus   (25, 18)
object  wall
  plane   background
  shape   rectangle (0, 0) to (40, 30)
  value   2
object  bowl, dominant
  shape   circle 6 at focus
  value   5
`;

function of(rule: string, { findings }: Checked): readonly Finding[] {
  return standing(findings).filter((finding) => finding.rule === rule);
}

function first(rule: string, text: string): Finding {
  const [finding] = of(rule, checked(text));
  if (!finding) throw new Error(`no ${rule}`);
  return finding;
}

function isMended(rule: string, text: string): boolean {
  const { fix } = first(rule, text);
  return fix !== undefined && of(rule, checked(mended(text, fix))).length === 0;
}

describe('lead past focus', () => {
  it('tells an edge that points beside the focal point by how much it has to turn', () => {
    const shelf = 'object  shelf\n  shape   rectangle (0, 26) to (12, 27)\n  value   3\n';
    const text = `${SCENE}${shelf}lead    edge along top edge of shelf to focus`;
    const { message, advice, objects, severity } = first('lead past focus', text);
    expect(severity).toBe('warning');
    expect(message).toBe(
      '`edge` is to lead to the focal point, but the edge of `shelf` that carries it passes 8 cm below it; within 2.5 cm (5 % of the diagonal) it arrives.',
    );
    // From (12, 26) to (25, 18): atan(8 / 13).
    expect(advice).toContain('Turn that edge of `shelf` by 32° anticlockwise where the lead leaves it');
    expect(objects).toEqual([2]);
    expect(of('lead past focus', checked(text.replace(' to focus', ' through (20, 22) to focus')))).toEqual(
      [],
    );
  });

  it('takes a lead to a secondary object for one that arrives', () => {
    const jug = 'object  jug, secondary\n  shape   rectangle (4, 4) to (8, 10)\n  value   4\n';
    expect(of('lead past focus', checked(`${SCENE}${jug}lead    sill from left edge to (6, 7)`))).toEqual([]);
    expect(of('lead past focus', checked(`${SCENE}lead    sill from left edge to (6, 7)`))).toHaveLength(1);
  });

  it('tells the three that pass farthest, and how many more there are', () => {
    const lines = [1, 2, 4, 6, 8, 10].map((y) => `lead    wire${y} from (0, ${y}) to (5, ${y})`);
    const found = of('lead past focus', checked(SCENE + lines.join('\n')));
    expect(found.map(({ message }) => message.slice(0, 7))).toEqual(['`wire1`', '`wire2`', '`wire4`']);
    expect(found[2]?.message).toContain(' So it is with three more: `wire6`, `wire8` and `wire10`.');
    expect(found[2]?.leads).toEqual([2, 3, 4, 5]);
  });
});

describe('lead into corner', () => {
  it('tells a lead that passes the focal point and runs out at a corner', () => {
    const text = `${SCENE}lead    beam from (0, 0.5) to (20, 0.5)`;
    expect(first('lead into corner', text).message).toBe(
      '`beam` passes the focal point and runs out at the upper right corner, 0.5 cm from it; more than 1.5 cm (3 % of the diagonal) from the corner is clear of it.',
    );
  });

  it('leaves a lead alone that comes in at a corner and bends, or that arrives and would run out at one', () => {
    const bent = `${SCENE}lead    beam from upper left corner through (10, 2) to focus`;
    const arriving = `${SCENE}lead    beam from left edge at 2% to focus`;
    expect(of('lead into corner', checked(bent))).toEqual([]);
    expect(of('lead into corner', checked(arriving))).toEqual([]);
  });

  it('tells one that runs out right at the corner so', () => {
    const { message } = first('lead into corner', `${SCENE}lead    beam from (0, 0) to (20, 0)`);
    expect(message).toBe(
      '`beam` passes the focal point and runs out right at the upper right corner; more than 1.5 cm (3 % of the diagonal) from the corner is clear of it.',
    );
  });

  it('ends one at the focal point that ends in a corner, where no turn helps', () => {
    const text = `${SCENE}lead    beam from lower left corner to upper right corner`;
    expect(first('lead into corner', text).advice).toBe('Let it end at the focal point: write `to focus`.');
    expect(isMended('lead into corner', text)).toBe(true);
  });

  it('ends it anywhere inside where the focal point lies on the way from corner to corner', () => {
    const text = `${SCENE.replace('(25, 18)', '(24, 18)')}lead    beam from upper left corner to lower right corner`;
    const { advice, fix } = first('lead into corner', text);
    expect(advice).toBe('Let it end inside the picture, where something holds the eye.');
    expect(fix).toBeUndefined();
  });

  it('moves a lead from corner to corner well clear of both', () => {
    const text = `${SCENE.replace('(25, 18)', '(24, 18)')}lead    beam from upper left corner to focus`;
    expect(first('lead into corner', text).message).toContain(
      'straight from the upper left corner to the lower right one',
    );
    expect(isMended('lead into corner', text)).toBe(true);
  });
});

describe('leads from one side', () => {
  const FOUR = `${SCENE}lead    a from left edge at 20% to focus
lead    b from left edge at 90% through (12, 24) to focus
lead    c from lower left corner through (20, 28) to focus`;

  it('brings one of them in from elsewhere', () => {
    const { message, fix } = first('leads from one side', FOUR);
    expect(message).toBe('All three leads come in from the left, and nothing leads in from elsewhere.');
    expect(fix?.edits).toHaveLength(1);
    expect(isMended('leads from one side', FOUR)).toBe(true);
  });

  it('is content with one from another side, or from an object on the other side', () => {
    expect(of('leads from one side', checked(FOUR.replace('left edge at 20%', 'top edge at 20%')))).toEqual(
      [],
    );
    const lamp = 'object  lamp\n  shape   circle 2 at (36, 10)\n  value   4\n';
    const text = FOUR.replace('lead    a from left edge at 20%', `${lamp}lead    a from lamp`);
    expect(of('leads from one side', checked(text))).toEqual([]);
  });

  it('asks for a lead from elsewhere when objects carry all of them', () => {
    const shelf = 'object  shelf\n  shape   rectangle (0, 12) to (15, 14)\n  value   3\n';
    const text = `${SCENE}${shelf}lead    a along top edge of shelf to focus\nlead    b along bottom edge of shelf to focus`;
    const { advice, fix } = first('leads from one side', text);
    expect(fix).toBeUndefined();
    expect(advice).toContain('Add a lead from the right, such as `from right edge at 40% to focus`');
  });

  it.each([
    ['lamp', 'lamp'],
    ['(30.25, 12)', '(30.3, 12)'],
  ])('aims it at %s, as the first does, in a picture without a focal point', (aim, words) => {
    const text = `canvas  40 x 30 cm
object  lamp
  shape   circle 2 at (30, 10)
  value   4
object  shelf
  shape   rectangle (0, 12) to (15, 14)
  value   3
lead    a along top edge of shelf to ${aim}
lead    b along bottom edge of shelf to ${aim}`;
    expect(first('leads from one side', text).advice).toBe(
      `Add a lead from the right, such as \`from right edge at 40% to ${words}\`.`,
    );
  });
});

describe('leads too close', () => {
  const TWO = `${SCENE}lead    a from left edge at 60% to focus
lead    b from bottom edge at 5% through (10, 20) to focus`;

  it('turns the one bend that parts them', () => {
    // a comes from 0° (18 cm is 60 % of the height), b from (10, 20) by atan(2 / 15) = 7.6° more.
    const { message, fix } = first('leads too close', TWO);
    expect(message).toBe(
      '`a` and `b` arrive at the focal point 7.6° apart, so they read as one line; over 10° apart they read as two.',
    );
    expect(fix?.title).toBe('Turn `b` by 3°');
    expect(isMended('leads too close', TWO)).toBe(true);
  });

  it('says by how much, and which edges, when objects carry both', () => {
    const beams = `object  beam\n  shape   rectangle (0, 17) to (15, 18)\n  value   3\nobject  plank\n  shape   rectangle (0, 19) to (15, 20)\n  value   4\n`;
    const text = `${SCENE}${beams}lead    a along bottom edge of beam to focus\nlead    b along top edge of plank to focus`;
    const { advice, fix, objects } = first('leads too close', text);
    expect(fix).toBeUndefined();
    expect(objects).toEqual([2, 3]);
    expect(advice).toMatch(
      /^Turn the edge of `beam` or that of `plank`, which carry them, by more than [\d.]+°, away from the other\.$/,
    );
  });

  it('names an edge once that carries both, and no angle where there is none', () => {
    const post = `object  post\n  shape   rectangle (10, 20) to (12, 28)\n  value   3\n`;
    const text = `${SCENE}${post}lead    a along top edge of post to focus\nlead    b along top edge of post from (5, 20) to focus`;
    const { message, advice } = first('leads too close', text);
    expect(message).toBe(
      '`a` and `b` arrive at the focal point from one direction, so they read as one line; over 10° apart they read as two.',
    );
    expect(advice).toBe('`post` carries both: keep one of the two, or let one come from elsewhere.');
  });

  it('takes its limit from the plan', () => {
    expect(of('leads too close', checked(`${TWO}\nrule    leads too close limit 5 degrees`))).toEqual([]);
  });
});

describe('path order', () => {
  const STOPS = `${SCENE}object  cup
  shape   rectangle (3, 3) to (7, 9)
  value   3
object  jar
  shape   rectangle (3, 20) to (9, 28)
  value   4
`;

  it('exchanges two stops so that the path rises', () => {
    const text = `${STOPS}path    jar, cup, bowl`;
    const { message, advice, fix } = first('path order', text);
    expect(message).toContain('`jar` draws the eye more than `cup`, to which it leads and which draws it ');
    expect(advice).toBe('Exchange `jar` and `cup`, and the path rises.');
    expect(mended(text, fix ?? { edits: [] })).toContain('path    cup, jar, bowl');
    expect(isMended('path order', text)).toBe(true);
  });

  it('lets the eye wander off after the focal point over weaker stops', () => {
    expect(of('path order', checked(`${STOPS}path    cup, bowl, jar`))).toEqual([]);
  });

  it('tells a path that never comes to the focal point', () => {
    const { message, advice } = first('path order', `${STOPS}path    cup, jar`);
    expect(message).toBe('The path ends at `jar` and none of its stops is at the focal point.');
    expect(advice).toBe('Let it go on to `bowl`.');
    expect(isMended('path order', `${STOPS}path    cup, jar`)).toBe(true);
  });

  it('goes on to the dominant object just at 5 % of the diagonal, in spite of rounding, and not beyond', () => {
    const beside = (left: number): string =>
      `${STOPS.replace('(25, 18)', '(20.3, 18)').replace('circle 6 at focus', `rectangle (${left}, 14) to (32, 22)`)}path    cup, jar`;
    // Where the areas are cut, 22.8 lies a little to the right of it.
    expect(first('path order', beside(22.8)).advice).toBe('Let it go on to `bowl`.');
    expect(isMended('path order', beside(22.8))).toBe(true);
    expect(of('dominant off focus', checked(beside(22.8)))).toEqual([]);
    expect(first('path order', beside(22.9)).advice).not.toBe('Let it go on to `bowl`.');
  });

  it('goes on to what is seen at the focal point, where nothing there is dominant', () => {
    const minor = STOPS.replace('bowl, dominant', 'bowl');
    expect(first('path order', `${minor}path    cup, jar`).advice).toBe(
      'Let it go on to `bowl`, which is seen there, or bring `jar` there.',
    );
    const bare = minor.replace('  shape   circle 6 at focus', '  shape   circle 6 at (36, 4)');
    expect(first('path order', `${bare}path    cup, jar`).advice).toBe(
      'Set an object there and let it go on to that, or bring `jar` there.',
    );
  });

  it('tells a stop of which nothing is seen', () => {
    const text = `${STOPS}object  sheet\n  shape   rectangle (2, 2) to (8, 10)\n  value   3\npath    cup, jar, bowl`;
    expect(first('path order', text).message).toBe('The path stops at `cup`, of which nothing is seen.');
    expect(isMended('path order', text)).toBe(true);
  });

  it('tells what is much too weak by how many times, and what has no contrast by what it lacks', () => {
    const faint = (wall: string, value: string): Finding =>
      first(
        'path order',
        `${SCENE.replace('value   2', wall).replace('value   5', value)}object  jar\n  shape   rectangle (3, 10) to (9, 28)\n  value   5\npath    jar, bowl`,
      );
    const weak = faint('value   2', 'value   2.2');
    expect(weak.message).toMatch(/draws it \d+ % as strongly; from 90 % on is let pass\.$/);
    expect(weak.advice).toMatch(
      /^Give `bowl` more contrast or harder edges: .* the eye [\d.]+ times as strongly\.$/,
    );
    const none = faint('value   2', 'value   2');
    expect(none.message).toContain('which is at the focal point and draws it not at all; from 90 %');
    expect(none.advice).toBe('Set `bowl` off from what is round it, in value or in colour.');
  });

  it('says nothing of a plan without values and colours', () => {
    const bare = STOPS.replace(/ {2}value .*\n/g, '');
    expect(of('path order', checked(`${bare}path    jar, cup, bowl`))).toEqual([]);
  });
});

describe('way out', () => {
  const GATE = `canvas  60 x 45 cm
focus   (36, 28)
object  lane
  plane   background
  shape   rectangle (0, 0) to (60, 45)
  value   2
object  wall
  plane   background
  shape   outline (0, 8) (28, 20) (28, 45) (0, 45)
  value   4
  edges   EDGES
object  gate, dominant
  shape   rectangle (34, 24) to (40, 33)
  value   4
`;

  it('softens the border until it pulls no more than what is at the focal point', () => {
    const text = GATE.replace('EDGES', 'hard');
    const { message, advice } = first('way out', text);
    expect(message).toContain('The border between `wall` and `lane` runs straight');
    expect(advice).toBe('Make its edges firm: write `edges firm against lane` under `wall`.');
    expect(isMended('way out', text)).toBe(true);
    expect(of('way out', checked(GATE.replace('EDGES', 'firm')))).toEqual([]);
  });

  it.each([
    [
      'twice at one edge',
      'outline (4, 45) (14, 12) (18, 12) (28, 45)',
      / and out at the bottom edge, more than once; it pulls .* nothing stops it\.$/,
    ],
    [
      'at two edges',
      'outline (0, 8) (28, 20) (28, 45) (0, 45)',
      / and out at the left edge; it pulls .* nothing stops it\. It does so at the bottom edge too\.$/,
    ],
  ])('names each edge once that the border leaves %s', (_, outline, told) => {
    const text = GATE.replace('EDGES', 'hard').replace(/outline .*/, outline);
    expect(first('way out', text).message).toMatch(told);
  });

  it.each([
    ['at an edge', 'outline (24, 26) (0, 10) (0, 14) (22, 28)', 'the left edge'],
    ['at an edge, with one side in a corner', 'outline (24, 26) (0, 0) (0, 6) (22, 28)', 'the left edge'],
    ['round a corner', 'outline (24, 26) (2, 0) (0, 0) (0, 3) (22, 28)', 'the upper left corner'],
  ])('tells the two sides of a plank as one %s', (_, outline, place) => {
    const text = GATE.replace('EDGES', 'hard').replace(/outline .*/, outline);
    const findings = of('way out', checked(text));
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toMatch(
      new RegExp(
        `^Two borders between \`wall\` and \`lane\` run side by side, straight for [\\d.]+ cm, and out at ${place}; they pull .* as anything at the focal point, and nothing stops them\\.$`,
      ),
    );
    expect(isMended('way out', text)).toBe(true);
  });

  it('tells two borders as such that are farther apart than they are long, or turn from each other by more than 30 degrees', () => {
    const message = (outline: string) =>
      first('way out', GATE.replace('EDGES', 'hard').replace(/outline .*/, outline)).message;
    const block = (wide: number) => `outline (8, 45) (8, 26) (${8 + wide}, 26) (${8 + wide}, 45)`;
    expect(message(block(18))).toContain('Two borders');
    expect(message(block(20))).toContain('out at the bottom edge, more than once');
    // Each side leans by 14 or by 16 degrees.
    const cone = (lean: number) => `outline (${15 - lean}, 45) (15, 15) (19, 15) (${19 + lean}, 45)`;
    expect(message(cone(7.5))).toContain('Two borders');
    expect(message(cone(8.6))).toContain('out at the bottom edge, more than once');
  });

  it('does not tell of a border that is only as strong as those at the focal point', () => {
    const plank = GATE.replace(/outline .*/, 'outline (24, 26) (0, 10) (0, 14) (22, 28)');
    expect(of('way out', checked(plank.replace('EDGES', 'firm')))).toEqual([]);
  });

  it('leaves a horizon alone, however hard', () => {
    const sea = `canvas  60 x 45 cm\nfocus   (36, 32)\nobject  sky\n  plane   background\n  shape   rectangle (0, 0) to (60, 15)\n  value   5\n  edges   hard\nobject  sea\n  plane   background\n  shape   rectangle (0, 15) to (60, 45)\n  value   1\nobject  buoy, dominant\n  shape   circle 6 at focus\n  value   3\n`;
    expect(of('way out', checked(sea))).toEqual([]);
  });
});

describe('the eye path as a whole', () => {
  const place = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 30 }));
  const scenes = fc.array(fc.tuple(place, place), { minLength: 1, maxLength: 4 });
  const RULES = /^(lead|leads|way out|path order)\b/;

  function told(leads: readonly (readonly (readonly [number, number])[])[], flip: boolean, size: number) {
    const written = ([x, y]: readonly [number, number]): string =>
      `(${(flip ? 40 - x : x) * size}, ${y * size})`;
    const lines = leads.map(
      ([from = [0, 0], through = [0, 0]], index) =>
        `lead    l${index} from ${written(from)} through ${written(through)} to focus`,
    );
    const bowl = `object  bowl, dominant\n  shape   circle ${6 * size} at focus\n  value   5\n`;
    const text = `canvas  ${40 * size} x ${30 * size} cm\nfocus   ${written([25, 18])}\n${bowl}${lines.join('\n')}`;
    return standing(checked(text).findings)
      .filter(({ rule }) => RULES.test(rule))
      .map(({ rule, location }) => `${rule} ${location.line}`);
  }

  it('finds the same in a mirror and at twice the size', () => {
    fc.assert(
      fc.property(scenes, (leads) => {
        const plain = told(leads, false, 1);
        expect(told(leads, true, 1)).toEqual(plain);
        expect(told(leads, false, 2)).toEqual(plain);
      }),
      { seed: 21, numRuns: 8 },
    );
  });
});
