import type { View } from '../../server/drawing/scene.js';

/** As the views are called in the toolbar of the preview and in the quick pick. */
export const viewLabels: Readonly<Record<View, string>> = {
  drawing: 'Drawing',
  notan: 'Notan',
  values: 'Values',
  colour: 'Colour',
};

export const viewDescriptions: Readonly<Record<View, string>> = {
  drawing: 'The plan in its colours, with division, leads and names.',
  notan: 'Flat tones: where the dark masses lie.',
  values: 'Greys at the steps of the value scale.',
  colour: 'Flat areas of colour by the part that each has to play.',
};
