import { readFileSync } from 'node:fs';

/** The rows of a reference table of this folder, split at white space; lines that begin with `#` are left out. */
export function readReference(file: string): readonly (readonly string[])[] {
  return readFileSync(new URL(file, import.meta.url), 'utf8')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map((line) => line.trim().split(/\s+/));
}

/** A reference that is no table, as its bytes; what it is stands in the file of the same name ending in `.md`. */
export function readReferenceBytes(file: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(file, import.meta.url)));
}

/** One row of the Munsell renotation: x and y are for illuminant C, `reflectancePercent` is the Y of ASTM D1535. */
export interface Renotation {
  readonly hue: string;
  readonly value: number;
  readonly chroma: number;
  readonly x: number;
  readonly y: number;
  readonly reflectancePercent: number;
}

/** The 2,729 real colours of the renotation; see the head of `munsell-renotation.dat`. */
export function readRenotation(): readonly Renotation[] {
  const [, ...rows] = readReference('munsell-renotation.dat');
  return rows.map(([hue = '', ...figures]) => {
    const [value = NaN, chroma = NaN, x = NaN, y = NaN, fullScale = NaN] = figures.map(Number);
    return { hue, value, chroma, x, y, reflectancePercent: fullScale * 0.975 };
  });
}
