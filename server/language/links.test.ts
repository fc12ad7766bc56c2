import { expect, test } from 'vitest';
import { everything, nothing, openPlan } from './test-support.js';

const text = `based on "../base.mahl"
object door
  shape from "parts/tram.svg" part "door"
sketch "sketches/two words.png"
sitting "a"
  photo "record/01.jpg"
sitting "b"
  photo "../../secret.jpg"
sitting "c"
  photo "https://example.org/a.jpg"
`;

function linked(abilities = everything): readonly (string | undefined)[][] {
  const { service, uri } = openPlan(text, abilities);
  const lines = text.split('\n');
  return service
    .links(uri)
    .map(({ range, target, tooltip }) => [
      lines[range.start.line]?.slice(range.start.character, range.end.character),
      target,
      tooltip,
    ]);
}

test('files below the workspace, and none elsewhere', () => {
  expect(linked()).toEqual([
    ['parts/tram.svg', 'file:///studio/parts/tram.svg', 'Open the SVG file'],
    ['sketches/two words.png', 'file:///studio/sketches/two%20words.png', 'Open the sketch'],
    ['record/01.jpg', 'file:///studio/record/01.jpg', 'Open the photograph'],
  ]);
});

test('a client that shows no tooltips of links is sent none', () => {
  expect(linked(nothing).map(([, , tooltip]) => tooltip)).toEqual([undefined, undefined, undefined]);
});

test('the file alone is the link, whatever quotes its name stands in', () => {
  const marked = 'sketch “the "great" door.png”';
  const { service, uri } = openPlan(marked);
  const [link] = service.links(uri);
  expect(marked.slice(link?.range.start.character, link?.range.end.character)).toBe('the "great" door.png');
});
