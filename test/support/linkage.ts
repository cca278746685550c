/** Small linkages on which tests build. */

/** Two levers and a pedal, not joined. */
export const LEVERS = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 220, angle: -75}, clevis: {radius: 70, angle: 100}}}
  shaft: {pivot: [320, 80], arms: {arm: {radius: 30, angle: 200}, tang: {radius: 20, angle: 90}}, drums: {quadrant: {radius: 26, wraps: clockwise}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 27}
`;

/** The two levers joined by a rod. */
export const LINKED = `${LEVERS}rods:
  link: {from: pedal.clevis, to: shaft.arm}
`;
