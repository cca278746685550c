/** Throttles to take parts away from: sound ones with all friction given, of which tests change a part. */

/** Parts of a file by their key; each value is what stands behind it. */
export type Parts = Readonly<Record<string, Readonly<Record<string, string | undefined>> | string | undefined>>;

/** A shaft with a drum and two springs, drawn by the pedal's cable. */
export const SHAFT: Parts = {
  levers: { shaft: shaft() },
  pedal: '{cable: main, pull: 34.5 mm}',
  cables: { main: '{enters: [40, 24], to: shaft.wheel, slack: 1 mm, bend: 90 deg, friction: 0.1}' },
  plates: { bank: plates('shaft') },
  springs: { first: torsion('shaft'), second: torsion('shaft') },
};

/** A pedal, its cable, a crank and a rod to the shaft, with two springs on the shaft. */
export const CRANK: Parts = {
  levers: {
    pedal:
      '{pivot: [-200, 0], arms: {pad: {radius: 200, angle: -70}, clevis: {radius: 60, angle: 100}}, friction: 40 N*mm, bearing: {diameter: 10 mm, friction: 0.15}}',
    crank: crank(),
    shaft: `{pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}, stops: {open: 65 deg}, ${RUBS()}}`,
  },
  pedal: '{lever: pedal, opens: counterclockwise, travel: 26 deg, pad: pad}',
  cables: {
    main: '{from: pedal.clevis, leaves: [-140, 50], enters: [-60, 24], to: crank.wheel, slack: 1 mm, bend: 90 deg, friction: 0.1, stiffness: 40 N/mm}',
  },
  rods: { link: rod('crank.out', 'shaft.arm') },
  plates: { bank: plates('shaft') },
  springs: { first: torsion('shaft', 450), second: torsion('shaft', 450) },
};

export function shaft(more = '', rubs = RUBS()): string {
  return `{pivot: [100, 0], arms: {tail: {radius: 20 mm, angle: 240 deg}}, drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 80 deg${more}}, ${rubs}}`;
}

export function crank(out = '{radius: 40 mm, angle: 60 deg}'): string {
  return `{pivot: [0, 0], arms: {out: ${out}, tail: {radius: 20 mm, angle: 240 deg}}, drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, ${RUBS()}}`;
}

/** Drag in N·mm, and the coefficient of a bearing of 8 mm. */
export function RUBS(drag = 10, coefficient = 0.05): string {
  return `friction: ${drag} N*mm, bearing: {diameter: 8 mm, friction: ${coefficient}}`;
}

export function rod(from: string, to: string, more = ''): string {
  return `{from: ${from}, to: ${to}, ${more}ends: {kind: rod_end, pin: 6 mm, friction: 0.1}}`;
}

export function plates(lever: string, more = ''): string {
  return `{lever: ${lever}, count: 2, bore: 40 mm, seat: 6 deg, idle: 1.5 deg, vacuum: 65 kPa${more}}`;
}

/** @param preload N·mm @param rate N·mm/deg */
export function torsion(lever: string, preload = 300, rate = 3): string {
  return `{lever: ${lever}, rate: ${rate} N*mm/deg, preload: ${preload} N*mm}`;
}

/** The text of a file, with parts put in the place of those of the same name; an undefined one is left out. */
export function textOf(base: Parts, changes: Parts = {}): string {
  const keys = [...new Set([...Object.keys(base), ...Object.keys(changes)])];
  const blocks = keys.map((key) => {
    const was = base[key];
    const is = key in changes ? changes[key] : was;
    if (is === undefined) return '';
    if (typeof is === 'string') return `${key}: ${is}\n`;
    const parts = typeof was === 'object' ? { ...was, ...is } : is;
    const lines = Object.entries(parts).flatMap(([name, value]) => (value === undefined ? [] : [`  ${name}: ${value}\n`]));
    return lines.length === 0 ? '' : `${key}:\n${lines.join('')}`;
  });
  return `format: 1\n${blocks.join('')}`;
}
