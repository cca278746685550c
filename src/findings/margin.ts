/**
 * How far inside its limit a mend aims. A figure that was solved for is written into the file with six digits, and must then still
 * be within: an angle of 100° so written is off by up to 0.00005°, a length of 100 mm by 0.00005 mm, and what follows from it by a
 * few times as much.
 */

/** rad (0.01°). */
export const ANGLE_MARGIN = 0.01 * (Math.PI / 180);
/** m (0.01 mm), the last figure of a good drawing. */
export const LENGTH_MARGIN = 1e-5;
