import { TextDocument } from 'vscode-languageserver-textdocument';
import { SnippetTextEdit, TextDocumentEdit, TextEdit, type CodeAction } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import { everything, nothing, openPlan } from './test-support.js';

const hidden = `canvas 40 x 30 cm
focus (10, 10)
object tram, dominant
\tshape rectangle (0, 0) to (20, 20)
\tvalue 1
object wall
  shape rectangle (0, 0) to (40, 30)
  value 4
`;

function actionsAt(marked: string, abilities = everything): readonly CodeAction[] {
  const { service, uri, position, failures } = openPlan(marked, abilities);
  const actions = service.codeActions(uri, { start: position, end: position });
  expect(failures).toEqual([]);
  return actions;
}

function editsOf({ edit }: CodeAction): readonly (TextEdit | SnippetTextEdit)[] {
  const changes = edit?.documentChanges?.filter((change) => TextDocumentEdit.is(change)) ?? [];
  return [...changes.flatMap(({ edits }) => edits), ...Object.values(edit?.changes ?? {}).flat()];
}

/** The text after the action, with snippets as they stand. */
function applied(text: string, action: CodeAction | undefined): string {
  const edits = (action === undefined ? [] : editsOf(action)).map((edit) =>
    TextEdit.is(edit) ? edit : { range: edit.range, newText: edit.snippet.value },
  );
  return TextDocument.applyEdits(TextDocument.create('plan', 'mahlstick', 1, text), edits);
}

const titled = (actions: readonly CodeAction[], title: RegExp): CodeAction | undefined =>
  actions.find((action) => title.test(action.title));

describe('did you mean', () => {
  test('a word of the language', () => {
    const [action] = actionsAt('o|bjekt tram');
    expect(action).toMatchObject({
      kind: 'quickfix',
      isPreferred: true,
      diagnostics: [{ code: 'unknown-word' }],
    });
    expect(applied('objekt tram', action)).toBe('object tram');
  });

  test('a name', () => {
    const text = 'canvas 40 x 30 cm\nobject tram\npath tarm';
    expect(applied(text, titled(actionsAt(text.replace('tarm', 't|arm')), /tram/u))).toBe(
      'canvas 40 x 30 cm\nobject tram\npath tram',
    );
  });

  test('two facts on one line become two lines, with the line ends of the plan', () => {
    const text = 'canvas 40 x 30 cm\r\nobject tram, detail fine\r\n';
    const [action] = actionsAt(text.replace('detail', 'det|ail'));
    expect(action?.title).toBe('Put it on a line of its own');
    expect(applied(text, action)).toBe('canvas 40 x 30 cm\r\nobject tram\r\n  detail fine\r\n');
  });

  test('a rule', () => {
    const text = 'canvas 40 x 30 cm\nallow evn count because "so"\n';
    expect(applied(text, titled(actionsAt(text.replace('evn', 'e|vn')), /even count/u))).toContain(
      'allow even count',
    );
  });
});

describe('set aside with a reason', () => {
  test('under the object when the finding concerns one, as deep as its other lines', () => {
    const action = titled(
      actionsAt(hidden.replace('tram', 't|ram')),
      /Set `hidden object` aside for `tram`/u,
    );
    expect(applied(hidden, action)).toContain(
      '\tvalue 1\n\tallow hidden object because "${1:why}"\nobject wall',
    );
  });

  test('for the lead or the cue that it is about', () => {
    const leads =
      'canvas 40 x 30 cm\nfocus (30, 20)\nobject wall\n\tshape rectangle (0, 0) to (40, 30)\n\tvalue 3\nlead rail from (0, 2) to (5, 2)\n';
    const lead = titled(actionsAt(leads.replace('rail', 'r|ail')), /Set `lead past focus` aside for `rail`/u);
    expect(applied(leads, lead)).toContain('\nallow lead past focus for rail because "${1:why}"\n');
    const cues = 'canvas 40 x 30 cm\nobject wall\ncue "5 $ {rent}"\n';
    const cue = titled(
      actionsAt(cues.replace('5 $', '5| $')),
      /Set `cue not carried` aside for “5 \$ \{rent\}”/u,
    );
    expect(applied(cues, cue)).toContain('\nallow cue not carried for "5 \\$ {rent\\}" because "${1:why}"\n');
  });

  test('for the plan otherwise', () => {
    const text = 'canvas 40 x 30 cm\nfocus (20, 15)\n';
    const action = titled(actionsAt(text.replace('(20', '|(20')), /centred focus/u);
    expect(applied(text, action)).toBe(`${text}\nallow centred focus because "\${1:why}"\n`);
  });

  test('beside the exceptions that are there', () => {
    const text = 'canvas 40 x 30 cm\nallow no focus because "a pattern"\nfocus (20, 15)\n';
    const action = titled(actionsAt(text.replace('(20', '|(20')), /centred focus/u);
    expect(applied(text, action)).toContain('"a pattern"\nallow centred focus because "${1:why}"\nfocus');
  });

  test('a text that ends without a line end', () => {
    const text = 'canvas 40 x 30 cm\r\nfocus (20, 15)';
    const action = titled(actionsAt(text.replace('(20', '|(20')), /centred focus/u);
    expect(applied(text, action)).toBe(`${text}\r\n\r\nallow centred focus because "…"`);
  });

  test('what it writes is read, and sets the finding aside', () => {
    const action = titled(actionsAt(hidden.replace('tram', 't|ram'), nothing), /Set `hidden object` aside/u);
    const { service, uri } = openPlan(applied(hidden, action));
    expect(service.diagnostics(uri).map(({ code }) => code)).not.toContain('hidden-object');
    expect(
      service.snapshot(uri)?.findings.find(({ rule }) => rule === 'hidden object')?.allowed,
    ).toBeDefined();
  });
});

test('an exception without need is taken out with its line', () => {
  const text = 'canvas 40 x 30 cm\nallow hidden object because "so"\nscale 5\n';
  const action = titled(actionsAt(text.replace('hidden', 'h|idden')), /Take this line out/u);
  expect(applied(text, action)).toBe('canvas 40 x 30 cm\nscale 5\n');
});

test('an edit that would break something else that the plan states is not offered', () => {
  const offered = (light: string): CodeAction | undefined => {
    const text = `canvas 40 x 30 cm
budget value light ${light} within 5%
object wall
  shape rectangle (0, 0) to (40, 30)
  value 4
object t|ram, secondary
  plane background
  shape circle 9 at (30, 20)
  value 1
`;
    return titled(actionsAt(text), /^Bring `tram`/u);
  };
  // In front of the wall the tram covers 5.3 % of the lights.
  expect(offered('98%')).toBeDefined();
  expect(offered('100%')).toBeUndefined();
});

test('edits name the version they were made for, where the client can take that', () => {
  const [versioned] = actionsAt('o|bjekt tram');
  expect(versioned?.edit?.documentChanges).toMatchObject([{ textDocument: { version: 1 } }]);
  const [plain] = actionsAt('o|bjekt tram', nothing);
  expect(plain?.edit).toEqual({
    changes: {
      'file:///studio/plan.mahl': [
        { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 6 } }, newText: 'object' },
      ],
    },
  });
});

test('nothing is offered where nothing is wrong', () => {
  expect(actionsAt(hidden.replace('canvas', 'c|anvas'))).toEqual([]);
});
