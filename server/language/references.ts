import type { Location, Position } from 'vscode-languageserver-types';
import { nameUnder, occurrencesOf } from './family.js';
import type { KnownPlan, Surroundings } from './library.js';
import { knownPart, partUnder, rangeOfPart, usesOfPart } from './parts.js';
import { rangeOf } from './text.js';

/**
 * Every place that means what the name under the caret means, in this plan and in those that it builds on or that build
 * on it; of a part of an SVG file, every plan that takes it.
 *
 * @param withDefinition also where it is defined
 */
export function references(
  plan: KnownPlan,
  { line, character }: Position,
  around: Surroundings,
  withDefinition: boolean,
): readonly Location[] {
  const part = partUnder(plan, line, character);
  if (part !== undefined) {
    const known = withDefinition ? knownPart(plan, part, around) : undefined;
    return [
      ...(known?.at === undefined ? [] : [{ uri: known.file.uri, range: rangeOfPart(known, known.at) }]),
      ...usesOfPart(plan, part, around).map((use) => ({ uri: use.plan.uri, range: rangeOf(use.location) })),
    ];
  }
  const name = nameUnder(plan, line, character, around);
  if (name === undefined) return [];
  return occurrencesOf(plan, name, around)
    .filter(({ defines }) => withDefinition || !defines)
    .map((occurrence) => ({ uri: occurrence.plan.uri, range: rangeOf(occurrence.location) }));
}
