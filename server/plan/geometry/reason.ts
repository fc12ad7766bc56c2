import { said } from '../../../grammar/index.js';

/** Why a shape can't be taken, kept to be told in the language that is spoken then. */
export interface Reason {
  /** English without a full stop, `marked` where it is written out. */
  readonly text: string;
  readonly values: readonly (string | number | Reason)[];
}

export function reasonOf(text: string, ...values: Reason['values']): Reason {
  return { text, values };
}

/** The reason without a full stop, in the language that is spoken. */
export function reasonInWords({ text, values }: Reason): string {
  return said(text, ...values.map((value) => (typeof value === 'object' ? reasonInWords(value) : value)));
}

/** Carries a reason out of work that can't be stopped in the middle. */
export class Refusal extends Error {
  constructor(readonly reason: Reason) {
    super(reason.text);
  }
}
