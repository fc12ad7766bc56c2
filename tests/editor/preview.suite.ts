import { assert } from 'chai';
import * as vscode from 'vscode';
import { eventually, exampleNames, openExample } from './examples.js';

function previewTabs(): readonly vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(
      ({ input }) => input instanceof vscode.TabInputWebview && /mahlstick\.preview$/.test(input.viewType),
    );
}

describe('the preview', () => {
  after(() => vscode.window.tabGroups.close(previewTabs()));

  it('opens beside the plan, which keeps the focus', async () => {
    const [name] = await exampleNames();
    assert.isDefined(name, 'the folder has a plan');
    const { document, viewColumn } = await openExample(name);
    await vscode.commands.executeCommand('mahlstick.openPreview');
    const [tab] = await eventually('the preview', () => {
      const tabs = previewTabs();
      return tabs.length > 0 ? tabs : undefined;
    });
    assert.equal(tab?.label, `Preview ${name}`);
    assert.notEqual(tab?.group.viewColumn, viewColumn);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), document.uri.toString());
  });

  it('is there once a plan, however often it is opened', async () => {
    await vscode.commands.executeCommand('mahlstick.openPreview');
    assert.lengthOf(previewTabs(), 1);
    const [, other] = await exampleNames();
    assert.isDefined(other, 'the folder has two plans');
    await openExample(other);
    await vscode.commands.executeCommand('mahlstick.openPreview');
    await eventually('the second preview', () => (previewTabs().length === 2 ? true : undefined));
  });

  it('opens for a plan that is named, as from the explorer', async () => {
    await vscode.window.tabGroups.close(previewTabs());
    const [name, other] = await exampleNames();
    assert.isDefined(name);
    assert.isDefined(other);
    const { document } = await openExample(name);
    await openExample(other);
    await vscode.commands.executeCommand('mahlstick.openPreview', document.uri);
    const [tab] = await eventually('the preview', () => {
      const tabs = previewTabs();
      return tabs.length > 0 ? tabs : undefined;
    });
    assert.equal(tab?.label, `Preview ${name}`);
  });

  it('has its commands under one category and offers none where it does not apply', () => {
    const manifest = vscode.extensions.getExtension('mahlstick.mahlstick')?.packageJSON as {
      readonly contributes: {
        readonly commands: readonly { readonly command: string; readonly category: string }[];
        readonly menus: {
          readonly commandPalette: readonly { readonly command: string; readonly when: string }[];
        };
      };
    };
    const { commands, menus } = manifest.contributes;
    assert.deepEqual([...new Set(commands.map(({ category }) => category))], ['Mahlstick']);
    // A plan can be begun wherever one is.
    assert.sameMembers(
      ['mahlstick.newPlan', ...menus.commandPalette.map(({ command }) => command)],
      commands.map(({ command }) => command),
    );
  });
});
