// Mocha's own bundle for browsers, which defines the globals `Mocha` and `mocha`.
import 'mocha/mocha.js';
import { runMocha } from './run-mocha.js';

/** Called by VS Code in its web worker extension host. */
export async function run(): Promise<void> {
  mocha.setup({ ui: 'bdd', timeout: 60_000, reporter: 'spec' });
  await import('./suites.js');
  await runMocha(mocha);
}
