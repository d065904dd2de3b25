/**
 * Coordinates beyond this, in mm, are damage or a slip of the unit: 1000 km. Below it, doubles still tell 0.1
 * nm apart. Numbers that overflow are beyond it too.
 */
export const MAX_COORD_MM = 1e9;
