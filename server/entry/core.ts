/**
 * The core of the tool is loaded before what runs on it. In a web worker it is therefore the script that the worker is
 * made of, and the first message is the address of the other: a worker of an editor can't tell from where it was loaded
 * itself.
 */

interface ScriptedWorker {
  readonly importScripts: (address: string) => void;
  onmessage: ((event: { readonly data: unknown }) => void) | null;
}

const scope: unknown = typeof self === 'undefined' ? undefined : self;

if (isWorker(scope)) {
  scope.onmessage = ({ data }) => {
    scope.onmessage = null;
    scope.importScripts(String(data));
  };
}

function isWorker(value: unknown): value is ScriptedWorker {
  return (
    typeof value === 'object' &&
    value !== null &&
    'importScripts' in value &&
    typeof value.importScripts === 'function'
  );
}

export {};
