import fc from 'fast-check';
import { views } from '../../../server/drawing/scene.js';
import { anyText, typedPlan } from '../../grammar/texts.js';
import { spoiltPlan } from '../../support/spoilt-plans.js';
import { campaign } from '../campaign.js';
import { takeTheWholeWay } from '../whole-way.js';

/** Signs that open what others close, over and over. */
const nested = fc
  .tuple(fc.constantFrom('(', '"', '\\"', 'rgb(', '//', '- ', '9', '½', ' of ', '#'), fc.nat(4_000))
  .chain(([sign, count]) =>
    typedPlan.map((text) => `${text}\nobject a\n  shape outline ${sign.repeat(count)}`),
  );

const text = fc.oneof(
  { weight: 4, arbitrary: typedPlan },
  { weight: 2, arbitrary: anyText },
  { weight: 2, arbitrary: spoiltPlan },
  { weight: 1, arbitrary: nested },
);

/** Any text at all, and plans as somebody may have typed them. */
export const texts = campaign({
  runs: 8,
  cases: fc.record({ text, view: fc.constantFrom(...views) }),
  hold: ({ text: written, view }) => takeTheWholeWay(written, view),
});
