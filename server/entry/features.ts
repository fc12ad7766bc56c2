/**
 * The server but for its connection, `dist/features.js`: the server in node loads it once it has answered a client's
 * hello.
 */
export * from '../language/features.js';
export { exporterWith } from './export.js';
