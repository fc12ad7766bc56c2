import path from 'node:path';
import { standardInput } from './source.js';
import { CommandFailure } from './terminal.js';

/** Where a drawing goes, and as what. */
export type Target =
  | { readonly format: 'svg'; readonly file?: string }
  | { readonly format: 'png' | 'pdf'; readonly file: string };

export interface TargetOptions {
  readonly output?: string;
  readonly width?: number;
  readonly font?: readonly string[];
}

/** Decided before any work is done, so that a wrong ending costs nobody a wait. */
export function targetOf({ output, width, font = [] }: TargetOptions): Target {
  const toStandardOutput = output === undefined || output === standardInput;
  const ending = toStandardOutput ? '.svg' : path.extname(output).toLowerCase();
  if (ending !== '.svg' && ending !== '.png' && ending !== '.pdf') {
    const found = ending === '' ? 'has no ending' : `ends in ${ending}`;
    throw new CommandFailure(`${output ?? ''} ${found}; a drawing is written as .svg, .png or .pdf.`);
  }
  if (width !== undefined && ending !== '.png') {
    throw new CommandFailure(
      `--width counts the pixels of a .png; ${ending === '.svg' ? 'an' : 'a'} ${ending} has any size. Add -o NAME.png.`,
    );
  }
  if (font.length > 0 && ending !== '.pdf') {
    throw new CommandFailure(
      '--font is put into a .pdf; others use the fonts of the computer. Add -o NAME.pdf.',
    );
  }
  if (toStandardOutput) return { format: 'svg' };
  return { format: ending === '.svg' ? 'svg' : ending === '.png' ? 'png' : 'pdf', file: output };
}
