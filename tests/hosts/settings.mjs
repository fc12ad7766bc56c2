// @ts-check
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** @typedef {'light' | 'dark' | 'high-contrast' | 'high-contrast-light'} Theme */

/**
 * Names of the themes in VS Code 1.91, which newer versions still know.
 * @type {Readonly<Record<Theme, string>>}
 */
const themeNames = {
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  'high-contrast': 'Default High Contrast',
  'high-contrast-light': 'Default High Contrast Light',
};

/**
 * @param {string | undefined} name
 * @returns {Theme} `light` for none
 * @throws {Error} for a name that is no theme of ours
 */
export function themeNamed(name = 'light') {
  if (Object.hasOwn(themeNames, name)) return /** @type {Theme} */ (name);
  throw new Error(`No theme '${name}'; there are: ${Object.keys(themeNames).join(', ')}`);
}

/**
 * Writes `settings.json` for a quiet editor: no telemetry, updates, AI features, welcome pages or questions.
 * @param {string} folder made if needed: `<user data>/User` or `<workspace>/.vscode`
 * @param {Theme} [theme]
 * @param {Readonly<Record<string, unknown>>} [others] settings besides, or instead
 */
export function writeSettings(folder, theme = 'light', others = {}) {
  const settings = {
    'workbench.colorTheme': themeNames[theme],
    'window.autoDetectColorScheme': false,
    'window.autoDetectHighContrast': false,
    'workbench.startupEditor': 'none',
    'workbench.reduceMotion': 'on',
    // A pointer that rests on a list would cover the entries below.
    'workbench.hover.delay': 600_000,
    'editor.minimap.enabled': false,
    'editor.cursorBlinking': 'solid',
    'git.enabled': false,
    'workbench.tips.enabled': false,
    'workbench.welcomePage.walkthroughs.openOnInstall': false,
    'workbench.secondarySideBar.defaultVisibility': 'hidden',
    'chat.disableAIFeatures': true,
    'chat.commandCenter.enabled': false,
    'telemetry.telemetryLevel': 'off',
    'extensions.autoCheckUpdates': false,
    'extensions.autoUpdate': false,
    'extensions.ignoreRecommendations': true,
    'update.mode': 'none',
    'update.showReleaseNotes': false,
    'git.openRepositoryInParentFolders': 'always',
    'files.exclude': { '**/.vscode': true },
    ...others,
  };
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'settings.json'), `${JSON.stringify(settings, null, 2)}\n`);
}
