import { assert } from 'chai';
import * as vscode from 'vscode';
import { eventually, exampleNames, openExample } from './examples.js';

/** The complement stands 61 degrees off the opposite of the dominant; half of the ground shows; two are principal. */
const plan = `canvas 40 x 30 cm
  ground #b9a48a
focus upper right
colour slate #3f4a56 dominant
colour cream #e6d9bd complement
object cloth, secondary
  plane background
  shape rectangle (0, 18) to lower right corner
  colour slate
object bowl, dominant
  shape rectangle (22, 6) to (32, 20)
  colour cream
`;

const { Information, Warning } = vscode.DiagnosticSeverity;
const usual = { 'even-count': Information, 'bare-ground': Information, 'complement-off-opposite': Warning };

/** How each of the three rules is told now, those that are not told left out. */
function told(uri: vscode.Uri): Readonly<Record<string, vscode.DiagnosticSeverity>> {
  const all = vscode.languages
    .getDiagnostics(uri)
    .map(({ code, severity }) => [String(typeof code === 'object' ? code.value : code), severity] as const);
  return Object.fromEntries(all.filter(([code]) => code in usual));
}

function setRules(rules: unknown): Thenable<void> {
  return vscode.workspace
    .getConfiguration('mahlstick')
    .update('rules', rules, vscode.ConfigurationTarget.Workspace);
}

describe('how rules are told', () => {
  let document: vscode.TextDocument;

  before(async () => {
    const [name] = await exampleNames();
    assert.isDefined(name, 'the folder has a plan');
    ({ document } = await openExample(name));
    const all = document.validateRange(new vscode.Range(0, 0, document.lineCount, 0));
    const edit = new vscode.WorkspaceEdit();
    edit.replace(document.uri, all, plan);
    assert.isTrue(await vscode.workspace.applyEdit(edit));
  });
  after(async () => {
    await setRules(undefined);
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  });

  async function untilTold(wanted: ReturnType<typeof told>): Promise<void> {
    const same = () => {
      const now = told(document.uri);
      return Object.keys(now).length === Object.keys(wanted).length &&
        Object.entries(wanted).every(([code, severity]) => now[code] === severity)
        ? true
        : undefined;
    };
    await eventually(JSON.stringify(wanted), same).catch((error: unknown) => {
      assert.deepEqual(told(document.uri), wanted, String(error));
    });
  }

  async function insert(line: number, text: string): Promise<void> {
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, new vscode.Position(line, 0), text);
    assert.isTrue(await vscode.workspace.applyEdit(edit));
  }

  it('is as the rules themselves have it while nothing is set', () => untilTold(usual));

  it('follows the setting of the workspace at once: off, another severity, another limit', async () => {
    await setRules({
      'even count': 'off',
      'bare ground': 'warning',
      'complement off opposite': { severity: 'hint', limit: 40 },
    });
    await untilTold({ 'bare-ground': Warning, 'complement-off-opposite': Information });
    await setRules({ 'complement off opposite': { limit: 70 } });
    await untilTold({ 'even-count': Information, 'bare-ground': Information });
    await setRules(undefined);
    await untilTold(usual);
  });

  it('is said by the plan before the setting', async () => {
    await setRules({ 'complement off opposite': 'off' });
    await untilTold({ 'even-count': Information, 'bare-ground': Information });
    await insert(5, 'rule complement off opposite warning limit 40 degrees\n');
    await untilTold(usual);
    await setRules(undefined);
    const reason = 'allow even count because "one serves the other"\n';
    await insert(6, `rule complement off opposite limit 70 degrees\n${reason}`);
    await untilTold({ 'bare-ground': Information });
  });
});
