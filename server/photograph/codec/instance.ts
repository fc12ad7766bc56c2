const modules = new Map<Uint8Array, Promise<WebAssembly.Module>>();

/** Compiled once. */
export function compiled(bytes: Uint8Array<ArrayBuffer>): Promise<WebAssembly.Module> {
  const module = modules.get(bytes) ?? WebAssembly.compile(bytes);
  modules.set(bytes, module);
  return module;
}

/** What a module that Emscripten made takes. */
export interface EmscriptenOptions {
  readonly noInitialRun: boolean;
  readonly instantiateWasm: (
    imports: WebAssembly.Imports,
    ready: (instance: WebAssembly.Instance) => void,
  ) => WebAssembly.Exports;
  readonly locateFile: (file: string) => string;
  readonly print: (message: string) => void;
  readonly printErr: (message: string) => void;
}

/**
 * For an instance of its own: the memory of one only ever grows, so what a large photograph took would never be given
 * back.
 * @param said is called with what the module says on its streams, which belong to the painter here
 */
export async function fresh(
  bytes: Uint8Array<ArrayBuffer>,
  said: (message: string) => void = () => undefined,
): Promise<EmscriptenOptions> {
  const module = await compiled(bytes);
  return {
    noInitialRun: true,
    // Asked for, though nothing is loaded; what it would say otherwise fails where a bundle has no address.
    locateFile: (file) => file,
    instantiateWasm: (imports, ready) => {
      const instance = new WebAssembly.Instance(module, imports);
      ready(instance);
      return instance.exports;
    },
    print: said,
    printErr: said,
  };
}
