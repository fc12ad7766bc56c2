import { expect, it } from 'vitest';
import { openStudio, shape } from './studio.js';

it('copies the drawing as an image in a web worker host too, where the server has no disk', async () => {
  const studio = await openStudio({ plan: 'bowl.mahl', host: 'web' });
  try {
    const { page, preview } = studio;
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await preview.locator(shape('bowl')).waitFor();
    // In a panel of this width it waits behind a button.
    await preview.locator('.tool.more').click();
    await preview.getByRole('button', { name: 'Copy image' }).click();
    await page.getByText('The drawing is copied as an image.').waitFor();
    expect(studio.refusals).toEqual([]);
  } finally {
    await studio.workbench.close();
  }
});
