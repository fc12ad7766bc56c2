import { expect, it } from 'vitest';
import type { ToPage } from '../preview/messages.js';
import { Rasters } from './rasters.js';

const png = Uint8Array.of(137, 80, 78, 71);

function asked() {
  const posted: ToPage[] = [];
  const rasters = new Rasters((message) => posted.push(message));
  const ids = () => posted.flatMap((message) => (message.type === 'rasterise' ? [message.id] : []));
  return { rasters, ids };
}

it('gives each picture to whom it was asked for', async () => {
  const { rasters, ids } = asked();
  const [one, other] = [rasters.paint('<svg/>', 100), rasters.paint('<svg/>', 200)];
  const [first = -1, second = -1] = ids();
  rasters.answer({ type: 'raster', id: second, png });
  rasters.answer({ type: 'raster', id: first, png: null });
  expect(await other).toBe(png);
  await expect(one).rejects.toThrow('could not paint');
});

it('has nobody wait for a page that is closed', async () => {
  const { rasters } = asked();
  const painted = rasters.paint('<svg/>', 100);
  rasters.dispose();
  await expect(painted).rejects.toThrow('could not paint');
});
