import { afterEach } from 'vitest';
import { artefact, inUse } from './studio.js';

/** What a test that failed looked like. */
afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail') return;
  const name = task.name.replaceAll(/[^a-z0-9]+/giu, '-').slice(0, 60);
  await Promise.all(
    [...inUse].map((workbench, index) =>
      workbench.screenshot(artefact(`failed-${name}-${index}`)).catch(() => undefined),
    ),
  );
});
