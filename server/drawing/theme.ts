import type { Face, Token, Weight } from './scene.js';

export const themeNames = [
  'light',
  'dark',
  'high contrast dark',
  'high contrast light',
  /** Takes its colours from the custom properties that VS Code sets on a page, so it follows the editor's theme. */
  'editor',
] as const;
export type ThemeName = (typeof themeNames)[number];

/** CSS colours. Text on `sheet` and `mount` keeps 4.5 : 1, marks that carry meaning 3 : 1. */
export type Theme = Readonly<Record<Token, string>>;

export const themes: Readonly<Record<ThemeName, Theme>> = {
  light: {
    sheet: '#eceae5',
    mount: '#fbfaf7',
    bevel: '#b9b4a8',
    ink: '#2a2723',
    quiet: '#635d54',
    rule: '#cfcabf',
    track: '#e3dfd6',
    wanted: '#2a2723',
    error: '#a3281c',
    warning: '#96590a',
    hint: '#2c5f86',
    onFinding: '#ffffff',
  },
  dark: {
    sheet: '#1d1c1a',
    mount: '#282623',
    bevel: '#57524a',
    ink: '#ece7dd',
    quiet: '#aca597',
    rule: '#4a463f',
    track: '#38352f',
    wanted: '#ece7dd',
    error: '#ff8d7e',
    warning: '#eab35a',
    hint: '#8ec3ea',
    onFinding: '#1d1c1a',
  },
  'high contrast dark': {
    sheet: '#000000',
    mount: '#000000',
    bevel: '#ffffff',
    ink: '#ffffff',
    quiet: '#ffffff',
    rule: '#ffffff',
    track: '#3d3d3d',
    wanted: '#ffff00',
    error: '#ff9c8f',
    warning: '#ffd166',
    hint: '#7fd4ff',
    onFinding: '#000000',
  },
  'high contrast light': {
    sheet: '#ffffff',
    mount: '#ffffff',
    bevel: '#000000',
    ink: '#000000',
    quiet: '#000000',
    rule: '#000000',
    track: '#dcdcdc',
    wanted: '#000000',
    error: '#8f0000',
    warning: '#6b3d00',
    hint: '#00458a',
    onFinding: '#ffffff',
  },
  editor: {
    sheet: 'var(--vscode-editor-background)',
    mount: 'var(--vscode-sideBar-background, var(--vscode-editor-background))',
    bevel: 'var(--vscode-contrastBorder, var(--vscode-editorRuler-foreground))',
    ink: 'var(--vscode-foreground)',
    quiet: 'var(--vscode-descriptionForeground)',
    rule: 'var(--vscode-contrastBorder, var(--vscode-editorRuler-foreground))',
    track: 'var(--vscode-editorWidget-background)',
    wanted: 'var(--vscode-foreground)',
    error: 'var(--vscode-editorError-foreground)',
    warning: 'var(--vscode-editorWarning-foreground)',
    hint: 'var(--vscode-editorInfo-foreground)',
    onFinding: 'var(--vscode-editor-background)',
  },
};

/** Stroke widths as parts of the scene's `em`. */
export const weightInEms: Readonly<Record<Weight, number>> = {
  hair: 0.045,
  fine: 0.07,
  medium: 0.11,
  heavy: 0.19,
  bold: 0.3,
};

export interface FaceStyle {
  readonly family?: string;
  readonly weight?: 'bold';
  readonly style?: 'italic';
}

/**
 * Of the whole sheet. Generic families stand last; for scripts that a family lacks viewers look through all fonts.
 * Names stand without quotes, which CSS allows for these, because resvg does not read lists with quoted names.
 */
export const textFamily =
  'Gill Sans, Gill Sans MT, Optima, Candara, Noto Sans, Liberation Sans, DejaVu Sans, sans-serif';
const serifFamily =
  'Iowan Old Style, Palatino, Palatino Linotype, Book Antiqua, TeX Gyre Pagella, Noto Serif, DejaVu Serif, serif';

export const faces: Readonly<Record<Face, FaceStyle>> = {
  text: {},
  strong: { weight: 'bold' },
  title: { family: serifFamily },
  note: { family: serifFamily, style: 'italic' },
};
