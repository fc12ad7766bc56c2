import { describe, expect, it } from 'vitest';
import { marked, said, speak, speaking, spokenNow, t } from './localised.js';

const german = {
  'The {0} lies {1} off.': '{1} daneben: {0}.',
  kept: 'aufbewahrt',
};

describe('a sentence', () => {
  it('is English where nothing else is spoken, with its values in their places', () => {
    expect(t('The {0} lies {1} off.', '`jug`', 3)).toBe('The `jug` lies 3 off.');
    expect(t('{0} and {0}', 'a')).toBe('a and a');
  });

  it('is said in the language that is spoken, with its values where that has them', () => {
    expect(speaking(german, () => t('The {0} lies {1} off.', '`jug`', 3))).toBe('3 daneben: `jug`.');
    expect(speaking(german, () => said(marked('kept')))).toBe('aufbewahrt');
  });

  it('stays English where the language has none for it', () => {
    expect(speaking(german, () => t('Neither {0}.', 'nor'))).toBe('Neither nor.');
    expect(speaking(german, () => said('constructor'))).toBe('constructor');
  });

  it('takes no place from what a value says', () => {
    expect(t('{0}, {1}', '{1}', '$&')).toBe('{1}, $&');
  });
});

describe('a language', () => {
  it('is spoken as long as the work in it goes on, and no longer, even when that fails', () => {
    expect(speaking(german, () => speaking(undefined, () => said('kept')))).toBe('kept');
    expect(
      speaking(german, () => {
        speaking(undefined, () => undefined);
        return said('kept');
      }),
    ).toBe('aufbewahrt');
    expect(() =>
      speaking(german, () => {
        throw new Error('in between');
      }),
    ).toThrow('in between');
    expect(spokenNow()).toBeUndefined();
  });

  it('is spoken from then on where a program speaks one alone', () => {
    speak(german);
    expect(said('kept')).toBe('aufbewahrt');
    speak(undefined);
    expect(said('kept')).toBe('kept');
  });
});
