import { marked } from '../../grammar/marked.js';
import { reasonOf } from '../../grammar/reason.js';
import type { NoPhotograph, SizeAnswer, SquaredAnswer, Squaring } from '../measure/photograph/photographs.js';
import { idOf } from '../photograph/content.js';
import { AskedBy } from './asked-by.js';

/** A photograph squared up in one way. */
export interface Want {
  readonly squaring: Squaring;
  readonly askedBy: AskedBy;
  /** What was answered last. */
  given: SquaredAnswer | undefined;
}

/** A file, with what is asked of it and what is known of it. */
export interface AskedPicture {
  /** In the usual spelling. */
  readonly uri: string;
  /** As a plan has it. */
  readonly path: string;
  /** By what tells one squaring from another. */
  readonly wants: Map<string, Want>;
  readonly size: { readonly askedBy: AskedBy; given: SizeAnswer | undefined };
  /** To be read, for the first time or again. */
  isStale: boolean;
  content?: string | undefined;
  failure?: NoPhotograph | undefined;
  measured?: SizeAnswer | undefined;
  /** Nothing of it is measured until the painter asks again. */
  isStopped: boolean;
}

/** A plan from a stranger could name any number of files; what is measured of each takes some two megabytes. */
const PICTURES_PER_PLAN = 100;

/** The pictures that plans ask for, each for as long as one does. */
export class AskedPictures {
  /** By their URIs. */
  readonly #pictures = new Map<string, AskedPicture>();

  /** In the order in which they were first asked for. */
  get all(): readonly AskedPicture[] {
    return [...this.#pictures.values()];
  }

  known(uri: string): AskedPicture | undefined {
    return this.#pictures.get(uri);
  }

  /** The one for which a plan asks by its path; refused in words where the plan asks for too many. */
  named(uri: string, path: string, planUri: string): AskedPicture | NoPhotograph {
    const known = this.known(uri);
    if (known !== undefined) return known;
    if (this.all.filter((picture) => plansOf(picture).has(planUri)).length >= PICTURES_PER_PLAN)
      return {
        ok: false,
        reason: reasonOf(marked('A plan can name {0} pictures, and this one names more.'), PICTURES_PER_PLAN),
      };
    const picture: AskedPicture = {
      uri,
      path,
      wants: new Map(),
      size: { askedBy: new AskedBy(), given: undefined },
      isStale: true,
      isStopped: false,
    };
    this.#pictures.set(uri, picture);
    return picture;
  }

  /**
   * A plan has what it did not ask for in this computation or later no more.
   * @returns what no plan asks for now
   */
  letGo(planUri: string, before: number): readonly Want[] {
    const unwanted: Want[] = [];
    for (const picture of this.all) {
      picture.size.askedBy.letGo(planUri, before);
      for (const [key, want] of picture.wants) {
        want.askedBy.letGo(planUri, before);
        if (want.askedBy.plans.length > 0) continue;
        picture.wants.delete(key);
        unwanted.push(want);
      }
      if (plansOf(picture).size === 0) this.#pictures.delete(picture.uri);
    }
    return unwanted;
  }

  /** The ids of all squared-up pictures that are asked for, as far as their files have been read. */
  get ids(): ReadonlySet<string> {
    return new Set(
      this.all.flatMap(({ content, wants }) =>
        content === undefined ? [] : [...wants.values()].map(({ squaring }) => idOf(content, squaring)),
      ),
    );
  }
}

/** The plans that ask for something of a picture. */
export function plansOf({ wants, size }: AskedPicture): ReadonlySet<string> {
  return new Set([...size.askedBy.plans, ...[...wants.values()].flatMap(({ askedBy }) => askedBy.plans)]);
}
