/**
 * Facts about the travel that are no findings: where the throttle stands at given pedal positions, how it quickens, what the sensor
 * tells of it, what closes it and what the foot feels of that, what its springs are stressed to, and what an adjuster or a movement of the
 * engine does.
 */
import { adjusters } from './facts/adjusters.ts';
import { areaFacts } from './facts/area.ts';
import { cableFacts } from './facts/cables.ts';
import { clearanceFacts } from './facts/clearance.ts';
import { closingFacts } from './facts/closing.ts';
import { effortFacts } from './facts/effort.ts';
import { movementFacts } from './facts/movements.ts';
import { padFacts } from './facts/pad.ts';
import { progression } from './facts/progression.ts';
import { signalFacts } from './facts/signal.ts';
import { wireFacts } from './facts/wire.ts';
import type { Fact } from './finding.ts';
import type { Study } from './study.ts';
import { once } from '../travel/once.ts';

export function findFacts(study: Study): readonly Fact[] {
  const work = factsOf(study);
  while (work.found.length < work.steps.length) takeStep(work);
  return work.found.flat();
}

/** Works out what `findFacts` then answers at once, a step each time that it is asked for the next: of a large file all of it takes long. */
export function* workOutFacts(study: Study): Generator<undefined, void> {
  const work = factsOf(study);
  while (work.found.length < work.steps.length) {
    takeStep(work);
    yield;
  }
}

interface FactWork {
  readonly steps: readonly (() => readonly Fact[])[];
  /** Of the first steps, one each. */
  readonly found: (readonly Fact[])[];
}

const takeStep = ({ steps, found }: FactWork): void => void found.push(steps[found.length]!());

const factsOf = once((study: Study): FactWork => {
  const { mechanism } = study.travel;
  const { plates, sensors } = mechanism.attached;
  const levers = mechanism.levers.filter((lever) => lever.plates.length > 0 && lever.group >= 0);
  const steps = [
    ...levers.flatMap((lever) => [
      () => progression(study, lever),
      () => plates.filter((each) => each.lever === lever.index).flatMap((each) => areaFacts(study, each)),
      () => closingFacts(study, lever),
    ]),
    () => padFacts(study),
    () => effortFacts(study),
    () => cableFacts(study),
    () => wireFacts(study),
    () => sensors.flatMap((sensor) => signalFacts(study, sensor)),
    () => clearanceFacts(study),
    () => movementFacts(study),
    () => adjusters(study, levers),
  ];
  return { steps, found: [] };
});
