import { t } from '../../../grammar/index.js';
import type { PlanObject } from '../../plan/plan.js';
import type { Severity } from '../finding.js';

/** Whether the plan gives an object a part of its own in the picture. */
export function isPrincipal({ role }: Pick<PlanObject, 'role'>): boolean {
  return role === 'dominant' || role === 'secondary';
}

/** `` `jug` is dominant. `` */
export function roleTold(name: string, role: PlanObject['role']): string {
  switch (role) {
    case 'dominant':
      return t('{0} is dominant.', name);
    case 'secondary':
      return t('{0} is secondary.', name);
    default:
      return t('{0} is minor.', name);
  }
}

/** How grave it is that nothing of an object can be seen: only of a principal does the plan say that it is to be. */
export function gravityOfUnseen(object: Pick<PlanObject, 'role'>): { readonly severity: Severity } {
  return { severity: isPrincipal(object) ? 'warning' : 'hint' };
}
