/** What goes into a part of the load path and what comes out of it, in words. */
import type { PathPart } from '../findings/part.ts';
import type { Study } from '../findings/study.ts';
import type { Joint } from '../kinematics/model.ts';
import { greatestText, textAt } from '../language/hover/travelled.ts';
import { figureText } from '../outputs/figure.ts';
import type { ReportedPart } from '../protocol/report.ts';

type Motion = Pick<ReportedPart, 'takes' | 'gives'>;

export function motionOf(study: Study, { kind, name }: PathPart): Motion {
  const { mechanism } = study.travel;
  const { attached, levers, joints } = mechanism;
  switch (kind) {
    case 'pedal':
      return { takes: '', gives: pedalText(study) };
    case 'cable':
    case 'rod':
    case 'slot':
    case 'coupling': {
      const joint = joints.find((each) => each.kind === kind && each.name === name);
      return joint === undefined ? STILL : jointMotion(study, joint);
    }
    case 'lever': {
      const lever = levers.find((each) => each.name === name);
      const joint = lever?.driver === undefined ? undefined : joints[lever.driver];
      if (lever === undefined || joint === undefined) return STILL;
      const from = joint.driver === undefined ? 'the foot' : levers[joint.driver]!.name;
      const opens = greatestText(study, `${name}.opening`);
      return { takes: `${joint.name} from ${from}`, gives: opens === undefined ? NOT_ASSEMBLED : `opens ${opens} of pedal travel` };
    }
    case 'plates':
      return hung(study, attached.plates, name, `${name}.fraction`, 'of its greatest open area');
    case 'sensor':
      return hung(study, attached.sensors, name, `${name}.signal`, '');
    case 'spring':
      return hung(study, attached.springs, name, `${name}.torque`, 'of closing torque');
  }
}

const STILL: Motion = { takes: '', gives: 'the pedal does not move it' };
const NOT_ASSEMBLED = 'cannot be assembled';

function pedalText({ definition: { pedal } }: Study): string {
  if (pedal === undefined) return '';
  return pedal.kind === 'lever'
    ? `${pedal.lever.name} turns ${figureText({ value: pedal.travel.nominal, dimension: 'angle' })}`
    : `pulls ${figureText({ value: pedal.pull.nominal, dimension: 'length' })} of cable`;
}

/** How far a lever turns that drives others. */
function turning(study: Study, lever: number): string {
  const { levers, drive } = study.travel.mechanism;
  const { name } = levers[lever]!;
  if (drive.kind === 'lever' && drive.lever === lever) return pedalText(study);
  const opens = greatestText(study, `${name}.opening`);
  return opens === undefined ? `${name} ${NOT_ASSEMBLED}` : `${name} opens ${opens}`;
}

function jointMotion(study: Study, joint: Joint): Motion {
  const takes = joint.driver === undefined ? 'the pull of the foot' : turning(study, joint.driver);
  const given = turning(study, joint.driven);
  if (joint.kind !== 'cable') return { takes, gives: given };
  const pulls = greatestText(study, `${joint.name}.pull`);
  return { takes, gives: pulls === undefined ? given : `pulls ${pulls}; ${given}` };
}

/** What hangs on a lever: the figure of one of its columns at both ends of the travel. */
function hung(
  study: Study,
  parts: readonly { readonly name: string; readonly lever: number }[],
  name: string,
  column: string,
  of: string,
): Motion {
  const part = parts.find((each) => each.name === name);
  if (part === undefined || study.travel.mechanism.levers[part.lever]!.group < 0) return STILL;
  const gives = `${textAt(study, column, 'rest')} at rest, ${textAt(study, column, 'full')} at full pedal`;
  return { takes: turning(study, part.lever), gives: of === '' ? gives : `${gives}, ${of}` };
}
