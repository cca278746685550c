/** How nearly open counts as open, and how nearly closed as closed. */

/** rad (0.1°); of two shafts only one can touch its stop, and this much less of opening changes no air. Common practice, no source. */
export const OPENING_TOLERANCE = 0.1 * (Math.PI / 180);

/** rad (0.001°); a plate of 45 mm bore at 1.5° of idle passes less than a thousandth more air for it. Common practice, no source. */
export const SHUT = 0.001 * (Math.PI / 180);
