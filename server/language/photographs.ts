import type {
  NoPhotograph,
  Photographs,
  SizeAnswer,
  SquaredAnswer,
  Squaring,
} from '../measure/photograph/photographs.js';
import { idOf } from '../photograph/content.js';
import { AskedBy, Computations } from './asked-by.js';
import { type AskedPicture, AskedPictures, plansOf } from './asked-pictures.js';
import { contains, resolvePath, usualSpelling } from './paths.js';
import { PhotographWork, type PhotographWorkHost } from './photograph-work.js';
import { PictureAnswers } from './picture-answers.js';

export interface PlanPhotographsHost extends PhotographWorkHost {
  readonly folders: () => readonly string[];
  /** These plans were given another answer than they would be given now. */
  readonly changed: (planUris: readonly string[]) => void;
  /** Changed files below the folders are told of. */
  readonly isTold: boolean;
  /** How long it is waited for more to change before anything is read. */
  readonly settleMilliseconds?: number;
}

export interface AskedPhotographs extends Photographs {
  /**
   * The same for a text that is only tried: it is answered with what is known, and nothing is read or measured for it.
   */
  readonly aside: Photographs;
}

/** Programs write a photograph in several goes, and painters a corner in several keys. */
export const SETTLE_MILLISECONDS = 200;

/**
 * The photographs and sketches that open plans name. A plan asks and is answered at once, with `undefined` while a
 * picture is on its way; it is told when asking again would give another answer. One file is read and measured at a
 * time, that of the plan edited last first. What was measured is kept by the content of the file, so neither a new name
 * nor another line of the plan has it measured again.
 */
export class PlanPhotographs {
  readonly #host: PlanPhotographsHost;
  readonly #pictures = new AskedPictures();
  readonly #answers = new PictureAnswers();
  readonly #work: PhotographWork;
  readonly #computations = new Computations();
  /** The plan edited last is the last. */
  readonly #edited = new Set<string>();

  constructor(host: PlanPhotographsHost) {
    this.#host = host;
    this.#work = new PhotographWork({
      ...host,
      pictures: this.#pictures,
      answers: this.#answers,
      edited: this.#edited,
      known: (pictures) => this.#tell(pictures),
      settleMilliseconds: host.settleMilliseconds ?? SETTLE_MILLISECONDS,
    });
  }

  /** What one computation of a plan asks. What was asked for in neither this nor the last one is let go. */
  photographsFor(planUri: string): AskedPhotographs {
    let computation: number | undefined;
    const begun = (): number => {
      if (computation === undefined) {
        computation = this.#computations.begin(planUri);
        this.#letGo(planUri, computation - 1);
      }
      return computation;
    };
    return {
      squared: (squaring) => {
        // What is let go goes first: a file that nobody has asked for yet would go with it.
        const now = begun();
        const found = this.#named(planUri, squaring.path);
        return 'ok' in found ? found : this.#squared(found, squaring, planUri, now);
      },
      sizeOf: (path) => {
        const now = begun();
        const found = this.#named(planUri, path);
        return 'ok' in found ? found : this.#sizeOf(found, planUri, now);
      },
      aside: {
        squared: (squaring) => {
          const known = this.#known(planUri, squaring.path);
          return known && this.#answers.squared(known, squaring);
        },
        sizeOf: (path) => {
          const known = this.#known(planUri, path);
          return known && this.#answers.size(known);
        },
      },
    };
  }

  /** The text of a plan has changed: what it names is wanted first. */
  edited(planUri: string): void {
    this.#edited.delete(planUri);
    this.#edited.add(planUri);
  }

  /** Reads again what is known of these files, and measures them if they hold something else than before. */
  reread(uris: Iterable<string>): void {
    for (const uri of uris) {
      const picture = this.#pictures.known(usualSpelling(uri));
      if (picture !== undefined) this.#renew(picture);
    }
  }

  /** The painter has saved a plan: what was stopped goes on, and files of whose changes nobody tells are read again. */
  rereadFor(planUri: string): void {
    for (const picture of this.#pictures.all) {
      const isTold =
        this.#host.isTold && this.#host.folders().some((folder) => contains(folder, picture.uri));
      if (plansOf(picture).has(planUri) && (picture.isStopped || !isTold)) this.#renew(picture);
    }
  }

  /**
   * A plan that is closed needs its pictures no more; what was measured is kept a while, in case it is opened again.
   */
  forget(planUri: string): void {
    this.#letGo(planUri, Number.POSITIVE_INFINITY);
    this.#computations.forget(planUri);
    this.#edited.delete(planUri);
  }

  /** The painter wants no more to be measured for now. */
  stop(): void {
    this.#work.stop();
  }

  #known(planUri: string, path: string): AskedPicture | undefined {
    const target = resolvePath(planUri, path, this.#host.folders());
    return target.ok ? this.#pictures.known(usualSpelling(target.uri)) : undefined;
  }

  #named(planUri: string, path: string): AskedPicture | NoPhotograph {
    const target = resolvePath(planUri, path, this.#host.folders());
    return target.ok ? this.#pictures.named(usualSpelling(target.uri), path, planUri) : target;
  }

  #squared(
    picture: AskedPicture,
    squaring: Squaring,
    planUri: string,
    computation: number,
  ): SquaredAnswer | undefined {
    const key = idOf('', squaring);
    let want = picture.wants.get(key);
    if (want === undefined) {
      want = { squaring, askedBy: new AskedBy(), given: undefined };
      picture.wants.set(key, want);
      // Another line than the one that was stopped.
      picture.isStopped = false;
    }
    want.askedBy.add(planUri, computation);
    want.given = this.#answers.squared(picture, squaring);
    if (want.given === undefined) this.#work.wake();
    return want.given;
  }

  #sizeOf(picture: AskedPicture, planUri: string, computation: number): SizeAnswer | undefined {
    picture.size.askedBy.add(planUri, computation);
    picture.size.given = this.#answers.size(picture);
    if (picture.size.given === undefined) {
      // It was read before anybody asked how large it is.
      if (picture.content !== undefined) picture.isStale = true;
      this.#work.wake();
    }
    return picture.size.given;
  }

  #renew(picture: AskedPicture): void {
    picture.isStale = true;
    picture.isStopped = false;
    this.#work.wake();
  }

  /** Tells the plans that would now be answered otherwise. */
  #tell(pictures: readonly AskedPicture[]): void {
    const plans = new Set<string>();
    for (const picture of pictures) {
      for (const want of picture.wants.values()) {
        const answer = this.#answers.squared(picture, want.squaring);
        if (answer === undefined || answer === want.given) continue;
        want.given = answer;
        want.askedBy.plans.forEach((plan) => plans.add(plan));
      }
      const size = this.#answers.size(picture);
      if (size === undefined || isSameSize(size, picture.size.given)) continue;
      picture.size.given = size;
      picture.size.askedBy.plans.forEach((plan) => plans.add(plan));
    }
    if (plans.size > 0) this.#host.changed([...plans]);
  }

  #letGo(planUri: string, before: number): void {
    this.#work.letGo(this.#pictures.letGo(planUri, before));
  }
}

function isSameSize(one: SizeAnswer, other: SizeAnswer | undefined): boolean {
  if (one.ok && other?.ok === true) return one.width === other.width && one.height === other.height;
  return one === other;
}
