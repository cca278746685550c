/**
 * How much more the foot has to press, and a cable to pull, where the throttle starts to open than just before: the springs of the shaft
 * come in there. Where it starts from rest all of it is met at once.
 */
import type { CableJoint, LeverModel } from '../../kinematics/model.ts';
import { isBehind } from '../../kinematics/isBehind.ts';
import { startOfOpening } from '../../plates/tipIn.ts';
import type { Along } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { effortAlong, tensionAlong } from '../forcesAlong.ts';
import type { Study } from '../study.ts';

/** In the force where the foot presses; none where no throttle ever opens. @param note behind the label */
export function tipInAtPad(study: Study, note: string): readonly Fact[] {
  const start = firstStart(study, () => true);
  if (start === undefined) return [];
  const common = { key: 'tip-in-step', part: 'pedal', label: `step in the effort where the throttle starts to open${note}` };
  return [stepFact(common, effortAlong(study), start)];
}

/**
 * In the tension at a cable's pedal end, where the first of the plates behind it start to open. None for a cable that moves no plates, and
 * for one whose pull is what `pedal.effort` already tells.
 * @param note behind the label
 */
export function tipInAtCable(study: Study, joint: CableJoint, note: string): readonly Fact[] {
  const { mechanism } = study.travel;
  const { drive, attached } = mechanism;
  const isEffort =
    drive.kind === 'cable' && drive.joint === joint.index && attached.pad?.kind === 'cable' && attached.pad.ratio === undefined;
  const start = isEffort ? undefined : firstStart(study, (lever) => isBehind(mechanism, joint, lever));
  if (start === undefined) return [];
  const common = { key: 'tip-in-step', part: joint.name, label: `step in its tension where the throttle starts to open${note}` };
  return [stepFact(common, tensionAlong(study, joint.cable), start)];
}

/** The pedal travel at which the first of some levers with plates starts to open; undefined where none does. */
function firstStart({ travel }: Study, counts: (lever: LeverModel) => boolean): number | undefined {
  const starts = travel.mechanism.levers
    .filter((lever) => lever.plates.length > 0 && lever.group >= 0 && counts(lever))
    .flatMap(({ index }) => startOfOpening(travel, index) ?? []);
  return starts.length === 0 ? undefined : Math.min(...starts);
}

function stepFact(common: Pick<Fact, 'key' | 'part' | 'label'>, force: Along, start: number): Fact {
  const step = force(Math.min(1, start + BESIDE)) - (start <= BESIDE ? 0 : force(start - BESIDE));
  return Number.isFinite(step)
    ? { ...common, figure: { value: step, dimension: 'force' }, travel: start }
    : { ...common, why: 'it has no value there' };
}

/** So far to either side of a kink, as a fraction of the travel, its figures are those of that side. Kinks are known to 1e-9. */
const BESIDE = 1e-7;
