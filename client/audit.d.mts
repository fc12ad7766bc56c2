/**
 * What `npm audit --json` prints, as far as it is read; without `vulnerabilities` where the registry gave no answer.
 */
export interface Report {
  readonly message?: string;
  readonly vulnerabilities?: Readonly<Record<string, Vulnerable>>;
}

export interface Vulnerable {
  readonly name: string;
  /** The folders in which it is installed. */
  readonly nodes: readonly string[];
  /** What is known against it, or the names of libraries of its own that something is known against. */
  readonly via: readonly (string | Advisory)[];
}

export interface Advisory {
  readonly title: string;
  readonly url: string;
  readonly severity: string;
  readonly range: string;
}

/**
 * What is known against libraries that are given away, a line each; what only tests and the build use is left out.
 * Throws for a report that is none, as from a registry that answers no such question.
 */
export function shippedAdvisories(report: Report, folders: readonly string[]): readonly string[];
