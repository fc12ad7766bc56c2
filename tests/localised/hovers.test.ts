import { expect, it } from 'vitest';
import { german } from '../../server/entry/german.js';
import { rules } from '../../server/findings/rules.js';
import { everything, openPlan, planUri } from '../../server/language/test-support.js';

it('the hover of a rule is German, with its reasons and its source', () => {
  const told = rules.map(({ id, explanation, source }) => {
    const { service } = openPlan(`rule ${id} hint`, {
      ...everything,
      hoverMarkdown: false,
      language: german,
    });
    const hover = service.hover(planUri, { line: 0, character: 0 });
    const words = JSON.stringify(hover?.contents);
    return [explanation, source].every((english) =>
      words.includes(JSON.stringify(german[english]).slice(1, -1)),
    );
  });
  expect(told).not.toContain(false);
  expect(told.length).toBeGreaterThan(60);
});
