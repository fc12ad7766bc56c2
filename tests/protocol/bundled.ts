import { afterAll, afterEach, beforeAll } from 'vitest';
import { bundle, startServer, type RunningServer, type Transport } from './server.js';

/**
 * Bundles the server before the tests of a file.
 *
 * @returns what starts it; what is started ends with its test, or with the file where all its tests speak to one
 */
export function bundledServer(endsWith: 'test' | 'file' = 'test'): (transport?: Transport) => RunningServer {
  let bundled: Awaited<ReturnType<typeof bundle>>;
  const running = new Set<RunningServer>();
  const stopAll = async () => {
    await Promise.all([...running].map((server) => server.stop()));
    running.clear();
  };

  beforeAll(async () => {
    bundled = await bundle('node');
  });
  if (endsWith === 'test') afterEach(stopAll);
  afterAll(async () => {
    await stopAll();
    await bundled.remove();
  });

  return (transport) => {
    const server = startServer(bundled.file, transport);
    running.add(server);
    return server;
  };
}
