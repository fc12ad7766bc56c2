// @ts-check
// Makes a picture of the editor with an example and its preview. See `usage`.
import path from 'node:path';
import { parseArgs } from 'node:util';
import { artefacts } from './paths.mjs';
import { themeNamed } from './settings.mjs';
import { settled } from './settled.mjs';
import { openWorkbench } from './workbench.mjs';

const usage = `node tests/hosts/picture.mjs [options]
  --host node|web         the extension host (node)
  --theme <name>          light, dark, high-contrast or high-contrast-light (light)
  --plans <folder>        the plans (examples)
  --file <name>           the plan that is shown (the first one)
  --command <title>       run after the plan is open; may be repeated (opens the preview to the side)
  --no-preview            do not wait for a preview
  --size <width>x<height> of the window (1180x900)
  --output <file>         (artefacts/editor.png)
  --extension <folder>    (this repository)`;

const { values } = parseArgs({
  options: {
    host: { type: 'string', default: 'node' },
    theme: { type: 'string' },
    plans: { type: 'string' },
    file: { type: 'string' },
    command: { type: 'string', multiple: true, default: ['Mahlstick: Open Preview to the Side'] },
    'no-preview': { type: 'boolean', default: false },
    size: { type: 'string', default: '1180x900' },
    output: { type: 'string', default: path.join(artefacts, 'editor.png') },
    extension: { type: 'string' },
    help: { type: 'boolean', default: false },
  },
});
const [width, height] = values.size.split('x').map(Number);
if (values.help || (values.host !== 'node' && values.host !== 'web') || !width || !height) {
  console.log(usage);
  process.exit(values.help ? 0 : 2);
}

const workbench = await openWorkbench({
  host: values.host,
  theme: themeNamed(values.theme),
  size: { width, height },
  ...(values.plans === undefined ? {} : { plans: values.plans }),
  ...(values.extension === undefined ? {} : { extension: values.extension }),
});
try {
  await workbench.openFile(values.file ?? workbench.plans[0]);
  if (!values['no-preview']) {
    for (const title of values.command) await workbench.runCommand(title);
    const preview = await workbench.preview();
    await preview.locator('svg').first().waitFor();
    await settled(() => preview.locator('body').innerHTML(), 1_000);
  }
  await workbench.screenshot(values.output);
  console.log(values.output);
} finally {
  await workbench.close();
}
