/**
 * Why something can't be had or taken, with its figures and names apart, to be told in the language that is spoken
 * then. Plain data, so it crosses threads. Like `marked`, apart from what tells it.
 */
export interface Reason {
  /** English, `marked`; whether it is a sentence is said where it is taken. */
  readonly text: string;
  /** What stands in the places `{0}`, `{1}` of the text. */
  readonly values: readonly (string | number | Reason)[];
}

export function reasonOf(text: string, ...values: Reason['values']): Reason {
  return { text, values };
}
