/**
 * What each lever's way along the pedal follows from, as figures: its pivot and axis, the joint that drives it, where it rests and stops,
 * and all of that of the levers before it. Where these are the same, bit for bit, so is every pose of the lever.
 */
import type { Build } from '../kinematics/build.ts';
import type { CableEndModel, CableJoint, Joint, Mechanism } from '../kinematics/model.ts';

/** What something follows from. One object for as long as it is the same: see `memory.ts`. */
export interface Cause {
  /** Causes before it. */
  readonly after: readonly Cause[];
  /** What is no figure, e.g. which kind of joint. */
  readonly words: string;
  /** SI. */
  readonly figures: readonly number[];
}

/** By lever; undefined for one that nothing drives. @param known makes a cause the one that there was before, by a key of its own */
export function leverCauses(build: Build, known: (key: string, cause: Cause) => Cause): readonly (Cause | undefined)[] {
  const { mechanism, parameters, bounds } = build;
  const { drive, levers, senses } = mechanism;
  const causes: (Cause | undefined)[] = levers.map(() => undefined);
  const frame = (lever: number): Figures => {
    const { pivot, axis } = levers[lever]!;
    return put(put([], parameters, pivot, 3), parameters, axis, 3);
  };
  const root = known('pedal', { after: [], words: drive.kind, figures: [parameters[drive.travel]!] });
  if (drive.kind === 'lever') {
    const figures = [...frame(drive.lever), bounds.pedalRest, bounds.pedalStop];
    const words = `${drive.sense} ${senses[drive.lever]!}`;
    causes[drive.lever] = known(keyOf(levers[drive.lever]!.name), { after: [root], words, figures });
  }
  for (const joint of mechanism.joints) {
    const { driven, driver } = joint;
    const before = driver === undefined ? root : causes[driver];
    // A lever that hangs on one which nothing moves has no way along the pedal.
    if (before === undefined) continue;
    const own = jointCause(build, joint);
    const words = `${own.words} ${senses[driven]!}`;
    causes[driven] = known(keyOf(levers[driven]!.name), { after: [before], words, figures: [...frame(driven), ...own.figures] });
  }
  return causes;
}

/** Whether two are of the same figures, bit for bit. */
export function isSame(one: Cause, other: Cause): boolean {
  const { after, words, figures } = one;
  if (words !== other.words || figures.length !== other.figures.length || after.length !== other.after.length) return false;
  for (let i = 0; i < after.length; i++) if (after[i] !== other.after[i]) return false;
  for (let i = 0; i < figures.length; i++) if (!Object.is(figures[i], other.figures[i])) return false;
  return true;
}

type Figures = number[];

function keyOf(lever: string): string {
  return `lever ${lever}`;
}

/** Adds some parameters that stand side by side; none where there is no such. */
function put(into: Figures, p: Float64Array, from: number | undefined, count: number): Figures {
  if (from !== undefined) for (let i = 0; i < count; i++) into.push(p[from + i]!);
  return into;
}

/** What a joint itself adds. What it may have and has not is told by its words. */
function jointCause({ mechanism, parameters: p, bounds }: Build, joint: Joint): { words: string; figures: Figures } {
  const rests = [bounds.restRotation[joint.driven]!, joint.driver === undefined ? 0 : bounds.restRotation[joint.driver]!];
  switch (joint.kind) {
    case 'rod': {
      const bolts = mechanism.directions.bolts.get(joint.name);
      const figures = put(put(rests, p, joint.driverPin, 9), p, joint.drivenPin, 9);
      put(put(put(put(figures, p, joint.length, 1), p, joint.lost, 1), p, joint.side, 1), p, joint.winding, 4);
      put(put(figures, p, bolts?.from, 9), p, bolts?.to, 9);
      return { words: `rod ${joint.lost !== undefined} ${bolts !== undefined}`, figures };
    }
    case 'slot': {
      const figures = put(put(put(rests, p, joint.pin, 9), p, joint.direction, 3), p, joint.normal, 3);
      put(put(put(figures, p, joint.forkPivot, 3), p, joint.offset, 1), p, joint.play, 1);
      put(put(figures, p, joint.side, 1), p, joint.winding, 4);
      return { words: `slot ${joint.driven === joint.fork} ${joint.play !== undefined}`, figures };
    }
    case 'coupling':
      return {
        words: `coupling ${joint.oneWay} ${joint.lag !== undefined}`,
        figures: put(put(rests, p, joint.ratio, 1), p, joint.lag, 1),
      };
    case 'cable':
      return cableCause(p, joint, mechanism.directions.housings.get(joint.name), [
        ...rests,
        bounds.cableRest[joint.cable]!,
        bounds.cableStop[joint.cable]!,
      ]);
  }
}

type Housings = ReturnType<Mechanism['directions']['housings']['get']>;

function cableCause(p: Float64Array, joint: CableJoint, housings: Housings, figures: Figures): { words: string; figures: Figures } {
  put(put(figures, p, joint.slack, 1), p, joint.side, 1);
  put(put(figures, p, housings?.leaves, 3), p, housings?.enters, 3);
  const words = [`cable ${housings?.leaves !== undefined} ${housings?.enters !== undefined}`];
  for (const end of [joint.driverEnd, joint.drivenEnd]) words.push(end === undefined ? 'none' : putEnd(p, end, figures));
  return { words: words.join(' '), figures };
}

/** @returns what is no figure of it */
function putEnd(p: Float64Array, end: CableEndModel, into: Figures): string {
  put(into, p, end.housing, 3);
  if (end.kind === 'pin') {
    put(put(into, p, end.pin, 9), p, end.drawn, 1);
    return 'pin';
  }
  const { form, wraps } = end.drum;
  if (form.kind === 'round') {
    put(into, p, form.radius, 1);
    return `round ${wraps}`;
  }
  for (const from of [form.openings, form.radii, form.slopes, form.integrals]) put(into, p, from, form.count);
  return `profile ${wraps} ${form.count}`;
}
