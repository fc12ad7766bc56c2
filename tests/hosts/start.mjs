// @ts-check
// `npm start`: builds, then opens the examples with their preview in a VS Code that runs the extension of this
// repository.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from '../../client/build.mjs';
import { findDesktop } from './desktop.mjs';
import { startNodeHost } from './node-host.mjs';
import { examples, root } from './paths.mjs';
import { run } from './processes.mjs';
import { plansIn } from './workspace.mjs';

const demonstration = fileURLToPath(new URL('demonstration', import.meta.url));
const plan = path.join(examples, plansIn(examples)[0]);

await build();
const desktop = findDesktop();
if (desktop !== undefined) {
  console.log(`Opening the examples in ${desktop}; close its window to stop.`);
  const extensions = [root, demonstration].map((folder) => `--extensionDevelopmentPath=${folder}`);
  process.exit(await run(desktop, [...extensions, '--new-window', '--wait', examples, plan]));
}

const host = await startNodeHost({
  installed: [root, demonstration],
  port: Number(process.env['PORT'] ?? 3000),
});
console.log(`
Mahlstick is in VS Code at

  ${host.url(examples, [['openFile', host.uri(plan)]])}

Open this address in a browser. What you change is written to the folder examples. Ctrl+C stops it.`);
await host.ended;
console.error("VS Code's server has ended.");
process.exit(1);
