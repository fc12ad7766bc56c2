import { createToken, EmbeddedActionsParser, Lexer } from 'chevrotain';
import { jsonOf } from '../documents/records.js';
import type { Contestant } from './contestant.js';

const Space = createToken({ name: 'Space', pattern: /\s+/, group: Lexer.SKIPPED });
const True = createToken({ name: 'True', pattern: /true/ });
const False = createToken({ name: 'False', pattern: /false/ });
const Null = createToken({ name: 'Null', pattern: /null/ });
const Open = createToken({ name: 'Open', pattern: /{/ });
const Close = createToken({ name: 'Close', pattern: /}/ });
const OpenList = createToken({ name: 'OpenList', pattern: /\[/ });
const CloseList = createToken({ name: 'CloseList', pattern: /]/ });
const Comma = createToken({ name: 'Comma', pattern: /,/ });
const Colon = createToken({ name: 'Colon', pattern: /:/ });
const Text = createToken({ name: 'Text', pattern: /"(?:[^\\"]|\\(?:[bfnrtv"\\/]|u[0-9a-fA-F]{4}))*"/ });
const Amount = createToken({ name: 'Amount', pattern: /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/ });
const tokens = [Space, Text, Amount, Comma, Colon, Open, Close, OpenList, CloseList, True, False, Null];

const lexer = new Lexer(tokens, { positionTracking: 'onlyOffset', ensureOptimizations: true });

class JsonParser extends EmbeddedActionsParser {
  constructor() {
    super(tokens, { recoveryEnabled: false });
    this.performSelfAnalysis();
  }

  private alternatives: { ALT: () => unknown }[] | undefined;

  readonly value = this.RULE('value', (): unknown =>
    this.OR(
      (this.alternatives ??= [
        { ALT: () => this.SUBRULE(this.record) },
        { ALT: () => this.SUBRULE(this.list) },
        { ALT: () => unquoted(this.CONSUME(Text).image) },
        { ALT: () => Number(this.CONSUME(Amount).image) },
        { ALT: () => this.CONSUME(True) && true },
        { ALT: () => this.CONSUME(False) && false },
        { ALT: () => this.CONSUME(Null) && null },
      ]),
    ),
  );

  readonly record = this.RULE('record', (): Record<string, unknown> => {
    const record: Record<string, unknown> = {};
    this.CONSUME(Open);
    this.MANY_SEP({
      SEP: Comma,
      DEF: () => {
        const key = unquoted(this.CONSUME(Text).image);
        this.CONSUME(Colon);
        record[key] = this.SUBRULE(this.value);
      },
    });
    this.CONSUME(Close);
    return record;
  });

  readonly list = this.RULE('list', (): unknown[] => {
    const list: unknown[] = [];
    this.CONSUME(OpenList);
    this.MANY_SEP({ SEP: Comma, DEF: () => void list.push(this.SUBRULE(this.value)) });
    this.CONSUME(CloseList);
    return list;
  });
}

function unquoted(image: string): string {
  return image.slice(1, -1).replace(/\\(["\\/])/g, '$1');
}

const parser = new JsonParser();

/** @returns what the text says, and how many problems it has */
export function readJson(text: string): { readonly value: unknown; readonly problems: number } {
  const { tokens: found, errors } = lexer.tokenize(text);
  parser.input = found;
  const value = parser.value();
  return { value, problems: errors.length + parser.errors.length };
}

/** A parser of JSON and nothing else, on the library that ours is made with. */
export const bareJson: Contestant = {
  name: 'chevrotain, bare JSON',
  does: 'parse',
  document: jsonOf,
  read: (text) => readJson(text).problems,
};
