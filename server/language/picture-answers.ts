import { marked } from '../../grammar/marked.js';
import type { NoPhotograph, SizeAnswer, SquaredAnswer, Squaring } from '../measure/photograph/photographs.js';
import { idOf } from '../photograph/content.js';
import type { AskedPicture } from './asked-pictures.js';
import { KeptAnswers } from './kept-answers.js';

const stopped: NoPhotograph = {
  ok: false,
  reason: marked(
    'Measuring was stopped. It goes on when the plan is saved, or when this line or the photograph changes.',
  ),
};

/** What is known of the pictures that plans ask for: while a file is read again, what it held before still stands. */
export class PictureAnswers {
  readonly #kept = new KeptAnswers();

  /** `undefined` while it is on its way. */
  squared({ failure, content, isStopped }: AskedPicture, squaring: Squaring): SquaredAnswer | undefined {
    if (failure !== undefined) return failure;
    const known = content === undefined ? undefined : this.#kept.use(idOf(content, squaring));
    return known ?? (isStopped ? stopped : undefined);
  }

  /** `undefined` while it is on its way. */
  size({ failure, measured, isStopped }: AskedPicture): SizeAnswer | undefined {
    return failure ?? measured ?? (isStopped ? stopped : undefined);
  }

  /** Whether a picture is to be read, or measured in a way in which it has not been. */
  areWanting(picture: AskedPicture): boolean {
    if (picture.isStopped) return false;
    return (
      picture.isStale || [...picture.wants.values()].some(({ squaring }) => !this.squared(picture, squaring))
    );
  }

  /**
   * @param content of the file that was measured
   * @param wanted the ids of all that is asked for
   */
  keep(content: string, squaring: Squaring, answer: SquaredAnswer, wanted: ReadonlySet<string>): void {
    this.#kept.keep(idOf(content, squaring), answer, wanted);
  }
}
