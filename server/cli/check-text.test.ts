import { describe, expect, it } from 'vitest';
import { checkedPlan } from '../../tests/support/command-line.js';
import { checkText } from './check-text.js';
import type { Remark } from './remarks.js';

const remark = (given: Partial<Remark>): Remark => ({
  rule: 'value budget',
  severity: 'warning',
  message: 'The lights cover 61 %.',
  location: { line: 0, start: 0, end: 4 },
  related: [],
  objects: [],
  ...given,
});

const lines = ['plan "Barn"', 'canvas 90 x 60 cm'];

describe('checkText', () => {
  it('shows a remark with its place, its words, and what to try', () => {
    const text = checkText(
      [
        {
          name: 'barn.mahl',
          lines,
          remarks: [
            remark({
              advice: 'Darken the sky.',
              location: { line: 1, start: 7, end: 14 },
              related: [{ location: { line: 0, start: 5, end: 11 }, message: 'The title is here.' }],
            }),
          ],
        },
      ],
      false,
    );
    expect(text).toBe(
      [
        'Warnings',
        '  barn.mahl:2:8  warning  The lights cover 61 %.  [value budget]',
        '    2 | canvas 90 x 60 cm',
        '      |        ^^^^^^^',
        '    Try: Darken the sky.',
        '    barn.mahl:1:6  The title is here.',
        '',
        'barn.mahl: no errors, 1 warning, no hints',
        '',
      ].join('\n'),
    );
  });

  it('puts errors before warnings before hints, then what is set aside, with its reason', () => {
    const remarks = [
      remark({ severity: 'hint' }),
      remark({ setAside: { reason: 'it is night', location: { line: 1, start: 0, end: 5 } } }),
      remark({ severity: 'error' }),
      remark({}),
    ];
    const text = checkText([{ name: 'barn.mahl', lines, remarks }], false);
    const headings = text.split('\n').filter((line) => /^[A-Z]/.test(line));
    expect(headings).toEqual(['Errors', 'Warnings', 'Hints', 'Set aside']);
    expect(text).toContain('because "it is night" (line 2)');
    expect(text).toContain('barn.mahl: 1 error, 1 warning, 1 hint, 1 set aside');
  });

  it('shows the words of the plan that a remark comes from', () => {
    const from = { line: 4, start: 2, end: 9, file: '../oven.mahl' };
    const text = checkText(
      [
        {
          name: 'variants/barn.mahl',
          lines,
          linesOf: (file) => (file === '../oven.mahl' ? ['', '', '', '', '  value 5'] : []),
          remarks: [remark({ from, related: [{ location: from, message: 'It is here.' }] })],
        },
      ],
      false,
    );
    expect(text).toContain('  variants/barn.mahl:1:1  warning  ');
    expect(text).toContain('    in variants/../oven.mahl:5:3\n    5 | value 5\n      | ^^^^^^^\n');
    expect(text).not.toContain('It is here.');
  });

  it('sums up several plans', () => {
    const plan = { name: 'barn.mahl', lines, remarks: [remark({})] };
    expect(checkText([plan, plan], false)).toMatch(/^2 plans: no errors, 2 warnings, no hints$/m);
    expect(checkText([plan], false)).not.toContain('plans:');
  });

  it('lets no text of a plan reach the terminal as a command', () => {
    const plan = checkedPlan('plan "\u001b[2J"\nobject \u001b]0;x\u0007\n  shape from "\u202e"\n');
    const text = checkText([{ ...plan, name: '\u001b[31m.mahl' }], false);
    expect(text).toContain('\ufffd');
    expect([...text].filter((character) => /[\p{Cc}\u202e]/u.test(character) && character !== '\n')).toEqual(
      [],
    );
  });
});
