import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';
import { Mixer, MixingStore } from './mixer.js';

const PAINTS = `
palette
  paint   white PW6
  paint   lemon PY151
  paint   red PR170
  paint   blue PB15:4
`;

function still(colours: readonly string[], paints = PAINTS): string {
  const objects = colours.map(
    (colour, at) => `
object  pear-${at + 1}
  shape   ellipse 6 x 8 at (${10 + 8 * at}, 20)
  colour  ${colour}
`,
  );
  return `canvas  80 x 40 cm\n  ground  #8a6a4f\n${objects.join('')}${paints}`;
}

const PEARS = ['#c9b458', '#7f8f3f', '#a8452f'];

function mixingOf(text: string, mixer: Mixer) {
  return measure(planOf(text), new Memory(), mixer).palette?.mixing;
}

/** Does all the work that is noted; how many pieces it took. */
function work(mixer: Mixer): number {
  let pieces = 0;
  while (mixer.hasWork) {
    mixer.step();
    pieces += 1;
  }
  return pieces;
}

describe('an eager mixer', () => {
  it('has everything at once, and looks nothing up twice', () => {
    const mixer = Mixer.eager();
    const first = mixingOf(still(PEARS), mixer);
    expect(first?.swatches).toHaveLength(4);
    const { store } = mixer;
    expect([store.worked('tables'), store.worked('colours')]).toEqual([1, 4]);
    const again = mixingOf(still(PEARS), mixer);
    expect(again).toEqual(first);
    expect([store.worked('tables'), store.worked('colours')]).toEqual([1, 4]);
  });

  it('looks up one colour when one is changed', () => {
    const mixer = Mixer.eager();
    mixingOf(still(PEARS), mixer);
    mixingOf(still(['#c9b458', '#7f8f3f', '#b8553f']), mixer);
    expect([mixer.store.worked('tables'), mixer.store.worked('colours')]).toEqual([1, 5]);
  });

  it('does nothing for a picture whose shapes move, or a palette that is written in another order', () => {
    const mixer = Mixer.eager();
    mixingOf(still(PEARS), mixer);
    mixingOf(still(PEARS).replace('(10, 20)', '(12, 22)'), mixer);
    mixingOf(
      still(
        PEARS,
        'palette\n  paint azure PB15:4\n  paint scarlet PR170\n  paint lemon PY151\n  paint white PW6\n',
      ),
      mixer,
    );
    expect([mixer.store.worked('tables'), mixer.store.worked('colours')]).toEqual([1, 4]);
  });

  it('looks for a paint to add only when a colour is beyond the palette', () => {
    const mixer = Mixer.eager();
    mixingOf(still(['#c9b458']), mixer);
    expect(mixer.store.worked('additions')).toBe(0);
    mixingOf(still(['#c9b458', '#7a1fa0']), mixer);
    mixingOf(still(['#c9b458', '#7a1fa0']), mixer);
    expect(mixer.store.worked('additions')).toBe(1);
  });

  it('keeps the tables of the palettes asked for last', () => {
    const mixer = Mixer.eager();
    const palettes = ['PY42', 'PR101', 'PG7', 'PBk7'].map(
      (index) => `palette\n  paint white PW6\n  paint one ${index}\n`,
    );
    for (const paints of palettes) mixingOf(still(PEARS, paints), mixer);
    expect(mixer.store.worked('tables')).toBe(4);
    mixingOf(still(['#c9b458'], palettes[3]), mixer);
    expect(mixer.store.worked('tables')).toBe(4);
    mixingOf(still(['#c9b458'], palettes[0]), mixer);
    expect(mixer.store.worked('tables')).toBe(5);
    // What was asked of a palette in the same words is kept longer than its table.
    mixingOf(still(PEARS, palettes[1]), mixer);
    expect(mixer.store.worked('tables')).toBe(5);
  });
});

describe('a patient mixer', () => {
  it('says nothing until its work is done in small pieces, and then what an eager one says', () => {
    const mixer = Mixer.patient();
    const text = still(PEARS);
    expect(mixingOf(text, mixer)).toBeUndefined();
    expect(mixer.hasWork).toBe(true);
    expect(measure(planOf(text), new Memory(), mixer).palette?.paints).toHaveLength(4);
    expect(work(mixer)).toBeGreaterThan(1);
    expect(mixer.step()).toBe(false);
    expect(mixingOf(text, mixer)).toEqual(mixingOf(text, Mixer.eager()));
  });

  it('has the answer at once when a colour or two are changed and the palette is known', () => {
    const mixer = Mixer.patient();
    mixingOf(still(PEARS), mixer);
    work(mixer);
    expect(mixingOf(still(['#c9b458', '#7f8f3f', '#b8553f']), mixer)?.swatches).toHaveLength(4);
    expect(mixer.hasWork).toBe(false);
  });

  it('goes on where it was when the same is asked again before it is done', () => {
    const whole = Mixer.patient();
    mixingOf(still(PEARS), whole);
    const pieces = work(whole);
    const mixer = Mixer.patient();
    mixingOf(still(PEARS), mixer);
    mixer.step();
    mixer.step();
    expect(mixingOf(still(PEARS), mixer)).toBeUndefined();
    expect(work(mixer)).toBeLessThan(pieces - 2);
  });

  it('forgets what the plan no longer asks for', () => {
    const mixer = Mixer.patient();
    mixingOf(still(PEARS), mixer);
    mixingOf(still(PEARS, 'palette\n  paint white PW6\n  paint one PY42\n'), mixer);
    work(mixer);
    expect(mixer.store.worked('tables')).toBe(1);
    mixingOf(still(PEARS), mixer);
    mixingOf(still(PEARS, ''), mixer);
    expect(mixer.hasWork).toBe(false);
  });

  it('lets a version that is only tried be answered at once, and keeps its own work', () => {
    const mixer = Mixer.patient();
    mixingOf(still(PEARS), mixer);
    const tried = mixingOf(still(['#7f8f3f']), mixer.aside());
    expect(tried?.swatches).toHaveLength(2);
    expect(mixer.hasWork).toBe(true);
    work(mixer);
    expect(mixingOf(still(PEARS), mixer)?.swatches).toHaveLength(4);
  });

  it('shares what is known of palettes with the mixers of other documents', () => {
    const store = new MixingStore();
    const first = Mixer.patient(store);
    mixingOf(still(PEARS), first);
    work(first);
    const second = Mixer.patient(store);
    expect(mixingOf(still(PEARS), second)?.swatches).toHaveLength(4);
    expect(store.worked('tables')).toBe(1);
  });
});
