import { marked, said, spokenNow } from '../../grammar/localised.js';
import type { View } from '../../server/drawing/scene.js';

/** As a view is called in the toolbar of the preview and in the quick pick. */
export function viewLabel(view: View): string {
  return said(labels[view]);
}

/** As a view is called within a sentence: English has no capitals there, where other languages may. */
export function viewInSentence(view: View): string {
  return spokenNow() === undefined ? labels[view].toLowerCase() : viewLabel(view);
}

export function viewDescription(view: View): string {
  return said(descriptions[view]);
}

const labels: Readonly<Record<View, string>> = {
  drawing: marked('Drawing'),
  notan: marked('Notan'),
  values: marked('Values'),
  colour: marked('Colour'),
  squint: marked('Squint'),
  mirror: marked('Mirror'),
  path: marked('Path'),
  emphasis: marked('Emphasis'),
  transfer: marked('Transfer'),
  palette: marked('Palette'),
  sittings: marked('Sittings'),
  record: marked('Record'),
};

const descriptions: Readonly<Record<View, string>> = {
  drawing: marked('The plan in its colours, with division, leads and names.'),
  notan: marked('Flat tones: where the dark masses lie.'),
  values: marked('Greys at the steps of the value scale.'),
  colour: marked('Flat areas of colour by the part that each has to play.'),
  squint: marked('Blurred, as with half-shut eyes from a distance: which masses tell.'),
  mirror: marked('Left and right changed over, for a fresh eye.'),
  path: marked('Leads, stops and ways out: where the eye goes.'),
  emphasis: marked('Shaded by how strongly each place draws the eye.'),
  transfer: marked(
    'Lines without tones, with the grid that carries them over and the points to measure off.',
  ),
  palette: marked('The paints, what your colours are mixed of, and what the palette reaches.'),
  sittings: marked('The picture after each sitting, and the days that each layer takes to dry.'),
  record: marked(
    'The photograph after a sitting beside the plan, what is off in values and colours, and all sittings in a row.',
  ),
};
