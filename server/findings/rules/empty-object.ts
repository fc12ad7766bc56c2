import { t } from '../../../grammar/index.js';
import type { Rule, RuleFinding } from '../finding.js';
import { hasFault } from '../limits.js';
import { gravityOfUnseen } from '../words/principals.js';
import { quoted } from '../words/words.js';

export const emptyObject: Rule = {
  id: 'empty object',
  severity: 'hint',
  chapter: 'objects',
  perObject: true,
  summary: 'An object has no shape, or a shape without area.',
  explanation:
    'Areas, values and colours are measured from shapes. An object without one is not drawn and counts for nothing. It is a warning where the object is dominant or secondary, for then the plan gives it a part in the picture.',
  formula: 'area of the shape = 0',
  source: 'common practice, no source',
  check: (plan, measures) =>
    plan.coveringOrder.flatMap((index, position): RuleFinding[] => {
      const object = plan.objects[index];
      const empty = measures.areas.layers[position]?.ownArea === 0;
      if (!object || !empty || hasFault(plan, object)) return [];
      return [
        {
          message: object.shapeLocation
            ? t('The shape of {0} holds no area, so nothing of it is drawn.', quoted(object.name))
            : t('{0} has no shape yet, so it is not drawn.', quoted(object.name)),
          advice: object.shapeLocation
            ? t('An outline needs three points that do not lie on one line.')
            : t('Write one under it, such as `shape rectangle 12 x 8`.'),
          ...gravityOfUnseen(object),
          location: object.shapeLocation ?? object.location,
          objects: [index],
        },
      ];
    }),
};
