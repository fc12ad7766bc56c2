import { describe, expect, it } from 'vitest';
import { readRuleSettings } from './rule-settings.js';

describe('the setting of rules', () => {
  it('is read by the ids of the rules, with limits in their units', () => {
    const { settings, refused } = readRuleSettings({
      'even count': 'off',
      'Bare-Ground': { severity: 'warning', limit: 5 },
      'centred focus': {},
    });
    expect(refused).toEqual([]);
    expect([...settings]).toEqual([
      ['even count', { severity: 'off' }],
      ['bare ground', { severity: 'warning', limit: 0.05 }],
      ['centred focus', {}],
    ]);
  });

  it.each([undefined, null, {}])('says nothing when it is %j', (value) => {
    expect(readRuleSettings(value)).toEqual({ settings: new Map(), refused: [] });
  });

  it('leaves out what it can’t use, and says what that is', () => {
    const { settings, refused } = readRuleSettings({
      'evn count': 'off',
      'even count': 'loud',
      'one dominant': { limit: 4 },
      'bare ground': { limit: 140 },
      'near tangent': { limit: 2.5 },
      'kissed edge': { limit: 2 },
      'no focus': 'hint',
    });
    expect([...settings.keys()]).toEqual(['kissed edge', 'no focus']);
    expect(refused).toEqual([
      'there is no rule `evn count`',
      '`even count` is "off", "hint" or "warning", and has no limit',
      '`one dominant` is "off", "hint" or "warning", and has no limit',
      '`bare ground` is "off", "hint" or "warning", or has a severity and a limit from 0 to 100',
      '`near tangent` is "off", "hint" or "warning", or has a severity and a limit from 0 to 2',
    ]);
  });

  it.each([['off'], 'off', 5, true])('is refused as a whole when it is %j', (value) => {
    expect(readRuleSettings(value)).toEqual({ settings: new Map(), refused: ['it is no object of rules'] });
  });

  it('is no way into the server’s own objects', () => {
    const hostile: unknown = JSON.parse('{"__proto__": "off", "constructor": "off"}');
    expect(readRuleSettings(hostile).settings).toEqual(new Map());
  });
});
