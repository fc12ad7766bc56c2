const GLAZE_OVER = 'glaze over ';

/** The key of the glaze over a shape, by the key of that. */
export function glazeKey(shape: string): string {
  return `${GLAZE_OVER}${shape}`;
}

/** Whether a mark of the layer `picture` is a glaze, by its key: those of shapes begin with what they are. */
export function isGlazeKey(key: string): boolean {
  return key.startsWith(GLAZE_OVER);
}
