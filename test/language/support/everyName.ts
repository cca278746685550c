/** A linkage that solves and names something of every kind, in blocks and in `{}`, in formulas and in quotes. */
export const EVERY_NAME = `format: 1
title: "Every kind of name"
let:
  reach: 36 mm ± 0.1 mm
  clocking: 12 deg
  half: reach / 2
points:
  crank_pivot: [0, 0]
  rod_side: [0, 0, 10]
  anchor: [160, -10]
levers:
  pedal:
    pivot: [-300, 0]
    arms: {pad: {radius: 220 mm, angle: -75 deg}, clevis: {radius: 70 mm, angle: 100 deg}}
    friction: 40 N*mm
  bellcrank:
    pivot: crank_pivot
    axis: {through: rod_side}
    arms:
      out: {radius: reach, angle: "108 deg + clocking"}
      tang: {radius: half + 6 mm, angle: 0 deg}
    drums:
      quadrant: {radius: 24 mm, wraps: clockwise, groove: 120 deg}
  shaft:
    pivot: [90, 10]
    arms:
      arm: {radius: 'max(half, 32 mm)', angle: 115 deg}
      spring_arm: {radius: 18 mm, angle: 300 deg}
    stops: {closed: 0 deg, open: 70 deg}
  idler:
    pivot: [0, 40]
  rotor:
    pivot: [90, 60]
pedal: {lever: pedal, opens: counterclockwise, travel: 27 deg, pad: pedal.pad}
cables:
  main: {from: pedal.clevis, leaves: [-200, 68], enters: [-60, 30], to: bellcrank.quadrant, slack: 1 mm, stiffness: 50 N/mm}
rods:
  link: {from: bellcrank.out, to: "shaft.arm", ends: {kind: rod_end}}
slots:
  fork: {pin: bellcrank.tang, fork: idler, angle: -59 deg}
couplings:
  drive: {from: shaft, to: rotor, ratio: -1}
plates:
  bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
sensors:
  tps: {lever: rotor, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
springs:
  first: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  second: {from: anchor, to: shaft.spring_arm, rate: 0.9 N/mm, free_length: 26 mm}
keep_out:
  fuel_rail: {circle: anchor, radius: 5 mm}
movements:
  rock: {moves: [shaft, main.enters, second.from], shift: [0, 1, 0]}
require:
  opens enough: at(100%, shaft.opening) >= half / reach * 20 deg
  "soft tip-in": 'at(25%, bank.area) <= 90% * max(bank.area)'
  pedal lever: max(pedal.rotation) <= 28 deg and max(pedal.travel) >= 99%
  others: max(link.drive) > 1 deg and max(fork.reach) > 1 mm and max(main.pull) > 1 mm and max(tps.signal) > 1 V and max(first.torque) > 1 N*mm
`;
