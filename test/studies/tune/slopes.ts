/** A linkage that opens its plates part of the way only, with a curve that is given by its slopes. */
export function slopesOf(column: string): string {
  return `format: 1
let: {a: 30 mm}
levers:
  bellcrank: {pivot: [0, 0], arms: {out: {radius: a, angle: 120 deg}}, drums: {quadrant: {radius: 24 mm, wraps: clockwise}}}
  shaft: {pivot: [90, 10], arms: {arm: {radius: 32 mm, angle: 115 deg}}}
pedal: {cable: main, pull: 24 mm}
cables: {main: {to: bellcrank.quadrant, enters: [-60, 30]}}
rods: {link: {from: bellcrank.out, to: shaft.arm}}
plates:
  bank: {lever: shaft, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}
tune: {free: {a: {from: 20 mm, to: 45 mm}}, curve: {of: ${column}, slopes: {tip_in: 0.4, end: 1}}}
`;
}
