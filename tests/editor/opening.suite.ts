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
});
