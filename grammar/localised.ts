import type { Reason } from './reason.js';

export { marked } from './marked.js';
/**
 * Sentences of another language by the English ones that the sources hold, as in the bundles of VS Code: `{0}` stands
 * for the first argument, in the English sentence as in the other.
 */
export type Sentences = Readonly<Record<string, string>>;

let spoken: Sentences | undefined;

/**
 * Does some work in a language, or in English without one. What that puts off until later is said in the language that
 * is spoken then, so it has to take `spokenNow` with it.
 */
export function speaking<T>(sentences: Sentences | undefined, work: () => T): T {
  const before = spoken;
  spoken = sentences;
  try {
    return work();
  } finally {
    spoken = before;
  }
}

/** From now on everything is said in a language, or in English without one: for a program that speaks one alone. */
export function speak(sentences: Sentences | undefined): void {
  spoken = sentences;
}

/** The language that is spoken; none for English. */
export function spokenNow(): Sentences | undefined {
  return spoken;
}

/**
 * A sentence, or a part of one, in the language that is spoken. Written out where it is said, for a test gathers them
 * all.
 */
export function t(english: string, ...values: readonly (string | number)[]): string {
  return said(english, ...values);
}

/** A kept sentence in the language that is spoken; as it is where that has none for it. */
export function said(english: string, ...values: readonly (string | number)[]): string {
  const sentence = (spoken !== undefined && Object.hasOwn(spoken, english) && spoken[english]) || english;
  if (values.length === 0) return sentence;
  return sentence.replace(/\{(\d)\}/gu, (place, index: string) => String(values[Number(index)] ?? place));
}

/** A reason in the language that is spoken; one that is a string is `said`. */
export function reasonInWords(reason: string | Reason): string {
  if (typeof reason === 'string') return said(reason);
  const { text, values } = reason;
  return said(text, ...values.map((value) => (typeof value === 'object' ? reasonInWords(value) : value)));
}
