import type { Severity } from '../findings/finding.js';

const ranks: Readonly<Record<Severity, number>> = { error: 0, warning: 1, hint: 2 };

/**
 * What is said of a plan in the order in which it is told everywhere: by the numbers in the picture, in the preview's
 * list, by the command line and to editors. Errors come first, because until one is mended part of the plan is not
 * read. Warnings come next: what the painter has set out to do goes before rules of thumb, so a hint never stands above
 * a warning, however much it matters to the picture. Of one severity the order given is kept, which for findings is
 * what matters most to the picture first. Lists that editors make themselves are told apart by severity in the same
 * way; VS Code's Problems sorts each part by place in the text.
 */
export function gravestFirst<T extends { readonly severity: Severity }>(told: readonly T[]): readonly T[] {
  return [...told].sort((a, b) => ranks[a.severity] - ranks[b.severity]);
}
