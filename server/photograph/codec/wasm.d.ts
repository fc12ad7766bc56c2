/** A module of WebAssembly as its bytes: the build and the tests load it so. */
declare module '*.wasm?bytes' {
  const bytes: Uint8Array<ArrayBuffer>;
  export default bytes;
}
