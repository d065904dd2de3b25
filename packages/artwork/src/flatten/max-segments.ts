/** Most segments for one curve; only curves far larger than a board reach it. */
export const MAX_SEGMENTS = 65_536;
