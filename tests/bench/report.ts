import type { Spread } from './figures.js';

/** A table of what one part measured. */
export interface Table {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

/** What one part of the benchmark found: for readers, and as data. */
export interface Finding {
  readonly part: string;
  readonly tables: readonly Table[];
  readonly data: unknown;
}

/** `12.3 (11.9–13.0)`: the median and the quartiles; nothing where that could not be measured. */
export function written({ median, lower, upper }: Spread, digits = figures(median)): string {
  if (![median, lower, upper].every(Number.isFinite)) return '';
  return `${median.toFixed(digits)} (${lower.toFixed(digits)}–${upper.toFixed(digits)})`;
}

function figures(value: number): number {
  return value >= 100 ? 0 : value >= 10 ? 1 : value >= 0.1 ? 2 : 4;
}

/** The tables as Markdown, columns of one width. */
export function markdownOf(title: string, preface: readonly string[], findings: readonly Finding[]): string {
  const tables = findings.flatMap(({ tables: ofPart }) => ofPart.map(markdownTable));
  return `${[`# ${title}`, preface.map((line) => `- ${line}`).join('\n'), ...tables].join('\n\n')}\n`;
}

function markdownTable({ title, columns, rows, notes }: Table): string {
  const widths = columns.map((column, index) =>
    Math.max(column.length, ...rows.map((row) => row[index]?.length ?? 0)),
  );
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, index) => (index === 0 ? cell.padEnd(widths[index] ?? 0) : cell.padStart(widths[index] ?? 0))).join(' | ')} |`;
  const rule = `| ${widths.map((width, index) => (index === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
  return [
    `## ${title}`,
    '',
    line(columns),
    rule,
    ...rows.map(line),
    ...(notes.length > 0 ? ['', ...notes] : []),
  ].join('\n');
}
