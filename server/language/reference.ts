/** Words as they stand in codes and addresses: `value budget` is `value-budget`. */
export function slugOf(words: string): string {
  return words.replaceAll(' ', '-');
}

/** Where a statement is explained, by its keyword; nowhere for a server that has no reference. */
export function statementPage(reference: string | undefined, keyword: string): string | undefined {
  return page(reference, 'grammar/README.md', keyword);
}

/** Where a rule or a problem is explained, by its words; nowhere for a server that has no reference. */
export function findingPage(reference: string | undefined, words: string): string | undefined {
  return page(reference, 'server/findings/README.md', words);
}

function page(reference: string | undefined, file: string, words: string): string | undefined {
  return reference === undefined ? undefined : `${reference.replace(/\/$/u, '')}/${file}#${slugOf(words)}`;
}
