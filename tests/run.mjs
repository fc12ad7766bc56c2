// @ts-check
// `npm test`: every stage, round by round; `npm test -- unit package`: these and what they need. The last line has the
// sum.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensureChromium } from './hosts/chromium.mjs';
import { installNodeHost } from './hosts/install-host.mjs';
import { unpackPackage } from './hosts/install-package.mjs';
import { artefacts, root } from './hosts/paths.mjs';
import { run } from './hosts/processes.mjs';

/**
 * @typedef {{ readonly passed: number; readonly failed: number }} Tally
 * @typedef {{ readonly ok: boolean; readonly tally?: Tally }} Outcome
 * @typedef {{ readonly name: string; readonly needs?: readonly string[]; readonly run: () => Promise<Outcome> }} Stage
 * @typedef {readonly Stage[]} Round stages that wait for much, or take one core, and so run side by side
 */

const minutes = 60_000;
const bin = path.join(root, 'node_modules/.bin');
/** What `npm run package` makes of the extension; its name may not have a space in it. */
const vsix = 'artefacts/mahlstick.vsix';
/** @type {NodeJS.ProcessEnv} */
const env = { ...process.env, PATH: `${bin}${path.delimiter}${process.env['PATH'] ?? ''}` };

/**
 * @param {string} commandLine words without spaces
 * @param {(line: string) => void} [onLine]
 * @returns {Promise<boolean>} whether it succeeded
 */
async function succeeds(commandLine, onLine) {
  const [command = '', ...args] = commandLine.split(' ');
  const options = { cwd: root, env, limit: 25 * minutes };
  return (await run(command, args, onLine === undefined ? options : { ...options, onLine })) === 0;
}

/** Side by side: each takes one core for most of its time. @param {readonly string[]} commandLines */
async function all(...commandLines) {
  const outcomes = await Promise.all(commandLines.map((line) => succeeds(line)));
  return { ok: outcomes.every((ok) => ok) };
}

/**
 * @param {string} name of its report
 * @param {string} options
 * @returns {Promise<Outcome>}
 */
async function vitest(name, options = '') {
  const report = `artefacts/${name}.json`;
  rmSync(path.join(root, report), { force: true });
  const line = `vitest run --reporter=default --reporter=json --outputFile.json=${report}${options}`;
  const ok = await succeeds(line);
  try {
    /** @type {{ numPassedTests: number; numFailedTests: number }} */
    const numbers = JSON.parse(readFileSync(path.join(root, report), 'utf8'));
    return { ok, tally: { passed: numbers.numPassedTests, failed: numbers.numFailedTests } };
  } catch {
    console.error('vitest wrote no report.');
    return { ok: false };
  }
}

/**
 * @param {'node' | 'web'} host
 * @returns {Promise<Outcome>}
 */
async function mocha(host) {
  /** @type {Tally | undefined} */
  let tally;
  const ok = await succeeds(`node tests/hosts/test-editor.mjs ${host} ${vsix}`, (line) => {
    const [, json] = /^MOCHA-RESULT (\{.*\})$/.exec(line) ?? [];
    if (json !== undefined) tally = JSON.parse(json);
  });
  if (tally === undefined) {
    console.error('The editor reported no tests.');
    return { ok: false };
  }
  return { ok, tally };
}

/**
 * Both packages are made as for a release, of one build: the extension, and what npm installs. What their tools warn of
 * fails.
 * @returns {Promise<Outcome>}
 */
async function pack() {
  /** @type {string[]} */
  const warnings = [];
  /** @param {string} line */
  const listen = (line) => void (/^\s*(?:npm )?warn(?:ing)?\b/iu.test(line) && warnings.push(line));
  const made =
    (await succeeds(
      `vsce package --no-dependencies --allow-missing-repository --no-rewrite-relative-links --readme-path dist/README.md --out ${vsix}`,
      listen,
    )) && (await succeeds('npm pack --ignore-scripts --pack-destination artefacts', listen));
  if (warnings.length > 0) console.error(`Warnings of the packages:\n${warnings.join('\n')}`);
  // What is tried in an editor from now on is what a painter installs.
  if (made) env['MAHLSTICK_EXTENSION'] = unpackPackage(path.join(root, vsix));
  return { ok: made && warnings.length === 0 };
}

/** @param {Promise<unknown>} promise @returns {Promise<Outcome>} */
const done = (promise) => promise.then(() => ({ ok: true }));

/** One round after the other. @type {readonly Round[]} */
const rounds = [
  [
    { name: 'chromium', run: () => done(ensureChromium().then((file) => console.log(file))) },
    { name: 'host', run: () => done(installNodeHost()) },
    {
      name: 'lint-and-types',
      run: () => all('eslint .', 'tsc --noEmit -p .', 'prettier --check .', 'tsc --noEmit -p tests/hosts'),
    },
    { name: 'build', run: () => all('node client/build.mjs') },
  ],
  [{ name: 'unit', run: () => vitest('unit') }],
  [{ name: 'package', run: pack }],
  [
    { name: 'editor-node', needs: ['chromium', 'build', 'host', 'package'], run: () => mocha('node') },
    { name: 'editor-web', needs: ['chromium', 'build', 'package'], run: () => mocha('web') },
  ],
  [
    {
      name: 'editor-preview',
      needs: ['chromium', 'build', 'host', 'package'],
      run: () => vitest('editor-preview', ' --config tests/editor/vitest.config.mjs'),
    },
  ],
];

/**
 * @param {readonly string[]} names
 * @returns {readonly Round[]} those and what they need, in order; all for no name
 * @throws {Error} for a name that is none
 */
function chosen(names) {
  const stages = rounds.flat();
  const unknown = names.find((name) => !stages.some((stage) => stage.name === name));
  if (unknown !== undefined)
    throw new Error(`No stage '${unknown}'; there are: ${stages.map(({ name }) => name).join(', ')}`);
  if (names.length === 0) return rounds;
  const wanted = new Set(
    stages.flatMap(({ name, needs }) => (names.includes(name) ? [name, ...(needs ?? [])] : [])),
  );
  return rounds.map((round) => round.filter(({ name }) => wanted.has(name)));
}

/** @param {unknown} error */
const message = (error) => (error instanceof Error ? error.message : String(error));

/** @param {Stage} stage @returns {Promise<Outcome>} */
async function carryOut({ name, run: begin }) {
  console.log(`\n== ${name}`);
  const begun = Date.now();
  const outcome = await begin().catch((error) => {
    console.error(message(error));
    return /** @type {Outcome} */ ({ ok: false });
  });
  const seconds = ((Date.now() - begun) / 1000).toFixed(1);
  console.log(`== ${name}: ${outcome.ok ? 'passed' : 'FAILED'} (${seconds} s)`);
  return outcome;
}

/** @returns {Promise<number>} the exit code */
async function main() {
  mkdirSync(artefacts, { recursive: true });
  let passed = 0;
  let failed = 0;
  for (const round of chosen(process.argv.slice(2))) {
    const outcomes = await Promise.all(round.map(carryOut));
    for (const { tally } of outcomes) {
      passed += tally?.passed ?? 0;
      failed += tally?.failed ?? 0;
    }
    if (outcomes.some(({ ok }) => !ok)) {
      // A stage without tests of its own counts as one failure.
      console.log(`\n${passed} passed, ${failed === 0 ? 1 : failed} failed`);
      return 1;
    }
  }
  console.log(`\n${passed} passed, ${failed} failed`);
  return 0;
}

process.exitCode = await main().catch((error) => {
  console.error(message(error));
  return 2;
});
