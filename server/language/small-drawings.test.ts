import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import type { CompletionItem } from 'vscode-languageserver-types';
import { everything, nothing, openPlan } from './test-support.js';

const PLAN = `canvas 80 x 50 cm
divide golden, armature
focus upper right
object jug, dominant
  shape ellipse 20 x 30 at focus
object mist
`;

function offered(line: string, abilities = everything): ReadonlyMap<string, CompletionItem> {
  const { service, uri, position, failures } = openPlan(`${PLAN}${line}`, abilities);
  const items = service.completions(uri, position);
  expect(failures).toEqual([]);
  return new Map(items.map((item) => [item.label, item]));
}

/** The paths of the drawing that an offer shows; throws where it shows none that can be read. */
function drawnBeside(item: CompletionItem | undefined): readonly string[] {
  const [, base64 = ''] =
    /!\[[^\]]*\]\(data:image\/svg\+xml;base64,([^)]*)\)/u.exec(JSON.stringify(item)) ?? [];
  const paths: string[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ attributes }) => {
    if (typeof attributes['d'] === 'string') paths.push(attributes['d']);
  });
  parser.write(atob(base64)).close();
  return paths;
}

describe('a small drawing beside what is offered', () => {
  it('shows how each division lies on the canvas of the plan, beside what it is', () => {
    const systems = offered('divide |');
    expect(systems.get('golden')?.documentation).toMatchObject({
      kind: 'markdown',
      value: expect.stringMatching(/^Lines at 0\\?\.618 of each side/u) as unknown,
    });
    // 80 cm over the golden number, from each edge.
    expect(drawnBeside(systems.get('golden'))[1]).toContain('M30.557 0L30.557 50');
    expect(drawnBeside(systems.get('armature'))[1]?.match(/M/gu)).toHaveLength(14);
    expect(JSON.stringify(systems.get('own')?.documentation)).not.toContain('data:');
  });

  it('rings a crossing on its division', () => {
    const [, lines, ring] = drawnBeside(offered('focus |').get('lower left'));
    expect(lines?.match(/M/gu)).toHaveLength(4);
    expect(ring).toMatch(/^M26\.\d+ 30\.902a/u);
  });

  it('shows an object in its place, and none that has no shape', () => {
    const objects = offered('lead way from left edge to |');
    expect(drawnBeside(objects.get('jug'))).toHaveLength(2);
    expect(objects.get('mist')?.documentation).toBeUndefined();
  });

  it('is left out for a client that would not show it', () => {
    for (const abilities of [
      { ...everything, drawings: false },
      { ...nothing, drawings: true },
    ]) {
      const golden = offered('divide |', abilities).get('golden');
      expect(JSON.stringify(golden)).not.toContain('data:');
      expect(JSON.stringify(golden?.documentation)).toContain('golden section');
    }
  });
});

describe('a fixed word that is offered', () => {
  it('says what it means in its statement', () => {
    const planes = offered('object fog\n  plane |');
    expect(JSON.stringify(planes.get('background')?.documentation)).toContain('farthest of the three planes');
  });
});
