import { cells } from './display.js';

/** Columns of a terminal that text is set in. */
const COLUMNS = 80;

/** Words over as many lines as they take, the first behind `first` and the others indented as it is wide. */
export function wrapped(text: string, first = ''): string {
  const indent = ' '.repeat(cells(first));
  const lines: string[] = [];
  let line = first;
  let isEmpty = true;
  for (const word of text.split(' ')) {
    const longer = isEmpty ? `${line}${word}` : `${line} ${word}`;
    if (!isEmpty && cells(longer) > COLUMNS) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
    isEmpty = false;
  }
  lines.push(line);
  return lines.map((each) => `${each.trimEnd()}\n`).join('');
}
