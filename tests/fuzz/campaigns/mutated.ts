import assert from 'node:assert/strict';
import { isUtf8 } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { views } from '../../../server/drawing/scene.js';
import { session } from '../../support/command-line.js';
import { campaign } from '../campaign.js';
import { takeTheWholeWay } from '../whole-way.js';
import { holdEnding, holdSession } from '../sessions.js';

const examples = path.resolve(import.meta.dirname, '../../../examples');
const plans = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(path.join(examples, name), 'utf8'));

type Change = (text: string) => string;

const nat = fc.nat(1_000_000);

function onLines(change: (lines: string[], at: number, other: number) => void) {
  return fc.tuple(nat, nat).map(([at, other]): Change => (text) => {
    const lines = text.split('\n');
    change(lines, at % lines.length, other % lines.length);
    return lines.join('\n');
  });
}

/** What stands for letters and signs in other scripts, or for nothing that can be seen. */
const signs = [
  'тень',
  '影',
  'ظل',
  '🎨',
  'é',
  '\u202e',
  '\u200d',
  '\0',
  '\u2028',
  '\ufeff',
  'İ',
  'ß',
  '\ud83c',
];

const change: fc.Arbitrary<Change> = fc.oneof(
  onLines((lines, at, other) => {
    [lines[at], lines[other]] = [lines[other] ?? '', lines[at] ?? ''];
  }),
  onLines((lines, at, other) => void lines.splice(at, 1 + (other % 5))),
  onLines((lines, at, other) => void lines.splice(at, 0, ...lines.slice(other, other + 7))),
  onLines((lines, at, other) => (lines[at] = ' '.repeat(other % 400) + (lines[at] ?? ''))),
  onLines((lines, at, other) => {
    for (let row = at; row < lines.length; row++)
      lines[row] = ' '.repeat((row - at) * (other % 3)) + (lines[row] ?? '');
  }),
  fc.tuple(nat, nat).map(([at, other]): Change => (text) => {
    const words = [...text.matchAll(/\S+/gu)];
    const one = words[at % Math.max(1, words.length)];
    const put = words[other % Math.max(1, words.length)]?.[0] ?? '';
    return one === undefined ? text : text.slice(0, one.index) + put + text.slice(one.index + one[0].length);
  }),
  fc.tuple(nat, fc.constantFrom(...signs)).map(([at, sign]): Change => (text) => {
    const place = at % (text.length + 1);
    return text.slice(0, place) + sign + text.slice(place);
  }),
  fc.constantFrom<Change>(
    (text) => text.replaceAll('\n', '\r\n'),
    (text) => text.replaceAll('\n', '\r'),
    (text) => `\ufeff${text}`,
    (text) => text.replaceAll(/^ +/gmu, '\t'),
    (text) => text.toUpperCase(),
    (text) => text.normalize('NFD'),
  ),
);

interface Damage {
  readonly at: number;
  readonly byte: number;
  readonly isPut: boolean;
}

const damage: fc.Arbitrary<Damage> = fc.record({ at: nat, byte: fc.nat(255), isPut: fc.boolean() });

/** A file as it lies on the disk, in base64. */
const file = fc
  .tuple(
    fc.constantFrom(...plans),
    fc.array(change, { minLength: 1, maxLength: 6 }),
    fc.oneof(
      { weight: 3, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.array(damage, { maxLength: 3 }) },
    ),
  )
  .map(([text, changes, damages]) => {
    const bytes = [...Buffer.from(changes.reduce((changed, one) => one(changed), text))];
    for (const { at, byte, isPut } of damages) bytes.splice(at % bytes.length, isPut ? 0 : 1, byte);
    return Buffer.from(bytes).toString('base64');
  });

/** Examples with lines, words, signs and bytes of them changed, as files that the command line reads. */
export const mutated = campaign({
  runs: 2,
  cases: fc.record({ file, view: fc.constantFrom(...views) }),
  hold: async ({ file: written, view }) => {
    const bytes = Buffer.from(written, 'base64');
    const checked = await session(['check', '-'], bytes, examples);
    const formatted = await session(['format', '-'], bytes, examples);
    holdSession(checked);
    // It prints the plan itself, whatever is in that.
    holdEnding(formatted);
    if (!isUtf8(bytes)) {
      assert.deepEqual([checked.code, formatted.code], [2, 2], 'bytes that are no UTF-8 are refused');
      return;
    }
    assert.notEqual(checked.code, 2, checked.errors);
    takeTheWholeWay(new TextDecoder().decode(bytes), view);
  },
});
