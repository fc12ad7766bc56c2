import type { FrameLocator, Page } from 'playwright-core';
import type { Theme } from './settings.mjs';

/** Which editor is opened, and on what. */
export interface WorkbenchOptions {
  /** The extension host: VS Code of today with node, or the oldest supported VS Code with a web worker. */
  readonly host: 'node' | 'web';
  /** A folder of plans, which is copied first; the examples if left out. */
  readonly plans?: string;
  /**
   * The folder of the extension or, in the node host, its `.vsix`; if left out that which MAHLSTICK_EXTENSION names, or
   * this repository.
   */
  readonly extension?: string;
  readonly theme?: Theme;
  /** That extensions are told the editor has, such as `de`; its own words stay English. */
  readonly language?: string;
  /** In the node host, the folder is not trusted until it is said to be, and git is on. */
  readonly restricted?: boolean;
  /** Of the window, in CSS pixels. */
  readonly size?: { readonly width: number; readonly height: number };
}

/** A VS Code with the extension in a headless browser. Every wait is bounded and fails with what it waited for. */
export interface Workbench {
  /** For what the functions below do not do. */
  readonly page: Page;
  /** What the browser has asked for since the editor was opened, for pages, frames and workers alike. */
  readonly requests: readonly { readonly address: string; readonly method: string }[];
  /** The copy of the plans. In the node host edits are written there; in the web host they stay in the page. */
  readonly folder: string;
  /** The names of the plans in it, in the order of the alphabet; at least one. */
  readonly plans: readonly [string, ...string[]];
  /** Opens a file of the folder by its name and waits until its text is shown and has the focus. */
  openFile(name: string): Promise<void>;
  /** Runs a command by its title in the palette, such as `View: Close Editor`. */
  runCommand(title: string): Promise<void>;
  /** Takes an entry of the list that a command asks with, by its words. */
  pick(entry: string): Promise<void>;
  /** Waits until a webview shows something. */
  preview(): Promise<FrameLocator>;
  /** Changes the theme, in the node host only: the web host does not see files change. */
  setTheme(theme: Theme): void;
  /** Writes the window as PNG. */
  screenshot(file: string): Promise<void>;
  close(): Promise<void>;
}

/** Starts an editor and waits until it can be used. */
export function openWorkbench(options: WorkbenchOptions): Promise<Workbench>;
