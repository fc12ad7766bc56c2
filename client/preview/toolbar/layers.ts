import { marked, said, t } from '../../../grammar/localised.js';
import type { Handling, Mark, Scene, SceneLayer, Subject } from '../../../server/drawing/scene.js';
import { isGridKey } from '../../../server/drawing/transfer/grid-key.js';
import { isGlazeKey } from '../../../server/drawing/picture/glaze-key.js';
import { inWords } from '../../../server/plan/problems.js';

/** What lies over the picture and can be taken off it. */
export const overlays = ['division', 'grid', 'names', 'leads', 'findings', 'glazes'] as const;
export type Overlay = (typeof overlays)[number];

/** As they are called on their buttons, and what each holds; kept to be `said`. */
export const overlayWords: Readonly<Record<Overlay, { readonly label: string; readonly holds: string }>> = {
  division: { label: marked('Division'), holds: marked('the division lines and the horizon') },
  grid: { label: marked('Grid'), holds: marked('the transfer grid') },
  names: { label: marked('Names'), holds: marked('the names of objects and what points to them') },
  leads: { label: marked('Leads'), holds: marked('the leads') },
  findings: { label: marked('Findings'), holds: marked('the marks of findings') },
  glazes: { label: marked('Glazes'), holds: marked('the glazes over body colours') },
};

/**
 * The scene without what is hidden: nothing of it is drawn, so nothing of it can be pointed at, gone to or taken hold
 * of, and its description says what is left out. Captions beside the picture stay.
 */
export function withoutHidden(scene: Scene, hidden: ReadonlySet<Overlay>): Scene {
  const left = overlays.filter((overlay) => hidden.has(overlay) && isThere(scene, overlay));
  if (left.length === 0) return scene;
  const isShown = (layer: SceneLayer) => (mark: Mark) =>
    !left.some((overlay) => belongs(mark, layer, scene, overlay));
  return {
    ...scene,
    description: `${scene.description} ${t(
      'Hidden in the drawing: {0}.',
      inWords(left.map((overlay) => said(overlayWords[overlay].holds))),
    )}`,
    layers: scene.layers.map((layer) => ({ ...layer, marks: layer.marks.filter(isShown(layer)) })),
    ...(scene.handling === undefined ? {} : { handling: withoutGrips(scene.handling, hidden) }),
  };
}

/** Whether a drawing has anything of a kind. */
export function isThere(scene: Scene, overlay: Overlay): boolean {
  return scene.layers.some((layer) => layer.marks.some((mark) => belongs(mark, layer, scene, overlay)));
}

function belongs(mark: Mark, { name }: SceneLayer, { subjects }: Scene, overlay: Overlay): boolean {
  const kind: Subject['kind'] | undefined =
    mark.subject === undefined ? undefined : subjects[mark.subject]?.kind;
  switch (overlay) {
    case 'division':
      return name === 'construction' && (kind === 'division' || kind === 'horizon');
    case 'grid':
      return isGridKey(mark.key);
    case 'leads':
      // What is written at a lead goes with it.
      return (name === 'construction' || name === 'names') && kind === 'lead';
    case 'names':
      // The figures of shading have no subject: without them it would say nothing.
      return name === 'names' && kind !== undefined && kind !== 'grid';
    case 'findings':
      // A sign of one may stand beside the picture too.
      return name === 'findings' || kind === 'finding';
    case 'glazes':
      // What the legend says of glazes is no longer so.
      return name === 'picture' ? isGlazeKey(mark.key) : isGlazeLegend(mark.key, name);
  }
}

function isGlazeLegend(key: string, name: SceneLayer['name']): boolean {
  return name === 'captions' && key.startsWith('legend:glaze:');
}

function withoutGrips(handling: Handling, hidden: ReadonlySet<Overlay>): Handling {
  if (!hidden.has('leads')) return handling;
  const grips = handling.grips.filter(({ kind }) => kind !== 'lead' && kind !== 'lead place');
  return { ...handling, grips };
}
