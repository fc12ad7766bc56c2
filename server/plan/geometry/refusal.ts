import type { Reason } from '../../../grammar/index.js';

/** Carries a reason out of work that can't be stopped in the middle. */
export class Refusal extends Error {
  constructor(readonly reason: Reason) {
    super(reason.text);
  }
}
