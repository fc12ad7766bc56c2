/** Stands for the bare ground where an area is named by the index of its object. */
export const GROUND = -1;
