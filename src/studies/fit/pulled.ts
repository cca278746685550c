/** The pedal's travel at which a cable is pulled so far. */
import { advance } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';

/**
 * By Newton's method from a guess near by; where there is none from the first place, evenly spread, at which the pull passes what is wanted.
 * A pull below that of the pedal at rest is at rest.
 * @param cable index among the mechanism's cables @param pull m, as the column has it @param guess a travel, or NaN
 * @returns a fraction, up to a little beyond the whole; NaN where the pedal does not pull so far
 */
export function travelAtPull(build: Build, cable: number, pull: number, guess: number, pose: Pose): number {
  let at = Number.isNaN(guess) ? firstGuess(build, cable, pull, pose) : guess;
  for (let step = 0; step < MOST_STEPS; step++) {
    advance(build, at, pose);
    const off = pull - pose.pull[cable]!;
    const along = pose.pullRate[cable]!;
    if (off === 0 || (at === 0 && off <= CLOSE)) return at;
    // A pedal that still rests pulls nothing.
    const wanted = along === 0 ? at + Math.sign(off) * FIRST : at + off / along;
    const next = Math.min(FARTHEST, Math.max(0, wanted));
    if (Math.abs(next - at) <= CLOSE) return Math.abs(off) <= MET || next === 0 ? next : NaN;
    at = next;
  }
  return NaN;
}

const MOST_STEPS = 40;
/** Of the travel. */
const CLOSE = 1e-13;
const FIRST = 0.01;
/** m */
const MET = 1e-9;
/** Of the travel: a car whose pedal pulls a little farther than the drawing's is still read. */
const FARTHEST = 1.05;

function firstGuess(build: Build, cable: number, pull: number, pose: Pose): number {
  let before = NaN;
  for (let i = 0; i <= PLACES; i++) {
    advance(build, i / PLACES, pose);
    const off = pose.pull[cable]! - pull;
    if (off >= 0) return i === 0 ? 0 : (i - off / (off - before)) / PLACES;
    before = off;
  }
  return 1;
}

const PLACES = 32;
