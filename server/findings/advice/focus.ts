import { t } from '../../../grammar/index.js';
import type { Plan } from '../../plan/plan.js';
import { focusEdit } from '../edits.js';
import type { Fix } from '../finding.js';

/** The focal point on a crossing that words of the plan lead to; nothing where its line can't be written so. */
export function focusFix(plan: Plan, words: string | undefined): Fix | undefined {
  const edits = words === undefined ? undefined : focusEdit(plan, words);
  return words !== undefined && edits ? { title: t('Put the focal point on {0}', words), edits } : undefined;
}
