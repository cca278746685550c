/** Texts whose figures are plain to see, and waiting for them to be solved. */
import type { TextDocument } from 'vscode';
import { lensesOf } from './requests.ts';

/**
 * Pedal and shaft of equal arms, joined by a rod: the shaft turns as the pedal does, and opens 60° (parallelogram). After the line that says
 * the format.
 */
export const EXAMPLE_START = `levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  shaft: # the one with the plates
    pivot: [100, 0]
    arms: {arm: {radius: 40 mm, angle: 60 deg}, tail: {radius: 20 mm, angle: 200 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
rods:
  link:
    from: pedal.out
    to: shaft.arm # by a rod end
`;

/** The same with a name of each kind that formulas and requirements speak of. */
export const EXAMPLE = `format: 1
# A parallelogram
# to look at
let:
  reach: 40 mm ± 0.1 mm # measured
  twice: 2 * reach
${EXAMPLE_START.replace('out: {radius: 40 mm', 'out: {radius: reach')}require:
  opens: at(100%, shaft.opening) >= 59 deg
  long arm: twice >= 100 mm
`;

/** A file whose readings stand in `bench.csv` beside it. */
export const WITH_READINGS = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 220 mm, angle: 270 deg}}}
  shaft: {pivot: [200 mm, 0], arms: {arm: {radius: 40 mm, angle: 90 deg}}, stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 20 deg, pad: pad}
measured:
  runs:
    bench: {file: bench.csv}
`;

/** Until the extension has answered the text as it stands. */
export async function untilSolved(document: TextDocument): Promise<void> {
  await lensesOf(document);
}
