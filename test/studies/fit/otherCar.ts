/** A car with its parts as a person wrote them, for readings that were made by another model of the same parts. */

export interface Written {
  readonly reach?: string;
  readonly shaftReach?: string;
  readonly drum?: string;
  readonly length?: string;
  readonly closed?: string;
  readonly slack?: string;
}

/** @param rows pedal travel in %, the signal in V, the opening in degrees @param noise of the signal, as in the file */
export function otherCar(
  { reach = '38 mm', shaftReach = '32 mm', drum = '22 mm', length = '110 mm', closed = '12 deg', slack = '1 mm' }: Written,
  fit: readonly string[],
  rows: readonly (readonly [number, number, number])[],
  noise = '4 mV',
): string {
  return `format: 1
let:
  crank_reach: ${reach}
  shaft_reach: ${shaftReach}
points:
  crank_pivot: [512, 148]
  shaft_centre: [604, 172]
levers:
  pedal:
    pivot: [0, 0]
    arms:
      pad: {radius: 240 mm, angle: -70 deg}
      clevis: {radius: 72 mm, angle: 104 deg}
    friction: 50 N*mm
  bellcrank:
    pivot: crank_pivot
    arms:
      out: {radius: crank_reach, angle: 166 deg}
    drums:
      quadrant: {radius: ${drum}, wraps: clockwise, groove: 95 deg}
    friction: 12 N*mm
  shaft:
    pivot: shaft_centre
    arms:
      arm: {radius: shaft_reach, angle: 140 deg}
    stops: {closed: 0 deg, open: 82 deg}
    friction: 20 N*mm
pedal: {lever: pedal, opens: counterclockwise, travel: 27 deg, pad: pad}
cables:
  main:
    from: pedal.clevis
    leaves: [96, 68]
    enters: [448, 186]
    to: bellcrank.quadrant
    slack: ${slack}
    bend: 120 deg
    friction: 0.12
    stiffness: 60 N/mm
rods:
  link:
    from: bellcrank.out
    to: shaft.arm
    length: ${length}
    adjust: {min: 104 mm, max: 116 mm, pitch: 1 mm}
    ends: {kind: rod_end, misalignment: 12 deg, pin: 6 mm, friction: 0.1}
plates:
  bank: {lever: shaft, count: 4, bore: 42 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg, vacuum: 65 kPa}
sensors:
  tps: {lever: shaft, at_closed: ${closed}, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], mechanical: [-5 deg, 115 deg], supply: 5 V, bits: 10}
springs:
  return_front: {lever: shaft, rate: 2.2 N*mm/deg, preload: 240 N*mm}
  return_rear: {lever: shaft, rate: 2.2 N*mm/deg, preload: 240 N*mm}
measured:
  fit: [${fit.join(', ')}]
  runs:
    bench:
      columns: [pedal.travel, tps.signal, shaft.opening]
      rows:
${rows.map(([at, signal, opening]) => `        - [${at} %, ${signal}, ${opening}]`).join('\n')}
      noise: {tps.signal: ${noise}, shaft.opening: 0.2 deg}
`;
}
