import { afterEach, describe, expect, it, vi } from 'vitest';
import type { PictureData, Scene } from '../../server/drawing/scene.js';
import { Pictures } from './pictures.js';

const red: PictureData = 'data:image/png;base64,AAAA';
const blue: PictureData = 'data:image/jpeg;base64,AQID';

function showing(...pictures: readonly PictureData[]): Pick<Scene, 'layers'> {
  return {
    layers: [
      {
        name: 'picture',
        marks: pictures.map((href, index) => ({
          kind: 'image',
          key: String(index),
          box: { x: 0, y: 0, width: 1, height: 1 },
          href,
        })),
      },
    ],
  };
}

describe('pictures of a drawing on the page', () => {
  afterEach(() => vi.restoreAllMocks());

  it('have one address each, of what they are, and give it back once they are not shown', async () => {
    const made: Blob[] = [];
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      made.push(blob as Blob);
      return `blob:${made.length}`;
    });
    const revoked = vi.spyOn(URL, 'revokeObjectURL').mockImplementation(() => undefined);
    const pictures = new Pictures();
    expect([red, blue, red].map((picture) => pictures.addressOf(picture))).toEqual([
      'blob:1',
      'blob:2',
      'blob:1',
    ]);
    expect(made.map(({ type }) => type)).toEqual(['image/png', 'image/jpeg']);
    expect([...new Uint8Array((await made[1]?.arrayBuffer()) ?? [])]).toEqual([1, 2, 3]);
    pictures.keepOnly(showing(red));
    expect(revoked.mock.calls).toEqual([['blob:2']]);
    expect(pictures.addressOf(red)).toBe('blob:1');
    pictures.keepOnly(showing());
    expect(revoked.mock.calls.at(-1)).toEqual(['blob:1']);
    expect(pictures.addressOf(red)).toBe('blob:3');
  });
});
