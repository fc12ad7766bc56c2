import type { Rule } from './finding.js';
import { awayFromPlan } from './rules/away-from-plan.js';
import { bareGround } from './rules/bare-ground.js';
import { centredFocus } from './rules/centred-focus.js';
import { chromaByPlane } from './rules/chroma-by-plane.js';
import { chromaOffFocus } from './rules/chroma-off-focus.js';
import { chromaOutOfReach } from './rules/chroma-out-of-reach.js';
import { colourBeyondThePalette } from './rules/colour-beyond-the-palette.js';
import { colourBudget } from './rules/colour-budget.js';
import { colourOutweighed } from './rules/colour-outweighed.js';
import { complementOffOpposite } from './rules/complement-off-opposite.js';
import { cueNotCarried } from './rules/cue-not-carried.js';
import { dayTaken } from './rules/day-taken.js';
import { discordOffQuarter } from './rules/discord-off-quarter.js';
import { dominantOffFocus } from './rules/dominant-off-focus.js';
import { dominantOutweighed } from './rules/dominant-outweighed.js';
import { doubtfulPhotograph } from './rules/doubtful-photograph.js';
import { dust } from './rules/dust.js';
import { emptyObject } from './rules/empty-object.js';
import { evenCount } from './rules/even-count.js';
import { evenTemperature } from './rules/even-temperature.js';
import { fastOverSlow } from './rules/fast-over-slow.js';
import { filledCorner } from './rules/filled-corner.js';
import { focusOffCrossing } from './rules/focus-off-crossing.js';
import { glazeOverWet } from './rules/glaze-over-wet.js';
import { halvedPicture } from './rules/halved-picture.js';
import { hazardousPigment } from './rules/hazardous-pigment.js';
import { hiddenObject } from './rules/hidden-object.js';
import { hiddenPrincipal } from './rules/hidden-principal.js';
import { idleSitting } from './rules/idle-sitting.js';
import { kissedEdge } from './rules/kissed-edge.js';
import { leadIntoCorner } from './rules/lead-into-corner.js';
import { leadPastFocus } from './rules/lead-past-focus.js';
import { leadsFromOneSide } from './rules/leads-from-one-side.js';
import { leadsTooClose } from './rules/leads-too-close.js';
import { leanOverFat } from './rules/lean-over-fat.js';
import { likeGaps } from './rules/like-gaps.js';
import { likeSizes } from './rules/like-sizes.js';
import { mergedNeighbours } from './rules/merged-neighbours.js';
import { missingPrimary } from './rules/missing-primary.js';
import { nearTangent } from './rules/near-tangent.js';
import { neverWorked } from './rules/never-worked.js';
import { noFocus } from './rules/no-focus.js';
import { noLeadingTone } from './rules/no-leading-tone.js';
import { noValueOrColour } from './rules/no-value-or-colour.js';
import { offBalance } from './rules/off-balance.js';
import { offTheCanvas } from './rules/off-the-canvas.js';
import { oilyRags } from './rules/oily-rags.js';
import { oneDominant } from './rules/one-dominant.js';
import { opaqueGlaze } from './rules/opaque-glaze.js';
import { overWetPaint } from './rules/over-wet-paint.js';
import { paintNotKnown } from './rules/paint-not-known.js';
import { paintedColour } from './rules/painted-colour.js';
import { paintedColourBudget } from './rules/painted-colour-budget.js';
import { paintedEmphasis } from './rules/painted-emphasis.js';
import { paintedValue } from './rules/painted-value.js';
import { paintedValueBudget } from './rules/painted-value-budget.js';
import { pastTheDueDate } from './rules/past-the-due-date.js';
import { pathOrder } from './rules/path-order.js';
import { planeOrder } from './rules/plane-order.js';
import { primaryWithoutASide } from './rules/primary-without-a-side.js';
import { rival } from './rules/rival.js';
import { sittingWithoutADay } from './rules/sitting-without-a-day.js';
import { sittingsOutOfOrder } from './rules/sittings-out-of-order.js';
import { sketchProportion } from './rules/sketch-proportion.js';
import { solvent } from './rules/solvent.js';
import { spots } from './rules/spots.js';
import { strongEdge } from './rules/strong-edge.js';
import { unmetMeans } from './rules/unmet-means.js';
import { unreadablePhotograph } from './rules/unreadable-photograph.js';
import { usualColourShares } from './rules/usual-colour-shares.js';
import { valueAgainstColour } from './rules/value-against-colour.js';
import { valueBudget } from './rules/value-budget.js';
import { varnishTooSoon } from './rules/varnish-too-soon.js';
import { wayOut } from './rules/way-out.js';

/** Every rule, what matters most to the picture first; findings are reported in this order. */
export const rules: readonly Rule[] = [
  noFocus,
  oneDominant,
  dominantOffFocus,
  rival,
  unmetMeans,
  valueBudget,
  colourBudget,
  usualColourShares,
  noLeadingTone,
  planeOrder,
  dominantOutweighed,
  offBalance,
  hiddenObject,
  hiddenPrincipal,
  offTheCanvas,
  emptyObject,
  centredFocus,
  focusOffCrossing,
  evenCount,
  likeSizes,
  likeGaps,
  nearTangent,
  kissedEdge,
  filledCorner,
  halvedPicture,
  leadPastFocus,
  leadIntoCorner,
  leadsFromOneSide,
  leadsTooClose,
  wayOut,
  pathOrder,
  strongEdge,
  spots,
  mergedNeighbours,
  valueAgainstColour,
  chromaOutOfReach,
  colourOutweighed,
  complementOffOpposite,
  discordOffQuarter,
  evenTemperature,
  chromaOffFocus,
  chromaByPlane,
  colourBeyondThePalette,
  paintNotKnown,
  opaqueGlaze,
  primaryWithoutASide,
  missingPrimary,
  pastTheDueDate,
  dayTaken,
  glazeOverWet,
  overWetPaint,
  varnishTooSoon,
  leanOverFat,
  fastOverSlow,
  neverWorked,
  idleSitting,
  sittingWithoutADay,
  sittingsOutOfOrder,
  unreadablePhotograph,
  paintedValueBudget,
  paintedColourBudget,
  paintedValue,
  paintedColour,
  paintedEmphasis,
  awayFromPlan,
  doubtfulPhotograph,
  cueNotCarried,
  noValueOrColour,
  bareGround,
  sketchProportion,
  hazardousPigment,
  solvent,
  oilyRags,
  dust,
];

const byId = new Map(rules.map((rule) => [rule.id, rule]));

export function ruleById(id: string): Rule | undefined {
  return byId.get(id);
}

/** `value budget` as it stands in codes and addresses: `value-budget`. */
export function ruleSlug(id: string): string {
  return id.replaceAll(' ', '-');
}
