import type { Scene } from '../drawing/scene.js';
import { sceneChange } from '../drawing/scene-change.js';
import type { ChangedScene, SceneResult, TriedChange, WholeScene } from './protocol.js';

/** Previews that are looked at together; of more, some are told whole. */
const MOST = 8;

/** The drawings that a client was given last, so that it need only be told what is another in the next. */
export class GivenScenes {
  readonly #scenes = new Map<number, Scene>();
  #lastId = 0;

  /** @param known the drawing that the client has, see `NextSceneParams` */
  answer(result: SceneResult, known: number | undefined): WholeScene | ChangedScene {
    if (known === undefined) return result;
    const answer = this.tried(result, known);
    return { ...answer, id: this.#keep(result.scene, known) };
  }

  /** A drawing that is only tried: the client goes on having the one that it has. */
  tried(result: SceneResult, known: number | undefined): SceneResult | TriedChange {
    const before = known === undefined ? undefined : this.#scenes.get(known);
    if (before?.view !== result.scene.view) return result;
    return { version: result.version, change: sceneChange(before, result.scene) };
  }

  #keep(scene: Scene, instead: number): number {
    this.#lastId += 1;
    this.#scenes.delete(instead);
    this.#scenes.set(this.#lastId, scene);
    const [oldest] = this.#scenes.keys();
    if (this.#scenes.size > MOST && oldest !== undefined) this.#scenes.delete(oldest);
    return this.#lastId;
  }
}
