/** A font as its bytes: the build and the tests load it so. */
declare module '*.woff' {
  const bytes: Uint8Array;
  export default bytes;
}
