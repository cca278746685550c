/** A cable, a bellcrank and one rod with a `tune` block, all of it invented: for what a search for dimensions says of the file as it stands. */

interface KartTune {
  /** By name, as written; else those of the drawing. */
  readonly values?: Readonly<Record<string, string>>;
  readonly free?: string;
  readonly through?: string;
  readonly keep?: string;
  /** The pedal is the cable alone. */
  readonly isCable?: boolean;
}

const FREE = `
    out_reach: {from: 34 mm, to: 46 mm}
    out_angle: {from: 205 deg, to: 250 deg}
    arm_reach: {from: 22 mm, to: 32 mm}`;

const THROUGH = '[[0 %, 0 deg], [4 %, 0 deg], [10 %, 4 deg], [25 %, 16 deg], [50 %, 38 deg], [75 %, 61 deg], [100 %, 84 deg, 2]]';

const PEDAL = `  pedal:
    pivot: [0, 0]
    arms: {pad: {radius: 200 mm, angle: -80 deg}, clevis: {radius: 60 mm, angle: 95 deg}}
`;

export function kartTune({
  values = {},
  free = FREE,
  through = THROUGH,
  keep = '[transmission, drive, full_opening, opens right up]',
  isCable = false,
}: KartTune): string {
  const lets = Object.entries({ out_reach: '40 mm', out_angle: '230 deg', arm_reach: '26 mm', ...values });
  return `format: 1
let:
${lets.map(([name, value]) => `  ${name}: ${value}\n`).join('')}levers:
${isCable ? '' : PEDAL}  bellcrank:
    pivot: [400, 100]
    arms: {cable: {radius: 30 mm, angle: 62 deg}, out: {radius: out_reach, angle: out_angle}}
  shaft:
    pivot: [300, 60]
    arms: {arm: {radius: arm_reach, angle: 130 deg}}
    stops: {closed: 0 deg, open: 84 deg}
pedal: ${isCable ? '{cable: main, pull: 27 mm, lever_ratio: 4}' : '{lever: pedal, opens: counterclockwise, travel: 27 deg, pad: pad}'}
cables:
  main:
${isCable ? '' : '    from: pedal.clevis\n    leaves: [90, 58]\n'}    enters: [330, 128]
    to: bellcrank.cable
    slack: 1 mm
rods:
  link: {from: bellcrank.out, to: shaft.arm, adjust: {min: 86 mm, max: 98 mm, pitch: 1 mm}}
plates:
  bank: {lever: shaft, count: 2, bore: 38 mm, shaft: 8 mm, seat: 5 deg, idle: 1 deg}
require:
  opens right up: at(100%, shaft.opening) >= 83 deg
  gentle at a fifth of pedal: at(20%, shaft.opening) <= 18 deg
tune:
  free:${free}
  curve:
    of: shaft.opening
    through: ${through}
  keep: ${keep}
`;
}
