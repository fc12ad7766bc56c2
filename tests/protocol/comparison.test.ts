import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  CardResult,
  ComparedPlans,
  CompareParams,
  NeededFiles,
} from '../../server/language/comparison-protocol.js';
import { bareClient } from './clients.js';
import { bundle, startServer, startWorker, type Client } from './server.js';

const uri = 'file:///studio/bowl.mahl';
const plan = (x: number) =>
  `plan "Bowl"\ncanvas 60 x 40 cm\nobject bowl, dominant\n  shape circle 12 at (${x}, 20)\n  value 2\n`;
const withPart = 'canvas 60 x 40 cm\nobject jar\n  shape from "jar.svg" part "jar"\n  value 2\n';
const svg = (width: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg"><path id="jar" d="M0 0H${width}V20H0Z"/></svg>`;

describe.each(['node', 'worker'] as const)('the server as %s', (kind) => {
  let client: Client;
  let end: () => Promise<void>;

  beforeAll(async () => {
    const { file, remove } = await bundle(kind);
    const server = kind === 'node' ? startServer(file) : startWorker(file);
    ({ client } = server);
    end = async () => {
      await server.stop();
      await remove();
    };
    await client.initialize(bareClient, {});
  });
  afterAll(() => end());

  const compare = (earlier: CompareParams['earlier'], later: CompareParams['later']) =>
    client.request<ComparedPlans | NeededFiles | null>('mahlstick/compare', {
      earlier,
      later,
      view: 'values',
    });

  it('tells what differs between two texts that are not open, with both drawn', async () => {
    const result = await compare({ uri, text: plan(20) }, { uri, text: plan(26) });
    expect(result).toMatchObject({
      changes: [
        {
          topic: 'objects',
          kind: 'moved',
          message: '`bowl` is moved 6 cm to the right.',
          later: { line: 3 },
        },
      ],
      earlier: { scene: { view: 'values' } },
      later: { scene: { view: 'values' } },
      remarks: [],
    });
    expect(JSON.stringify(result)).toContain('was:bowl');
  });

  it('says that a picture is the same, and that a plan has errors', async () => {
    const same = await compare({ uri, text: plan(20) }, { uri, text: `// a bowl\n${plan(20)}  nonsense\n` });
    expect(same).toMatchObject({
      changes: [],
      remarks: [
        'The same picture; only the text differs.',
        "The later plan has 1 error; what can't be read is not compared.",
      ],
    });
  });

  it('asks for the files of a version that are not given with it', async () => {
    const earlier = { uri, text: withPart, files: {} };
    const later = { uri, text: withPart, files: { 'jar.svg': { ok: true, text: svg(20) } as const } };
    expect(await compare(earlier, later)).toEqual({ needs: { earlier: ['jar.svg'], later: [] } });
    const given = { ...earlier, files: { 'jar.svg': { ok: true, text: svg(10) } as const } };
    expect(await compare(given, later)).toMatchObject({
      changes: expect.arrayContaining([expect.objectContaining({ kind: 'sized' })]) as unknown,
    });
  });

  it('gives a plan as it hangs on a wall', async () => {
    const result = await client.request<CardResult | null>('mahlstick/card', {
      plan: { uri, text: plan(20) },
      view: 'notan',
    });
    expect(result?.card).toMatchObject({ title: 'Bowl', canvas: '60 × 40 cm', counts: { errors: 0 } });
    expect(result?.card.scene.layers.map(({ name }) => name)).toEqual(['picture']);
  });

  it('refuses what is not well formed', async () => {
    await expect(client.request('mahlstick/compare', { earlier: { uri } })).rejects.toThrow(
      'not well formed',
    );
    await expect(
      client.request('mahlstick/card', { plan: { uri, text: '' }, view: 'palette' }),
    ).rejects.toThrow('not well formed');
  });
});
