/**
 * Relative tolerance on a radius: a disc is empty if the disc smaller by this share contains no boundary
 * point. Rounding in the centre is about 1e-15 of the radius, and discs that touch more than two sites must
 * not be refused for it. A bottleneck wrongly accepted moves a radius by no more than this share.
 */
export const EMPTY_DISC_REL_TOL = 1e-10;

/**
 * Relative tolerance on a radius: contacts of a disc nearer to each other than this share of it are one. So
 * far along, a straight wall is within {@link EMPTY_DISC_REL_TOL} of the disc (√(2·1e-10) = 1.4e-5).
 */
export const SAME_CONTACT_REL_TOL = 2e-5;

/**
 * Rounding error of a distance, relative to the extent of the boundary: a few units in the last place. In a
 * wall 0.1 µm thin and 20 mm long that is more than {@link EMPTY_DISC_REL_TOL} of the radius, and a
 * bottleneck refused for it would be missing from the axis.
 */
export const ROUNDING_REL_TOL = 2e-15;

/**
 * Directions this far outside the normal cone of a reflex vertex count as inside, radians. Parallel walls put
 * the foot exactly on the edge of the cone: refusing it would lose the bottleneck, accepting it twice costs
 * an edge of length zero.
 */
export const NORMAL_CONE_TOL_RAD = 1e-9;

/**
 * Relative tolerance on a clearance: what falls by less than this share along a bisector counts as level.
 * Rounding and {@link NORMAL_CONE_TOL_RAD} cause that between parallel walls; the wrong branch of a bisector
 * would be off by far more.
 */
export const LEVEL_REL_TOL = 1e-7;

/**
 * Edges whose directions differ by less than this, radians, are collinear: their bisector would be nothing
 * but rounding (about 1e-16 in each direction). A vertex between two such edges is a site with an empty cell,
 * whichever way it turns.
 */
export const STRAIGHT_TOL_RAD = 1e-11;

/**
 * In a convex corner that turns by less than this, radians, a disc may pass for empty by {@link EMPTY_DISC_REL_TOL} and still reach over
 * the neighbour by far more than rounding: such discs are no bottlenecks. In sharper corners that takes edges shorter than 1e-7 of the
 * radius, and discs that touch both edges by chance must not be refused for rounding.
 */
export const ALL_BUT_STRAIGHT_RAD = 1e-3;

/**
 * Relative tolerance on a clearance: cells that close at clearances nearer to each other than this share tie,
 * and other evidence decides their order. Between walls within 1e-8 rad of parallel, 1e-8 mm along them
 * changes the clearance by 1e-16 mm.
 */
export const CLOSING_TIE_REL_TOL = 1e-10;

/**
 * Relative to the extent of the boundary: a contact farther than this beyond a cell is not there by rounding.
 */
export const BEYOND_REL_TOL = 1e-12;
