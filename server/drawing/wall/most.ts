/** So many plans hang on a wall; the rest is counted. */
export const MOST_ON_WALL = 60;
