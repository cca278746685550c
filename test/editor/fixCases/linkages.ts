/** Small linkages with one thing wrong each, whose figures are plain to see. */

export const LEVER_SHAFT = '  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}';

/** Pedal and shaft of equal arms, joined by a rod. */
export function levered({ lets = '', out = '60 deg', shaft = `${LEVER_SHAFT}}`, travel = '60 deg', link = '', rest = '' }): string {
  return `format: 1
${lets}levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: ${out}}}}
${shaft}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
rods:
  link: {from: pedal.out, to: shaft.arm${link}} # kept
${rest}`;
}

/** A cable on a drum. */
export function wound({ lets = '', drum = '', stops = '{open: 80 deg}', pull = '34.51 mm', slack = '1 mm', rest = '' }): string {
  return `format: 1
${lets}levers:
  shaft:
    pivot: [100, 0]
    drums: {wheel: {radius: 24 mm, wraps: counterclockwise${drum}}} # kept
    stops: ${stops}
pedal: {cable: main, pull: ${pull}}
cables:
  main: {enters: [40, 24], to: shaft.wheel, slack: ${slack}}
${rest}`;
}

export const geared = (travel: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], stops: {open: 80 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
couplings:
  gears: {from: pedal, to: shaft, ratio: 1}
${bank('4 deg')}`;

export function bank(idle: string): string {
  return `plates:\n  bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: ${idle}}\n`;
}

export const WIDE = 'limits: {transmission: [10 deg, 5 deg], drive: [10 deg, 5 deg]}\n';
export const stopped = `${LEVER_SHAFT}, stops: {open: 80 deg}}`;
export const short = levered({ shaft: stopped, travel: '74 deg', rest: WIDE + bank('4 deg') });
export const long = levered({ shaft: stopped, travel: '84 deg', rest: WIDE + bank('4 deg') });
export const shortWound = wound({ pull: '33 mm', rest: bank('4 deg') });
export const longWound = wound({ pull: '39 mm', rest: bank('4 deg') });
export const held = (length: string, lets = ''): string =>
  levered({ lets, shaft: `${LEVER_SHAFT}, stops: {closed: 0 deg}}`, travel: '78 deg', link: `, length: ${length}`, rest: bank('6 deg') });

export const cranked = `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}, drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
${stopped}
pedal: {cable: main, pull: 34 mm}
cables:
  main: {enters: [-60, 24], to: crank.wheel, slack: 2 mm}
rods:
  link: {from: crank.out, to: shaft.arm}
${WIDE}${bank('4 deg')}`;

export const sensor = (place: string, rest = '', lets = ''): string =>
  wound({
    lets,
    stops: '{closed: 0 deg}',
    pull: '35 mm',
    slack: '0 mm',
    rest: `sensors:\n  tps: {lever: shaft, at_closed: ${place}, range: [0 deg, 110 deg], ${rest === '' ? 'signal: [0.5 V, 4.5 V]' : rest}}\n`,
  });

export const springs = (first: string, second: string, third: string): string =>
  wound({
    rest: `${bank('4 deg')}springs:
  first: {lever: shaft, rate: 3 N*mm/deg, preload: ${first}}
  second: {lever: shaft, rate: 2 N*mm/deg, preload: ${second}}
  third: {lever: shaft, rate: 1 N*mm/deg, preload: ${third}}
`,
  });

export const wornOut = (first: string, lets = ''): string =>
  wound({
    lets,
    rest: `${bank('4 deg')}springs:
  first: {lever: shaft, rate: 3 N*mm/deg, preload: ${first}}
  second: {lever: shaft, rate: 2 N*mm/deg}
`,
  });

/** A shaft that rubs with 90 N·mm, and two springs of which each is to close it alone. */
export const rubbing = (first: string, second: string, lets = ''): string =>
  wound({
    lets,
    stops: '{open: 80 deg}\n    friction: 90 N*mm',
    rest: `${bank('4 deg')}springs:
  first: {lever: shaft, rate: 3 N*mm/deg, preload: ${first}}
  second: {lever: shaft, rate: 2 N*mm/deg, preload: ${second}}
`,
  });

/** The second spring pulls at a tail: alone it is too long. */
export const rubbingTail = (length: string): string => `format: 1
levers:
  shaft:
    pivot: [100, 0]
    arms: {tail: {radius: 20 mm, angle: 240 deg}}
    drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
    friction: 60 N*mm
