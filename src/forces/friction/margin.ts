/** Closing torque over the friction that it must overcome; what rounding leaves of two equal figures is no friction. */

/** @param net what is left of the torque against friction */
export function marginOf(torque: number, net: number): number {
  const friction = torque - net;
  if (friction > ROUNDING * Math.abs(torque)) return torque / friction;
  if (Number.isNaN(friction)) return NaN;
  return torque > 0 ? Infinity : 0;
}

/** Of the closing torque: less is what rounding left of two equal figures. */
const ROUNDING = 1e-9;
