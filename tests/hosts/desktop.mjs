// @ts-check
import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { onPath } from './chromium.mjs';

/**
 * Finds the program of an installed desktop VS Code: not its command line `code`, which returns before the window
 * closes.
 * @returns {string | undefined} nothing without `code` on the PATH, without a screen, or if MAHLSTICK_VSCODE is
 *   `stand-in`
 */
export function findDesktop() {
  const screen = process.platform !== 'linux' || process.env['DISPLAY'] || process.env['WAYLAND_DISPLAY'];
  const command = onPath('code');
  if (process.env['MAHLSTICK_VSCODE'] === 'stand-in' || !screen || command === undefined) return undefined;
  const bin = path.dirname(realpathSync(command));
  return [path.join(bin, '../code'), path.join(bin, '../../../MacOS/Electron')].find(existsSync);
}
