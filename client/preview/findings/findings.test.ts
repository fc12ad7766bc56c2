import { describe, expect, it } from 'vitest';
import { announcement, findingRows, messagePieces, summary } from './findings.js';
import type { ListedFinding } from '../messages.js';
import { stillLife } from '../still-life.js';

function finding(message: string, line = 0, severity: ListedFinding['severity'] = 'warning'): ListedFinding {
  return { code: 'even-count', severity, message, location: { line, start: 0, end: 4 } };
}

describe('the list of findings', () => {
  it('has errors first, then warnings, then hints, each in the order in which they are told', () => {
    const rows = findingRows(
      [
        finding('what matters most', 9, 'hint'),
        finding('off its budget', 7),
        finding('unread', 20, 'error'),
        finding('past the focal point', 2),
      ],
      stillLife,
    );
    expect(rows.map(({ message }) => message)).toEqual([
      'unread',
      'off its budget',
      'past the focal point',
      'what matters most',
    ]);
  });

  it('sets the advice apart and knows the marks, where the drawing has the finding', () => {
    const [row] = findingRows([finding('There are two objects. Try a third.', 6)], stillLife);
    expect(row).toMatchObject({
      message: 'There are two objects.',
      advice: 'Try a third.',
      subjects: ['finding:even count'],
    });
  });

  it('has the whole message where the drawing does not have it', () => {
    const [row] = findingRows([finding('There are two objects. Try a third.', 8)], stillLife);
    expect(row).toMatchObject({ message: 'There are two objects. Try a third.', subjects: [] });
    expect(row).not.toHaveProperty('advice');
  });
});

describe('what is said when the findings change', () => {
  const two = [finding('Dark is 40 %.'), finding('Two objects.')];

  it('is nothing when they only moved', () => {
    expect(announcement(two, [finding('Two objects.', 5), finding('Dark is 40 %.', 9)])).toBeUndefined();
    expect(announcement([], [])).toBeUndefined();
  });

  it('is the one that is new, in its own words', () => {
    expect(announcement([], two.slice(0, 1))).toBe('Dark is 40 %. 1 finding now.');
    expect(announcement(two, [finding('Two objects.'), finding('Dark is 45 %.')])).toBe(
      'Dark is 45 %. 2 findings now.',
    );
  });

  it('is their number when several are new', () => {
    expect(announcement([], two)).toBe('2 new findings, 2 findings now.');
  });

  it('is what is settled', () => {
    expect(announcement(two, two.slice(1))).toBe('1 finding settled, 1 finding now.');
    expect(announcement(two, [])).toBe('No findings left.');
  });
});

describe('the summary of findings', () => {
  it('counts by weight and leaves out what there is none of', () => {
    expect(summary([])).toBe('No findings');
    expect(summary([{ severity: 'hint' }, { severity: 'error' }, { severity: 'hint' }])).toBe(
      '1 error, 2 hints',
    );
  });
});

describe('the wording of a message', () => {
  it('tells words of the plan from the rest, and keeps a number with its sign', () => {
    expect(messagePieces('Most of it is `hill` (50 %).')).toEqual([
      { text: 'Most of it is ', quoted: false },
      { text: 'hill', quoted: true },
      { text: ' (50\u00a0%).', quoted: false },
    ]);
  });

  it('has no quoted piece where a message has no backtick', () => {
    expect(messagePieces('Two objects.')).toEqual([{ text: 'Two objects.', quoted: false }]);
  });
});
