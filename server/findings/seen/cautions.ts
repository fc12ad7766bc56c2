import { said, t } from '../../../grammar/index.js';
import { CAUTION_FIRST, cautionsOf, type CautionSubject } from '../../plan/materials/cautions.js';
import type { Plan } from '../../plan/plan.js';
import type { RuleFinding } from '../finding.js';

/** The cautions of a plan about some hazards, each told once, at the first material that calls for it. */
export function cautionsTold(
  plan: Plan,
  isAbout: (about: CautionSubject) => boolean,
): readonly RuleFinding[] {
  return cautionsOf(plan)
    .filter(({ about }) => isAbout(about))
    .map(({ text, locations: [location, ...others] }) => ({
      message: text,
      advice: said(CAUTION_FIRST),
      location,
      related: others.map((place) => ({ location: place, message: t('So it is here.') })),
    }));
}
