import type { Level } from './indentation.js';
import type { Opening, SourceLine } from './lines.js';
import { t } from './localised.js';
import { alternatives } from './messages.js';
import { nearestWord } from './nearest.js';
import type { LineProblem } from './phrases.js';
import { opensBlock, statementIn, statementsIn, type Block, type StatementEntry } from './statements.js';
import type { Statement } from './syntax.js';

/** A line under which another stands. */
export interface Host {
  /** What the line is, or undefined when it could not be told; `plan` for the left margin. */
  readonly kind: 'plan' | Statement['kind'] | undefined;
  /** What that line stands under itself; unset for the left margin. */
  readonly parent: Host | undefined;
}

/** What is told of a line of points under a shape that takes none. */
export function pointsWithoutOutline({ word }: Opening): LineProblem {
  const message = t('Only `outline` and `smooth` go on with points on further lines.');
  return { start: word.start, end: word.end, code: 'misplaced statement', message };
}

/** The block whose statements are meant under `line`. */
function blockOf(line: Host): Block {
  for (let open: Host | undefined = line; open; open = open.parent) {
    if (open.kind !== undefined && open.kind !== 'plan' && opensBlock(open.kind)) return open.kind;
  }
  return 'plan';
}

function openingWords(block: Block): readonly string[] {
  return statementsIn(block).flatMap((entry) => entry.words.slice(0, 1));
}

/** The statement that a word may be meant for which opens none. */
export function guessedKind(opening: Opening, parent: Host): Statement['kind'] | undefined {
  const block = blockOf(parent);
  const nearest = nearestWord(opening.word.text, openingWords(block));
  return nearest === undefined ? undefined : statementIn(block, nearest)?.kind;
}

/** What is told of a line whose word opens no statement: the nearest word, as a fix, or those that can stand there. */
export function unknownStatement(opening: Opening, parent: Host): LineProblem {
  const { word } = opening;
  const block = blockOf(parent);
  const candidates = openingWords(block);
  const nearest = nearestWord(word.text, candidates);
  const { start, end } = word;
  const text = word.text.length > 40 ? `${word.text.slice(0, 39)}…` : word.text;
  if (nearest === undefined) {
    const message =
      block === 'plan' || candidates.length === 0
        ? t('No statement begins with `{0}`.', text)
        : t(
            'No statement begins with `{0}`. Under `{1}` can stand {2}.',
            text,
            block,
            alternatives(candidates),
          );
    return { start, end, code: 'unknown word', message };
  }
  return {
    start,
    end,
    code: 'unknown word',
    message: `${t('No statement begins with `{0}`.', text)} ${t('Did you mean {0}?', `\`${nearest}\``)}`,
    fix: { title: t('Change to {0}', `\`${nearest}\``), replacement: nearest },
  };
}

/** What is told of a line that begins with a sign. */
export function noStatement({ word }: Opening): LineProblem {
  const message = t('A line begins with a word that says what it is, such as `object` or `colour`.');
  return { start: word.start, end: word.end, code: 'unexpected text', message };
}

/** What is told of a statement that stands where it does not belong. */
export function misplaced({ word }: Opening, entry: StatementEntry, parent: Host): LineProblem {
  const homes = entry.in.filter((block) => block !== 'plan');
  const margin = entry.in.includes('plan') ? [t('at the left margin')] : [];
  const under = homes.length > 0 ? [t('under {0}', alternatives(homes))] : [];
  const here =
    parent.kind === 'plan' && !parent.parent ? t('at the left margin') : t('under {0}', `\`${parent.kind}\``);
  return {
    start: word.start,
    end: word.end,
    code: 'misplaced statement',
    message: t(
      '`{0}` belongs {1}, not {2}.',
      word.text,
      [...margin, ...under].reduce((one, other) => t('{0} or {1}', one, other)),
      here,
    ),
  };
}

/** What is told of a line under one that takes nothing. */
export function indentedTooFar({ word }: Opening, parent: Host): LineProblem {
  const message = t(
    'Nothing can stand under `{0}`; this line is read as standing beside it.',
    parent.kind ?? '',
  );
  return { start: word.start, end: word.end, code: 'uneven indentation', message };
}

/** What is told of a line that agrees with no block above. */
export function unevenIndentation(source: SourceLine, uneven: NonNullable<Level['uneven']>): LineProblem {
  const end = source.indentation.length;
  const message =
    uneven.because === 'tabs and spaces'
      ? t('This line is indented with other blanks (tabs or spaces) than the lines it stands beside.')
      : t('This indentation agrees with no line above; the line is read as part of the nearest block.');
  return {
    start: 0,
    end: end === 0 ? (source.opening?.word.end ?? 0) : end,
    code: 'uneven indentation',
    message,
    ...(end > 0 && { fix: { title: t('Align with the block'), replacement: uneven.expected } }),
  };
}
