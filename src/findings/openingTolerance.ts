/** How nearly open counts as open. */

/** rad (0.1°); of two shafts only one can touch its stop, and this much less of opening changes no air. Common practice, no source. */
export const OPENING_TOLERANCE = 0.1 * (Math.PI / 180);
