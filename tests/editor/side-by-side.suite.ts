import { assert } from 'chai';
import * as vscode from 'vscode';
import { eventually, exampleNames, openExample } from './examples.js';

function pages(): readonly vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(
      ({ input }) => input instanceof vscode.TabInputWebview && /mahlstick\.sideBySide$/.test(input.viewType),
    );
}

describe('plans side by side', () => {
  after(() => vscode.window.tabGroups.close(pages()));

  it('hang on a wall, and are compared two at a time', async () => {
    const [name, other] = await exampleNames();
    assert.isDefined(name);
    assert.isDefined(other);
    await openExample(name);
    await vscode.commands.executeCommand('mahlstick.wallOfPlans');
    const [wall] = await eventually('the wall', () => (pages().length === 1 ? pages() : undefined));
    assert.match(wall?.label ?? '', /^Wall of plans/);
    const { document } = await openExample(name);
    // It asks with a list, whose first entry is taken.
    const asked = vscode.commands.executeCommand('mahlstick.compareWithPlan', document.uri);
    const tabs = await eventually('the comparison', () => {
      void vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return pages().length === 2 ? pages() : undefined;
    });
    await asked;
    assert.include(
      tabs.map(({ label }) => label),
      `Compare ${other} with ${name}`,
    );
  });
});
