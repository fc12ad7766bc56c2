/**
 * In place of modules that the libraries which write SVG and PDF import and that drawings of scenes never reach: paths
 * of fonts and images on a disk, and the readers of WOFF2 and HTML.
 */
export const join = (...parts: readonly string[]): string => parts.join('/');
export const dirname = (file: string): string => file;
export const fileURLToPath = (url: unknown): string => String(url);
export const NodeType = {};

const unreachable = (): never => {
  throw new Error('There are no files here.');
};
export { unreachable as imageSize, unreachable as parse };

/** As a reader of WOFF2 is called, and as a module of paths is used. */
export default Object.assign(unreachable, { join, dirname });
