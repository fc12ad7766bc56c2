import { assert } from 'chai';
import * as vscode from 'vscode';
import { eventually, exampleNames, openExample } from './examples.js';

const stray = '\nobject stray\n  plane  background\n  shape  rectangle (0, 0) to (1, 1)\n';
const code = 'no-value-or-colour';

/** The finding about the object above, if the plan has it. */
function strayFinding({ uri }: vscode.TextDocument): vscode.Diagnostic | undefined {
  return vscode.languages
    .getDiagnostics(uri)
    .find((diagnostic) => codeOf(diagnostic) === code && diagnostic.message.includes('stray'));
}

function codeOf({ code }: vscode.Diagnostic): unknown {
  return typeof code === 'object' ? code.value : code;
}

function openTabs(): readonly vscode.Tab[] {
  return vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs);
}

function isStandIn({ uri }: vscode.TabInputText): boolean {
  return uri.scheme === 'mahlstick-reference';
}

async function openPlan(content: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument({ language: 'mahl', content });
  await vscode.window.showTextDocument(document);
  return document;
}

describe('writing a plan', () => {
  after(() => vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor'));

  it('is told of a finding with its code and a link to the reference, and no more after undo', async () => {
    const [name] = await exampleNames();
    assert.isDefined(name, 'the folder has a plan');
    const { document } = await openExample(name);
    const before = document.getText();
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, new vscode.Position(document.lineCount, 0), stray);
    assert.isTrue(await vscode.workspace.applyEdit(edit));

    const finding = await eventually('the finding', () => strayFinding(document));
    assert.equal(finding.source, 'mahlstick');
    assert.isObject(finding.code);
    const { target } = finding.code as { readonly target: vscode.Uri };
    assert.equal(target.toString(), `mahlstick-reference:/server/findings/README.md?${code}`);
    assert.equal(document.lineAt(finding.range.start.line).text, 'object stray');

    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), before);
    await eventually('the plan without it', () => (strayFinding(document) === undefined ? true : undefined));
  });

  it('shows the page that a code leads to, set as Markdown, and nothing of what stood in for it', async () => {
    const target = vscode.Uri.parse(`mahlstick-reference:/server/findings/README.md?${code}`);
    await vscode.commands.executeCommand('vscode.open', target);
    const page = await eventually('the page', () =>
      openTabs().find(
        ({ label, input }) => label.includes('README.md') && input instanceof vscode.TabInputWebview,
      ),
    );
    assert.isEmpty(
      openTabs().filter(({ input }) => input instanceof vscode.TabInputText && isStandIn(input)),
    );
    await vscode.window.tabGroups.close(page);
  });

  it('opens nothing but pages of the reference', async () => {
    const before = openTabs().length;
    for (const page of ['/package.json', '/../secret.md', '/server/findings/README.md/../../x.md']) {
      await vscode.commands.executeCommand(
        'vscode.open',
        vscode.Uri.from({ scheme: 'mahlstick-reference', path: page }),
      );
      await eventually('the tabs as before', () => (openTabs().length === before ? true : undefined));
    }
  });

  it('completes the words of a statement', async () => {
    const { uri } = await openPlan('canvas 40 x 30 cm\n\nobject pear\n  pl');
    const labels = await eventually('completions', async () => {
      const list = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        uri,
        new vscode.Position(3, 4),
      );
      const found = list.items
        // VS Code adds the words of the text itself.
        .filter(({ kind }) => kind !== vscode.CompletionItemKind.Text)
        .map(({ label }) => (typeof label === 'string' ? label : label.label));
      return found.some((label) => label.startsWith('plane')) ? found : undefined;
    });
    assert.isFalse(
      labels.some((label) => label.startsWith('canvas')),
      'a canvas has no place in an object',
    );
  });

  it('says in the hover what was measured', async () => {
    const { uri } = await openPlan(
      'canvas 40 x 30 cm\nobject pear\n  shape  rectangle (0, 0) to (20, 30)\n  value  2\n',
    );
    const text = await eventually('the hover', async () => {
      const hovers = await vscode.commands.executeCommand<readonly vscode.Hover[]>(
        'vscode.executeHoverProvider',
        uri,
        new vscode.Position(1, 8),
      );
      const all = hovers
        .flatMap(({ contents }) => contents)
        .map((part) => (typeof part === 'string' ? part : part.value))
        .join('\n');
      return all === '' ? undefined : all;
    });
    assert.match(text, /50(\.0)?\s?%/);
  });
});

describe('what is named in a plan', () => {
  const plan =
    'canvas 100 x 50 cm\nfocus upper right\ncolour teal #2f6f73\nobject sky\n  shape rectangle (0, 0) to (100, 50)\n  colour teal\npath sky\n';
  const ask = <T>(command: string, uri: vscode.Uri, ...more: readonly unknown[]): Thenable<T | undefined> =>
    vscode.commands.executeCommand<T>(command, uri, ...more);
  let document: vscode.TextDocument;

  before(async () => {
    document = await openPlan(plan);
  });
  after(() => vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor'));

  it('is found and renamed wherever it is spoken of', async () => {
    const at = new vscode.Position(6, 6);
    const places = await eventually('references', async () => {
      const found = await ask<vscode.Location[]>('vscode.executeReferenceProvider', document.uri, at);
      return found?.length === 0 ? undefined : found;
    });
    assert.deepEqual(
      places.map(({ range }) => range.start.line),
      [3, 6],
    );
    const edit = await ask<vscode.WorkspaceEdit>(
      'vscode.executeDocumentRenameProvider',
      document.uri,
      at,
      'dusk',
    );
    assert.isDefined(edit);
    assert.isTrue(await vscode.workspace.applyEdit(edit));
    assert.equal(document.getText(), plan.replaceAll('sky', 'dusk'));
  });

  it('is coloured by what it stands for', async () => {
    const tokens = await ask<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document.uri);
    assert.isAbove(tokens?.data.length ?? 0, 50);
    assert.equal((tokens?.data.length ?? 1) % 5, 0);
  });

  it('has what is measured beside it', async () => {
    const whole = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = await eventually('hints', async () => {
      const found = await ask<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole);
      return found?.length === 0 ? undefined : found;
    });
    const labels = hints.map(({ label }) =>
      typeof label === 'string' ? label : label.map(({ value }) => value).join(''),
    );
    assert.includeMembers(labels, ['100 %', '61.8 cm across, 19.1 cm down']);
  });

  it('is selected from the word on', async () => {
    const [first] =
      (await ask<vscode.SelectionRange[]>('vscode.executeSelectionRangeProvider', document.uri, [
        new vscode.Position(5, 11),
      ])) ?? [];
    assert.equal(first && document.getText(first.range), 'teal');
  });

  it('is offered what is measured for what is wanted', async () => {
    const range = new vscode.Range(1, 0, 1, 0);
    const actions = await ask<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      range,
      vscode.CodeActionKind.Refactor.value,
    );
    // The focal point lies on its crossing already, so nothing is offered for it.
    assert.deepEqual(actions, []);
  });
});
