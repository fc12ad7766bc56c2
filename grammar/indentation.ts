/** How a line stands to the lines above it, told from indentation alone. */
export interface Level {
  /** 0 at the left margin. */
  readonly depth: number;
  /** Set when the indentation agrees with no open block, or mixes tabs and spaces within one. */
  readonly uneven?: { readonly expected: string; readonly because: 'no such block' | 'tabs and spaces' };
}

/** A tab goes on to the next multiple of this. */
const tabWidth = 4;

/** Deeper lines stand beside each other: the language is four levels deep, and text from strangers is not. */
export const deepestLevel = 32;

/** By depth: what nearly every line has. */
const even: readonly Level[] = Array.from({ length: deepestLevel }, (_, depth) => ({ depth }));

export function indentationOf(text: string): string {
  return /^\s*/.exec(text)?.[0] ?? '';
}

export function columnsOf(indentation: string): number {
  if (!indentation.includes('\t')) return indentation.length;
  let column = 0;
  for (const character of indentation) {
    column += character === '\t' ? tabWidth - (column % tabWidth) : 1;
  }
  return column;
}

interface OpenLevel {
  column: number;
  readonly indentation: string;
  /** A column between two blocks that was settled for this level. */
  settled?: number;
}

/** Follows the indentation of a document from line to line. */
export class Indentation {
  private readonly levels: OpenLevel[] = [];

  /** The levels open after the last line, outermost first: the column at which each stands. */
  get columns(): readonly number[] {
    return this.levels.map((level) => level.column);
  }

  /** What lines at the margin are indented by; unset before the first line. */
  get margin(): string | undefined {
    return this.levels[0]?.indentation;
  }

  /** Takes in the next line that is neither blank nor a comment. */
  next(indentation: string): Level {
    const column = columnsOf(indentation);
    const top = this.levels.at(-1);
    if (top === undefined || (column > top.column && column !== top.settled)) {
      if (this.levels.length < deepestLevel) return this.deepen(column, indentation);
    }
    while (this.levels.length > 1 && this.levelAt(-1).column > column && !this.fitsBelow(column)) {
      this.levels.pop();
    }
    return this.settle(column, indentation);
  }

  private deepen(column: number, indentation: string): Level {
    this.levels.push({ column, indentation });
    return even[this.levels.length - 1] as Level;
  }

  private levelAt(index: number): OpenLevel {
    const level = this.levels.at(index);
    if (level === undefined) throw new Error('no open level');
    return level;
  }

  /** Whether `column` lies between the two innermost levels and no nearer to the outer one. */
  private fitsBelow(column: number): boolean {
    const outer = this.levelAt(-2);
    if (outer.column >= column || outer.settled === column) return false;
    return this.levelAt(-1).column - column <= column - outer.column;
  }

  private settle(column: number, indentation: string): Level {
    const level = this.levelAt(-1);
    const depth = this.levels.length - 1;
    const expected = level.indentation;
    if (column === level.column) {
      if (indentation === level.indentation) return even[depth] as Level;
      return { depth, uneven: { expected, because: 'tabs and spaces' } };
    }
    if (column < level.column && depth === 0) level.column = column;
    else level.settled = column;
    return { depth, uneven: { expected, because: 'no such block' } };
  }
}