pedal: {cable: main, pull: 20 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
springs:
  winder: {lever: shaft, rate: 3 N*mm/deg, preload: 400 N*mm}
  tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: ${length}}
`;

export const tailed = `format: 1
levers:
  shaft:
    pivot: [100, 0]
    arms: {tail: {radius: 20 mm, angle: 240 deg}}
    drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
pedal: {cable: main, pull: 34.3 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
springs:
  winder: {lever: shaft, rate: 3 N*mm/deg, preload: 400 N*mm}
  tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: 55 mm}
`;

/** A crank that passes its dead centre, so that the shaft comes back. */
export const returning = (closed: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 150 deg}}}
  shaft:
    pivot: [100, 0]
    arms: {arm: {radius: 40 mm, angle: 100 deg}}
    stops: {closed: ${closed}} # kept
pedal: {lever: pedal, opens: counterclockwise, travel: 120 deg}
rods:
  link: {from: pedal.out, to: shaft.arm}
`;

export const dipping = (third: string): string => `format: 1
levers:
  shaft:
    pivot: [100, 0]
    arms: {tail: {radius: 20 mm, angle: 270 deg}}
    drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
    stops: {open: 70 deg}
pedal: {cable: main, pull: 30.3 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
plates: {bank: {lever: shaft, count: 4, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {from: [20, -10], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}
  two: {from: [20, -10], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}
  third: {lever: shaft, rate: 0.1 N*mm/deg, preload: ${third}}
`;

export const led = (along: string): string => `format: 1
levers:
  shaft:
    pivot: [100, 0]
    opens: counterclockwise
    arms: {arm: {radius: 40 mm, angle: 250 deg}}
pedal: {cable: main, pull: 30 mm}
cables:
  main: {enters: [250, -40], enters_along: [-1, ${along}], to: shaft.arm}
`;

export const rocked = wound({ pull: '37.5 mm', rest: `${bank('4 deg')}movements:\n  rock: {moves: [shaft], shift: [4, 0]}\n` });

export const tight = (slack: string, lets = ''): string => wound({ lets, stops: '{closed: -4 deg, open: 60 deg}', pull: '27 mm', slack });

export const toggling = (angle: string, lets = ''): string => `format: 1
${lets}levers:
  crank:
    pivot: [0, 0]
    arms: {out: {radius: 36 mm, angle: 150 deg}}
    drums: {wheel: {radius: 25 mm, wraps: clockwise}}
  shaft: {pivot: [95, 14], arms: {arm: {radius: 30 mm, angle: ${angle}}}}
pedal: {cable: main, pull: 32 mm}
cables:
  main: {enters: [-70, 34], to: crank.wheel, slack: 1 mm}
rods:
  link: {from: crank.out, to: shaft.arm}
`;

export const fork = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {tang: {radius: 30 mm, angle: 90 deg}}}
  fork: {pivot: [0, 60]}
pedal: {lever: pedal, opens: clockwise, travel: 35 deg}
slots:
  pair: {pin: pedal.tang, fork: fork, angle: 270 deg, reach: [25 mm, 38 mm]}
`;

export const banks = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  front: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
  rear: {pivot: [-100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
rods:
  front_link: {from: pedal.out, to: front.arm}
  rear_link: {from: pedal.out, to: rear.arm, length: 99.7 mm}
plates:
  front_bank: {lever: front, count: 2, bore: 40 mm, seat: 6 deg, idle: 4 deg}
  rear_bank: {lever: rear, count: 2, bore: 40 mm, seat: 6 deg, idle: 4 deg}
`;

/** What a pedal that lands too early or a throttle that does not open is told of. */
export const OPENS = 'so that shaft opens fully';
export const LANDS = 'so that the pedal lands before it stretches or bends anything';
export const SQUARE = 'so that the plates on shaft stand square at most';

export const turned = (out: string, radius: string, arm: string, travel: string, rest = ''): string =>
  levered({ out, shaft: `${LEVER_SHAFT.replace('60 deg', arm)}}`, travel, rest }).replace(
    'radius: 40 mm, angle: ' + out,
    `radius: ${radius}, angle: ${out}`,
  );

/** An arm of 40 mm that rises to a straight edge at `height`, mm. */
export const broad = (height: string, clearance = ''): string => `format: 1
levers:
  pedal: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 30 deg}}} # kept
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
keep_out:
  bonnet: {polygon: [[-60, ${height}], [60, ${height}], [60, 70], [-60, 70]]${clearance}}
`;
