export type Command = (...args: readonly unknown[]) => unknown;

/** Stands for `vscode`. */
export interface QuietEditor {
  readonly vscode: unknown;
  /** Those that were registered, by their names. */
  readonly commands: ReadonlyMap<string, Command>;
  /** Whatever was asked of it by name. */
  readonly asked: ReadonlySet<string>;
}

/**
 * An editor that has everything and does nothing, but for taking note of commands and of what is asked of it.
 * @param more what it has besides, by its last name
 */
export function quietEditor(more: Readonly<Record<string, unknown>> = {}): QuietEditor {
  const commands = new Map<string, Command>();
  const asked = new Set<string>();
  const known: Readonly<Record<string, unknown>> = {
    registerCommand: (name: string, run: Command) => {
      commands.set(name, run);
      return anything();
    },
    executeCommand: () => Promise.resolve(),
    getConfiguration: () => ({ get: () => undefined }),
    activeTextEditor: undefined,
    textDocuments: [],
    workspaceFolders: [],
    bundle: undefined,
    version: '1.91.0',
    ...more,
  };
  const anything = (): object => {
    const kept = new Map<string | symbol, unknown>();
    return new Proxy(class {}, {
      get: (target, key) => {
        if (key === 'prototype') return target.prototype;
        if (key === 'then' || key === Symbol.iterator) return undefined;
        if (key === 'toString' || key === Symbol.toPrimitive) return () => '';
        if (typeof key === 'string') asked.add(key);
        if (typeof key === 'string' && Object.hasOwn(known, key)) return known[key];
        if (!kept.has(key)) kept.set(key, anything());
        return kept.get(key);
      },
      set: (_, key, value) => {
        kept.set(key, value);
        return true;
      },
      apply: anything,
      construct: anything,
    });
  };
  // A bundle copies what the editor's module has of its own, and asks its prototype for the rest.
  return { vscode: Object.create(anything()) as unknown, commands, asked };
}
