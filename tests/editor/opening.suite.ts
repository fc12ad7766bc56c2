import { assert } from 'chai';
import * as vscode from 'vscode';
import { eventually, exampleNames, openExample } from './examples.js';

const extensionId = 'mahlstick.mahlstick';

describe('opening a plan', () => {
  it('is known as the language of plans and wakes the extension', async () => {
    const [name] = await exampleNames();
    assert.isDefined(name, 'the folder has a plan');
    const editor = await openExample(name);
    assert.equal(editor.document.languageId, 'mahl');
    const extension = vscode.extensions.getExtension(extensionId);
    assert.isDefined(extension, 'the extension is there');
    await eventually('activation', () => (extension.isActive ? true : undefined));
  });

  it('is read by the language server, which lists its parts', async () => {
    const [name] = await exampleNames();
    assert.isDefined(name, 'the folder has a plan');
    const { document } = await openExample(name);
    const symbols = await eventually('symbols', async () => {
      const answer = await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
        'vscode.executeDocumentSymbolProvider',
        document.uri,
      );
      return answer !== undefined && answer.length > 0 ? answer : undefined;
    });
    for (const { name: symbol, range } of symbols) {
      assert.isNotEmpty(symbol);
      assert.isTrue(document.validateRange(range).isEqual(range), `${symbol} lies in the text`);
    }
  });
});
