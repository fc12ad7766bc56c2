import type { Connection } from 'vscode-languageserver';

/** Tells of each fault once: a feature that fails on every key would fill the log. */
export function logOnce(connection: Connection): (what: string, error: unknown) => void {
  const told = new Set<string>();
  return (what, error) => {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const message = `${what} failed: ${text}`;
    if (told.has(message)) return;
    told.add(message);
    try {
      connection.console.error(message);
    } catch {
      // The other end is gone, and nobody is left to tell.
    }
  };
}
