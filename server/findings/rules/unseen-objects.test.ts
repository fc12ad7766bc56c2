import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

/** A finding of one rule about `thing`, with a role or without. */
function severities(rule: string, scene: string): readonly (string | undefined)[] {
  return ['', ', minor', ', secondary', ', dominant'].map((role) => {
    const text = `canvas  40 x 30 cm\n${scene.replace('object  thing', `object  thing${role}`)}`;
    return checked(text).findings.find((finding) => finding.rule === rule)?.severity;
  });
}

describe('what is not seen', () => {
  it.each([
    [
      'hidden object',
      'object  thing\n  shape   circle 4\n  value   1\nobject  sheet\n  shape   circle 9\n  value   4',
    ],
    ['off the canvas', 'object  thing\n  shape   circle 4 at (60, 10)\n  value   1'],
    ['empty object', 'object  thing\n  value   1'],
    ['empty object', 'object  thing\n  shape   outline (1, 1) (2, 2) (3, 3)\n  value   1'],
  ])('%s is a warning where the plan gives it a part, else a hint', (rule, scene) => {
    expect(severities(rule, scene)).toEqual(['hint', 'hint', 'warning', 'warning']);
  });

  it('is a warning where it carries a cue, or the path leads to it', () => {
    const text = `canvas  40 x 30 cm
cue     "the tick of the clock" carried by clock
object  clock
  shape   circle 4 at (60, 10)
  value   1
object  shelf
  shape   rectangle (0, 20) to (40, 22)
  value   2
path    clock, shelf`;
    const severityOf = (rule: string) =>
      checked(text).findings.find((finding) => finding.rule === rule)?.severity;
    expect([severityOf('cue not carried'), severityOf('path order')]).toEqual(['warning', 'warning']);
    const uncarried = checked(text.replace(' carried by clock', '')).findings;
    expect(uncarried.find(({ rule }) => rule === 'cue not carried')?.severity).toBe('hint');
  });

  it('is a warning of the focal point', () => {
    const off = checked('canvas  40 x 30 cm\nfocus   (50, 10)').findings;
    expect(off.map(({ rule, severity }) => [rule, severity])).toContainEqual(['off the canvas', 'warning']);
  });
});
