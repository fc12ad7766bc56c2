/** The keys of all that belongs to the transfer grid begin so. */
export const GRID_KEY = 'transfer-grid';

/** Whether a mark belongs to the transfer grid: its lines, its letters and numbers. */
export function isGridKey(key: string): boolean {
  return key.startsWith(GRID_KEY);
}
