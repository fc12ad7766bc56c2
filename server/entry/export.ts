import type { Exporter } from '../language/exports.js';

/** Loads what makes files of drawings when the first is asked for. */
export const exportDrawing: Exporter = async (drawn, params) => {
  const { fileOf } = await import('./file-of.js');
  return fileOf(drawn, params);
};
