// @ts-check
// eslint-disable-next-line @typescript-eslint/no-require-imports -- VS Code 1.91 loads extensions as CommonJS
const { commands, window } = require('vscode');

/** Called by VS Code as soon as a plan is open: shows its preview once, and leaves the cursor in the text. */
exports.activate = async () => {
  const editor = window.activeTextEditor ?? window.visibleTextEditors[0];
  await commands.executeCommand('mahlstick.openPreview');
  if (editor !== undefined) await window.showTextDocument(editor.document, editor.viewColumn);
};
