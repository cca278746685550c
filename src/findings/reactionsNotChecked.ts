/**
 * Forces on a bearing that the file has no figures for. A bearing rubs by what presses on it: the joints, cables and springs between two places
 * that hang on its lever, and its plates. What the format cannot say of the rest is left out, and told, so that no margin reads better than it is.
 */
import type { LeverModel, Parameter } from '../kinematics/model.ts';
import { vectorAt } from '../numeric/vector.ts';
import type { NotChecked } from './finding.ts';
import type { Study } from './study.ts';
import { listed } from './words.ts';

/** One line for each lever on a bearing of which something is left out. */
export function reactionsNotChecked(study: Study): readonly NotChecked[] {
  const { mechanism } = study.travel;
  return mechanism.levers.flatMap((lever): readonly NotChecked[] => {
    if (lever.group < 0 || mechanism.friction.levers[lever.index]!.bearing === undefined) return [];
    const left = [...legs(study, lever), ...separation(study, lever), ...tilting(study, lever)];
    if (left.length === 0) return [];
    const { name, nameSpan } = lever.source;
    return [{ part: name, span: nameSpan, message: `Not checked: friction in the bearing of ${name} by ${listed(left)}; left out` }];
  });
}

/** A coil with legs pushes its shaft aside by what its legs push with; how much is a matter of their length. */
function legs({ travel: { mechanism } }: Study, { index }: LeverModel): readonly string[] {
  const names = mechanism.attached.springs.filter(({ kind, lever }) => kind === 'torsion' && lever === index).map(({ name }) => name);
  return names.length === 0 ? [] : [`the legs of ${listed(names)}, whose length the format does not hold`];
}

/** Gears push their shafts apart, a belt pulls them together. */
function separation({ travel: { mechanism } }: Study, { index }: LeverModel): readonly string[] {
  const names = mechanism.joints
    .filter(({ kind, driver, driven }) => kind === 'coupling' && (driver === index || driven === index))
    .map(({ name }) => name);
  return names.length === 0
    ? []
    : [`what the coupling ${listed(names)} drives its shafts apart with, since the format holds only its ratio`];
}

/** Forces beside the place of the bearing tilt the lever in it; where its two bearings stand the format does not hold. */
function tilting({ travel: { build, mechanism } }: Study, lever: LeverModel): readonly string[] {
  const { parameters: p } = build;
  const [axis, pivot] = [vectorAt(p, lever.axis), vectorAt(p, lever.pivot)];
  const isBeside = (pin: Parameter): boolean =>
    Math.abs(vectorAt(p, pin).reduce((sum, figure, i) => sum + (figure - pivot[i]!) * axis[i]!, 0)) > BESIDE;
  const loaded = new Set<Parameter>();
  for (const joint of mechanism.joints) {
    if (joint.kind === 'rod' && joint.driver === lever.index) loaded.add(joint.driverPin);
    if (joint.kind === 'rod' && joint.driven === lever.index) loaded.add(joint.drivenPin);
    if (joint.kind === 'slot' && joint.pinLever === lever.index) loaded.add(joint.pin);
    if (joint.kind !== 'cable') continue;
    if (joint.driven === lever.index && joint.drivenEnd.kind === 'pin') loaded.add(joint.drivenEnd.pin);
    if (joint.driver === lever.index && joint.driverEnd?.kind === 'pin') loaded.add(joint.driverEnd.pin);
  }
  for (const spring of mechanism.attached.springs) {
    if (spring.kind === 'torsion') continue;
    if (spring.lever === lever.index) loaded.add(spring.to);
    if (spring.from.kind === 'pin' && spring.from.lever === lever.index) loaded.add(spring.from.pin);
  }
  return [...loaded].some(isBeside) ? ['arms that stand beside it along the axis and tilt it'] : [];
}

/** m */
const BESIDE = 1e-9;
