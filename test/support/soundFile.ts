/** A whole linkage to make outputs from, sound and with one mistake. */

/** A whole linkage without an error. */
export const SOUND_FILE = `format: 1
levers:
  bellcrank:
    pivot: [0, 0]
    arms: {out: {radius: 30 mm, angle: 120 deg}}
    drums: {quadrant: {radius: 24 mm, wraps: clockwise, groove: 120 deg}}
  shaft:
    pivot: [90, 10]
    arms: {arm: {radius: 32 mm, angle: 115 deg}}
    stops: {closed: 0 deg, open: 70 deg}
pedal: {cable: main, pull: 32 mm}
cables:
  main: {to: bellcrank.quadrant, enters: [-60, 30], stiffness: 50 N/mm}
rods:
  link: {from: bellcrank.out, to: shaft.arm, ends: {kind: rod_end}}
plates:
  bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
`;

/** The same with a spring that works on a lever that there is not; the linkage itself is as before. */
export const FAULTY_FILE = `${SOUND_FILE}springs:
  return: {lever: shfat, rate: 2 N*mm/deg}
`;
