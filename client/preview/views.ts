import type { View } from '../../server/drawing/scene.js';

/** As the views are called in the toolbar of the preview and in the quick pick. */
export const viewLabels: Readonly<Record<View, string>> = {
  drawing: 'Drawing',
  notan: 'Notan',
  values: 'Values',
  colour: 'Colour',
  squint: 'Squint',
  mirror: 'Mirror',
  path: 'Path',
  emphasis: 'Emphasis',
  transfer: 'Transfer',
  palette: 'Palette',
  sittings: 'Sittings',
  record: 'Record',
};

export const viewDescriptions: Readonly<Record<View, string>> = {
  drawing: 'The plan in its colours, with division, leads and names.',
  notan: 'Flat tones: where the dark masses lie.',
  values: 'Greys at the steps of the value scale.',
  colour: 'Flat areas of colour by the part that each has to play.',
  squint: 'Blurred, as with half-shut eyes from a distance: which masses tell.',
  mirror: 'Left and right changed over, for a fresh eye.',
  path: 'Leads, stops and ways out: where the eye goes.',
  emphasis: 'Shaded by how strongly each place draws the eye.',
  transfer: 'Lines without tones, with the grid that carries them over and the points to measure off.',
  palette: 'The paints, what your colours are mixed of, and what the palette reaches.',
  sittings: 'The picture after each sitting, and the days that each layer takes to dry.',
  record:
    'The photograph after a sitting beside the plan, what is off in values and colours, and all sittings in a row.',
};
