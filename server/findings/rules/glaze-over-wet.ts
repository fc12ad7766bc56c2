import type { Rule } from '../finding.js';
import { meetings } from '../seen/meetings.js';
import { waitingFinding } from './over-wet-paint.js';

const ID = 'glaze over wet';

export const glazeOverWet: Rule = {
  id: ID,
  severity: 'warning',
  chapter: 'sittings',
  perObject: true,
  summary: 'A glaze goes over paint that is not dry to the touch yet.',
  explanation:
    'A glaze is a transparent film that is seen through to the layer below. Over wet paint it is no glaze but a mixture: it lifts the colour below and turns to mud.',
  formula: 'day of the glaze < day of the layer below + days to dry, as for over wet paint',
  source: 'common practice, no source; days of paints as for over wet paint',
  check: (plan, measures) =>
    meetings(plan, measures, ID, 'glaze over wet').map((meeting) =>
      waitingFinding(plan, measures.schedule, meeting),
    ),
};
