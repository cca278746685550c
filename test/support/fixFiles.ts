/** Small linkages for the tests of fixes. */

/** Pedal and shaft of 40 mm arms, pivots 100 mm apart: with a rod of 100 mm the shaft turns as the pedal does. */
export const parallel = (rod: string, lets = ''): string => `format: 1
${lets}levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  shaft:
    pivot: [100, 0]
    arms: {arm: {radius: 40 mm, angle: 60 deg}}
    stops: {closed: 0 deg}
pedal: {lever: pedal, opens: counterclockwise, travel: 78 deg}
rods:
  link: {from: pedal.out, to: shaft.arm${rod}}
plates:
  bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 6 deg}
`;

/** A cable on a drum of 24 mm. */
export const wound = (shaft: string, rest = ''): string => `format: 1
levers:
  shaft:
    pivot: [100, 0]
    drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
    ${shaft}
pedal: {cable: main, pull: 33.2 mm}
cables:
  main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
${rest}`;

export const BANK = 'plates:\n  bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}\n';
