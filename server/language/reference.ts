const repository = 'https://github.com/mahlstick/mahlstick/blob/main';

/** Words as they stand in codes and addresses: `value budget` is `value-budget`. */
export function slugOf(words: string): string {
  return words.replaceAll(' ', '-');
}

/** Where a statement is explained, by its keyword. */
export function statementPage(keyword: string): string {
  return `${repository}/grammar/README.md#${slugOf(keyword)}`;
}

/** Where a rule or a problem is explained, by its words. */
export function findingPage(words: string): string {
  return `${repository}/server/findings/README.md#${slugOf(words)}`;
}
