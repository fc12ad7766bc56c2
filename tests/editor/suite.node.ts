import Mocha from 'mocha';
import { runMocha } from './run-mocha.js';

/** Called by VS Code in its node extension host. */
export async function run(): Promise<void> {
  const mocha = new Mocha({ ui: 'bdd', timeout: 60_000, color: false });
  mocha.suite.emit(Mocha.Suite.constants.EVENT_FILE_PRE_REQUIRE, globalThis, '', mocha);
  await import('./suites.js');
  await runMocha(mocha);
}
