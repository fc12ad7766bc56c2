import { beforeEach, expect, test } from 'vitest';
import { bundledServer } from './bundled.js';
import type { Client } from './server.js';

const uri = 'file:///studio/plan.mahl';
/** Its ground shows on a tenth of it. */
const text =
  'canvas  100 x 50 cm\nfocus   upper right\n' +
  'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (90, 50)\n  value   4\n' +
  'object  lamp, dominant\n  shape   circle 10 at focus\n  value   5\n';

const HINT = 3;
const WARNING = 2;

const start = bundledServer();
let client: Client;

beforeEach(() => {
  ({ client } = start());
});

/** How bare ground was told in each publication so far. */
function told(): readonly (number | undefined)[] {
  return client.published.map(
    ({ diagnostics }) => diagnostics.find(({ code }) => code === 'bare-ground')?.severity,
  );
}

async function untilTold(severity: number | undefined): Promise<void> {
  await client.until(
    () => client.published.length > 0 && told().at(-1) === severity,
    `bare ground with severity ${severity ?? 'none'}`,
  );
}

const push = (rules: unknown): Promise<void> =>
  client.notify('workspace/didChangeConfiguration', { settings: { mahlstick: { rules } } });

test('what comes with initialize holds for the first diagnostics', async () => {
  await client.initialize({}, { initializationOptions: { rules: { 'bare ground': 'off' } } });
  await client.open(uri, text);
  await untilTold(undefined);
  expect(told()).toEqual([undefined]);
});

test('a client that sends its settings has its plans told anew at once', async () => {
  await client.initialize({});
  await client.open(uri, text);
  await untilTold(HINT);
  await push({ 'bare ground': 'warning' });
  await untilTold(WARNING);
  await push({ 'bare ground': { limit: 12 } });
  await untilTold(undefined);
  await push({});
  await untilTold(HINT);
});

test('a client that answers questions is asked, at the start and after every change', async () => {
  let rules: unknown = { 'bare ground': 'warning' };
  const registered: unknown[] = [];
  client.connection.onRequest(
    'workspace/configuration',
    ({ items }: { items: readonly { section: string }[] }) =>
      items.map(({ section }) => (section === 'mahlstick' ? { rules } : null)),
  );
  client.connection.onRequest(
    'client/registerCapability',
    ({ registrations }: { registrations: unknown[] }) => {
      registered.push(...registrations);
      return null;
    },
  );
  await client.initialize({
    workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
  });
  await client.open(uri, text);
  await untilTold(WARNING);
  expect(registered).toEqual([
    expect.objectContaining({
      method: 'workspace/didChangeConfiguration',
      registerOptions: { section: 'mahlstick' },
    }),
  ]);
  rules = { 'bare ground': 'off' };
  await client.notify('workspace/didChangeConfiguration', { settings: null });
  await untilTold(undefined);
});

test('the plan’s own line goes before the setting', async () => {
  await client.initialize({}, { initializationOptions: { rules: { 'bare ground': 'off' } } });
  await client.open(uri, `${text}rule    bare ground warning\n`);
  await untilTold(WARNING);
});

test('what can’t be used is ignored, with one line in the log', async () => {
  await client.initialize({});
  await client.open(uri, text);
  await untilTold(HINT);
  await push({ 'bear ground': 'off', 'bare ground': { limit: -2 } });
  await push({ 'bear ground': 'off', 'bare ground': { limit: -2 } });
  await push('loud');
  await client.notify('workspace/didChangeConfiguration', { settings: null });
  await push({ 'bare ground': 'warning' });
  await untilTold(WARNING);
  expect(client.logged).toEqual([
    'Ignored in the setting mahlstick.rules: there is no rule `bear ground`; `bare ground` is "off", "hint" or "warning", or has a severity and a limit from 0 to 100.',
    'Ignored in the setting mahlstick.rules: it is no object of rules.',
  ]);
});
