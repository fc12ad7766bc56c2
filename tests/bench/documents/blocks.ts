import { planOfLines } from './plan.js';

/**
 * What a plan of so many lines says, in the small block language of `contestants/bare-blocks.ts`: the same words,
 * numbers and signs a line, with braces for indentation and `;` at the end of a statement. Closing braces end the line
 * before them, so there are as many lines.
 */
export function blocksOf(lines: number, seed = 1): string {
  const source = planOfLines(lines, seed).text.trimEnd().split('\n');
  const written: string[] = [];
  let depth = 0;
  let last = -1;
  source.forEach((line, index) => {
    const comment = line.search(/\s*\/\/.*$/);
    const statement = comment < 0 ? line.trimEnd() : line.slice(0, comment);
    if (statement.trim() === '') {
      written.push(line);
      return;
    }
    const level = (/^ */.exec(statement)?.[0].length ?? 0) / 2;
    if (last >= 0) {
      written[last] += level > depth ? ' {' : `;${' }'.repeat(depth - level)}`;
    }
    depth = level;
    last = index;
    written.push(statement);
  });
  if (last >= 0) written[last] += `;${' }'.repeat(depth)}`;
  // Comments come back behind what was written.
  return `${written.map((line, index) => withComment(line, source[index] ?? '')).join('\n')}\n`;
}

function withComment(written: string, source: string): string {
  const comment = source.search(/\/\/.*$/);
  return comment <= 0 || written.includes('//') ? written : `${written}  ${source.slice(comment)}`;
}
