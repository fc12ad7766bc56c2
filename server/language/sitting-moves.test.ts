import { TextDocument } from 'vscode-languageserver-textdocument';
import { describe, expect, test } from 'vitest';
import { TextDocumentEdit, TextEdit, type CodeAction } from 'vscode-languageserver-types';
import { openPlan, type Bench } from './test-support.js';

const text = `canvas 80 x 60 cm
object  jug
  shape circle 10 at (20, 20)
sitting "Finish" on 2027-02-01   // the last
  works jug
sitting "Lay in" on 2027-01-04
  works jug
  layer block-in
sitting "Body" on 2027-01-05
  works jug
sitting "Some day"
  works jug
away 2027-01-07 to 2027-01-08
`;

function asked(words: string, source = text): { bench: Bench; actions: readonly CodeAction[] } {
  const bench = openPlan(source.replace(words, `|${words}`));
  const range = { start: bench.position, end: bench.position };
  return { bench, actions: bench.service.codeActions(bench.uri, range, ['refactor']) };
}

function titles(words: string, source = text): readonly string[] {
  return asked(words, source).actions.map(({ title }) => title);
}

function after(words: string, title: RegExp, source = text): string {
  const { bench, actions } = asked(words, source);
  const edits = (actions.find((one) => title.test(one.title))?.edit?.documentChanges ?? [])
    .filter((change) => TextDocumentEdit.is(change))
    .flatMap((change) => change.edits.filter((edit) => TextEdit.is(edit)));
  return TextDocument.applyEdits(TextDocument.create(bench.uri, 'mahl', 1, source), edits);
}

/** Titles and days, as the text has them. */
function days(source: string): readonly (string | undefined)[] {
  return ['Finish', 'Lay in', 'Body'].map(
    (title) => new RegExp(`"${title}" on (\\S+)`, 'u').exec(source)?.[1],
  );
}

describe('a sitting and all after it', () => {
  test('go on by a week, by their days and not by their places in the text', () => {
    expect(days(after('sitting "Body"', /by a week/u))).toEqual(['2027-02-08', '2027-01-04', '2027-01-12']);
    expect(days(after('sitting "Finish"', /by a week/u))).toEqual(['2027-02-08', '2027-01-04', '2027-01-05']);
  });

  test('have nothing changed but their dates', () => {
    const changed = after('sitting "Lay in"', /by a day/u);
    expect(changed.replace(/\d{4}-\d\d-\d\d/gu, '')).toBe(text.replace(/\d{4}-\d\d-\d\d/gu, ''));
    expect(days(changed)).toEqual(['2027-02-02', '2027-01-05', '2027-01-06']);
  });

  test('go past days that are taken and come no nearer to each other', () => {
    // Two days that are taken: from the 6th a day on is the 9th, three days later than the 6th.
    const late = text.replace('2027-01-05', '2027-01-06');
    expect(titles('sitting "Body"', late)[0]).toBe(
      'Move “Body” and the sitting after it by a day, past the days that are taken',
    );
    expect(days(after('sitting "Body"', /by a day/u, late))).toEqual([
      '2027-02-04',
      '2027-01-04',
      '2027-01-09',
    ]);
  });

  test('go to the first day on which everything below is dry', () => {
    // A block-in of 0.09 mm takes 5 x 0.6 = 3 days: the 7th, which is taken, as the 8th is.
    expect(titles('sitting "Body"')[2]).toBe(
      'Move “Body” and the sitting after it to the first day on which everything below is dry, 9 January 2027',
    );
    expect(days(after('sitting "Body"', /is dry/u))).toEqual(['2027-02-05', '2027-01-04', '2027-01-09']);
  });

  test('are brought forward to that day too', () => {
    const dry = text.replace('2027-01-05', '2027-01-20');
    expect(days(after('sitting "Body"', /is dry/u, dry))).toEqual(['2027-01-21', '2027-01-04', '2027-01-09']);
  });
});

test('the last sitting goes alone, and the first lies on nothing', () => {
  expect(titles('sitting "Finish"')).toEqual([
    'Move “Finish” by a day',
    'Move “Finish” by a week',
    'Move “Finish” to the first day on which everything below is dry, 10 January 2027',
  ]);
  expect(titles('sitting "Lay in"')).toEqual([
    'Move “Lay in” and the two sittings after it by a day',
    'Move “Lay in” and the two sittings after it by a week',
  ]);
});

test('a sitting without a day can’t be moved, nor one beyond the end of the calendar', () => {
  expect(titles('sitting "Some day"')).toEqual([]);
  expect(titles('sitting "Finish"', text.replace('2027-02-01', '9999-12-31')).slice(0, 2)).not.toContain(
    'Move “Finish” by a day',
  );
});
