/**
 * A disc counts as empty when the disc shrunk by this share of its radius holds no boundary point. Rounding in a disc's centre is about
 * 1e-15 of its size; discs that touch more than two sites at once must not be refused for that. A bottleneck wrongly taken within this share
 * moves a radius by no more than the share.
 */
export const EMPTY_DISC_REL_TOL = 1e-10;

/**
 * Contacts of a disc nearer to each other than this share of its radius are one: so far along a straight wall the wall is within
 * {@link EMPTY_DISC_REL_TOL} of the disc (√(2·1e-10) = 1.4e-5), and more.
 */
export const SAME_CONTACT_REL_TOL = 2e-5;

/**
 * Error of a distance as a share of the boundary's extent, a few units in the last place: next to a wall 0.1 µm thin and 20 mm long that is
 * more than {@link EMPTY_DISC_REL_TOL} of the radius, and a bottleneck refused for it would leave the axis without its least clearance.
 */
export const ROUNDING_REL_TOL = 2e-15;

/**
 * Directions this much outside the cone of normals of a reflex vertex still count as inside, in radians. Walls of a parallel
 * corridor put the foot exactly on the cone's edge: refusing it would lose the corridor's bottleneck, taking it twice costs an edge of length zero.
 */
export const NORMAL_CONE_TOL_RAD = 1e-9;

/**
 * Clearances that fall by less than this share along a bisector count as level: rounding and {@link NORMAL_CONE_TOL_RAD} do that in parallel
 * corridors, whereas clearances that a wrong branch of a bisector would give are off by a visible share.
 */
export const LEVEL_REL_TOL = 1e-7;

/**
 * Edges whose directions differ by less than this, in radians, are one line: their bisector would be all rounding (about 1e-16 in each
 * direction). A point between two such edges is a site with an empty fan, whichever way it turns.
 */
export const STRAIGHT_TOL_RAD = 1e-11;

/**
 * Cells whose closing clearances differ by less than this share may close in either order as far as clearances tell. Between walls that are parallel but
 * for 1e-8 rad, 1e-8 mm more along them is 1e-16 mm of clearance.
 */
export const CLOSING_TIE_REL_TOL = 1e-10;

/** A contact this share of the boundary's extent beyond a cell is not there by rounding. */
export const BEYOND_REL_TOL = 1e-12;
