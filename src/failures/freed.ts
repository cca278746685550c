/**
 * The lever that a lost joint lets go: which way its own springs turn it, and which stop catches it there. Weight is not looked at: a lever
 * without a spring hangs as it likes.
 */
import { createFriction } from '../forces/friction/statics.ts';
import { createMotion } from '../forces/motion.ts';
import { missingOf, NO_TORQUE } from '../forces/springLack.ts';
import { leversOf, springsReaching } from '../forces/springsReaching.ts';
import type { LeverModel } from '../kinematics/model.ts';
import type { Travel } from '../travel/travel.ts';
import type { FreedLever } from './failure.ts';

/** @param freed what the joint drove, by the opening of its first lever */
export function freedLever(freed: Travel, lever: LeverModel): FreedLever {
  const { mechanism, build, samples, poseAt } = freed;
  const reaching = springsReaching(mechanism, lever.index);
  const body = createMotion(build).bodies.find(({ levers }) => levers.includes(lever.index));
  const falls = reaching.some((spring) => missingOf(spring) !== undefined) ? 'unknown' : fallsOf();
  const springs = reaching.filter((spring) => leversOf(spring).some((each) => mechanism.levers[each]!.group >= 0)).map(({ name }) => name);
  return { lever: lever.name, falls, springs, stop: stopOf() };

  function fallsOf(): FreedLever['falls'] {
    const solver = createFriction(build);
    let closes = false;
    let opens = false;
    for (const at of samples) {
      const torque = solver.comingBack(poseAt(at)).frictionless.closing[lever.index]!;
      if (Number.isNaN(torque)) return 'unknown';
      if (torque > NO_TORQUE) closes = true;
      if (torque < -NO_TORQUE) opens = true;
    }
    return closes ? (opens ? 'either' : 'closed') : opens ? 'open' : 'none';
  }

  function stopOf(): string | undefined {
    if (falls === 'either' || falls === 'none' || falls === 'unknown') return undefined;
    const of = falls === 'closed' ? 'closedStop' : 'openStop';
    const stopped = (body?.levers ?? []).map((each) => mechanism.levers[each]!).filter((each) => each[of] !== undefined);
    return (stopped.find(({ index }) => index === lever.index) ?? stopped[0])?.name;
  }
}
