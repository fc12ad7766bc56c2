import { parse } from '../../grammar/index.js';
import { compose } from '../../server/drawing/compose.js';
import { render } from '../../server/drawing/render.js';
import type { Scene } from '../../server/drawing/scene.js';
import { errorCount } from '../../server/language/errors.js';
import { takeSnapshot } from '../../server/language/snapshot.js';
import { Memory } from '../../server/measure/memory.js';
import { Mixer } from '../../server/measure/mixing/mixer.js';
import { OutlineCache } from '../../server/plan/outline-cache.js';
import type { FileAnswer } from '../../server/plan/plan.js';
import { element } from '../preview/elements.js';
import { counted, messagePieces } from '../preview/findings/findings.js';
import { findingNumbers } from '../preview/plate.js';

/** A page of Markdown may come from anywhere, so nothing beside it is read. */
const NO_FILES: FileAnswer = {
  ok: false,
  reason: 'Files are drawn only in the preview of a plan of its own, not in a page of Markdown.',
};

/**
 * A plan as a figure for a page of text: its drawing without mount and captions, and folded away below it what there is
 * to say of it and its words. Never throws for the sake of a text.
 *
 * @param count tells figures of one page apart
 * @param words what holds the plan's words; it becomes a part of the figure
 */
export function planFigure(text: string, count: number, words: Node): HTMLElement {
  const snapshot = takeSnapshot({
    uri: '',
    version: 0,
    text,
    parse: () => parse(text),
    reader: () => () => NO_FILES,
    outlines: new OutlineCache(),
    memory: new Memory(),
    // A page is to be read at once, and mixtures take a second: it tells none.
    mixer: Mixer.patient(),
  });
  const { plan, measures, findings } = snapshot;
  const drawing = element('div', { class: 'mahlstick-drawing' });
  const scene = compose(plan, measures, findings, 'drawing');
  render(drawing, scene, { theme: 'editor', part: 'picture', idPrefix: `mahlstick-${count}` });
  const errors = errorCount(snapshot);
  const title = plan.title?.value.trim() ?? '';
  const lost = errors === 0 ? '' : `${counted(errors, 'error')}: what can’t be read is not drawn.`;
  const told = findingItems(scene);
  return element(
    'figure',
    { class: 'mahlstick-plan' },
    drawing,
    ...[title, lost].filter((line) => line !== '').map((line) => element('figcaption', {}, line)),
    ...(told.length === 0
      ? []
      : [folded(counted(told.length, 'finding'), element('ul', { class: 'mahlstick-findings' }, ...told))]),
    folded('The plan in words', words),
  );
}

function folded(title: string, content: Node): HTMLElement {
  return element('details', {}, element('summary', {}, title), content);
}

/** What is marked in the drawing, by the numbers of its marks. */
function findingItems(scene: Scene): readonly HTMLElement[] {
  const numbers = findingNumbers(scene);
  return Object.entries(scene.subjects)
    .flatMap(([key, subject]) =>
      subject.kind === 'finding' ? [{ number: numbers.get(key), message: subject.message }] : [],
    )
    .sort((one, other) => Number(one.number ?? Infinity) - Number(other.number ?? Infinity))
    .map(({ number, message }) =>
      element(
        'li',
        {},
        ...(number === undefined ? [] : [element('b', {}, number), ' ']),
        ...messagePieces(message).map(({ text, quoted }) => (quoted ? element('q', {}, text) : text)),
      ),
    );
}
