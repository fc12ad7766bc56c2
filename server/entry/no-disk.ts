/**
 * In place of parts of Node where there is no Node: what writes SVG without a page (svgdom) knows where its fonts and
 * images would lie, and never looks for them when a scene is drawn.
 */
export const join = (...parts: readonly string[]): string => parts.join('/');
export const dirname = (file: string): string => file;
export const fileURLToPath = (url: unknown): string => String(url);
export const imageSize = (): never => {
  throw new Error('There are no image files here.');
};
export default { join, dirname };
