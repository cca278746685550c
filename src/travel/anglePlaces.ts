/**
 * Where along the pedal a joint's angles can be extreme: transmission and drive, the tilt of a rod's ends, the lead of a cable. In
 * closed form but for a bolt that is not along its lever's axis, whose tilt is bounded instead (see `boltTilt.ts`).
 */
import type { Build } from '../kinematics/build.ts';
import type { CableEndModel, CableJoint, Joint, RodJoint, SlotJoint } from '../kinematics/model.ts';
import { trigExtremes, trigRoots } from '../numeric/trigPolynomial.ts';
import { boltTiltPlaces, isAlongAxis } from './boltTilt.ts';
import {
  cableForms,
  endTiltForm,
  leadForm,
  looseTiltForms,
  rodForm,
  rodLengths,
  slotBackForm,
  slotForm,
  slotOffsets,
} from './jointForms.ts';
import { merge, type Finder } from './places.ts';

/** @param levers for each lever the pedal travels between which its rotation is monotone */
export function anglePlaces(build: Build, finder: Finder, joint: Joint, levers: readonly (readonly number[])[]): readonly number[] {
  const driven = levers[joint.driven]!;
  const driver = joint.driver === undefined ? [] : levers[joint.driver]!;
  const ends: Ends = {
    atDriver: (angles) => (joint.driver === undefined ? [] : finder.rotationAt(joint.driver, driver, angles)),
    atDriven: (angles) => finder.rotationAt(joint.driven, driven, angles),
  };
  switch (joint.kind) {
    case 'rod':
      return merge(rodPlaces(build, joint, ends), tiltPlaces(build, joint, ends, merge(driver, driven)));
    case 'cable':
      return cablePlaces(build, joint, ends);
    case 'slot':
      return slotPlaces(build, joint, ends);
    case 'coupling':
      return [];
  }
}

/** Pedal travels at which the driving or the driven lever stands at one of the given rotations. */
interface Ends {
  atDriver(angles: readonly number[]): readonly number[];
  atDriven(angles: readonly number[]): readonly number[];
}

function rodPlaces({ parameters: p }: Build, joint: RodJoint, { atDriver, atDriven }: Ends): readonly number[] {
  return merge(
    ...rodLengths(joint, p).flatMap((length) => [
      atDriver(trigExtremes(rodForm(p, joint.driverPin, joint.drivenPin, length))),
      atDriven(trigExtremes(rodForm(p, joint.drivenPin, joint.driverPin, length))),
    ]),
  );
}

function slotPlaces({ parameters: p }: Build, joint: SlotJoint, { atDriver, atDriven }: Ends): readonly number[] {
  return merge(
    ...slotOffsets(joint, p).flatMap((offset) => [
      atDriver(trigExtremes(slotForm(joint, p, offset))),
      atDriven(trigExtremes(slotBackForm(joint, p, offset))),
    ]),
  );
}

/**
 * Tilt of both ends. A bolt along its lever's axis stands still, and what the rod leaves of the plane square to it depends on the
 * other pin alone.
 */
function tiltPlaces(build: Build, joint: RodJoint, { atDriver, atDriven }: Ends, spans: readonly number[]): readonly number[] {
  const { mechanism, parameters: p } = build;
  const bolts = mechanism.directions.bolts.get(joint.name);
  if (bolts === undefined) return [];
  const places =
    isAlongAxis(p, bolts.from) && isAlongAxis(p, bolts.to)
      ? [
          atDriven(trigExtremes(endTiltForm(p, bolts.from, joint.drivenPin))),
          atDriver(trigExtremes(endTiltForm(p, bolts.to, joint.driverPin))),
        ]
      : [boltTiltPlaces(build, joint, bolts, spans)];
  if (joint.lost !== undefined) {
    const rest = build.bounds.restRotation[joint.driven]!;
    places.push(...looseTiltForms(p, joint, bolts, rest).map((form) => atDriver(trigRoots(form))));
  }
  return merge(...places);
}

function cablePlaces(build: Build, joint: CableJoint, { atDriver, atDriven }: Ends): readonly number[] {
  const { mechanism, parameters: p } = build;
  const housings = mechanism.directions.housings.get(joint.name);
  const anglesOf = (end: CableEndModel | undefined, housing: number | undefined): readonly number[] => {
    if (end === undefined) return [];
    if (end.kind === 'drum') return drumKnots(build, end);
    const arm = trigRoots(cableForms(p, end.pin, end.housing).extreme);
    return housing === undefined ? arm : [...arm, ...trigRoots(leadForm(p, end.pin, end.housing, housing))];
  };
  return merge(atDriven(anglesOf(joint.drivenEnd, housings?.enters)), atDriver(anglesOf(joint.driverEnd, housings?.leaves)));
}

/** Rotations at which the radius of a profiled drum, and with it the way of its inner, can turn. */
function drumKnots({ mechanism, parameters: p }: Build, { drum }: Extract<CableEndModel, { kind: 'drum' }>): readonly number[] {
  const { form } = drum;
  if (form.kind === 'round') return [];
  const sense = mechanism.senses[drum.lever]!;
  return Array.from({ length: form.count }, (_, i) => sense * p[form.openings + i]!);
}
