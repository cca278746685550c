/** Plates, sensors and springs as parts of the load path, behind the lever on which they sit, each with the figure that matters. */
import type { PlatesModel, SensorModel, SpringModel } from '../kinematics/attached.ts';
import { areaSamples } from '../plates/platesAt.ts';
import { signalEnds } from '../sensor/sensorAt.ts';
import { greatestOf, leastOf, type Along, type Extreme } from '../travel/extremes.ts';
import type { Figure } from './finding.ts';
import type { PartFigure, PathPart } from './part.ts';
import { missingOf, springActions } from './springActions.ts';
import { along, type Study } from './study.ts';
import { isUnbounded } from './unbounded.ts';

/** A spring between two levers stands behind the one that carries its `to` pin. @param depth of those parts */
export function attachedParts(study: Study, lever: number, depth: number): readonly PathPart[] {
  const { plates, sensors, springs } = study.travel.mechanism.attached;
  const part = (
    kind: PathPart['kind'],
    { name, source }: PlatesModel | SensorModel | SpringModel,
    figures: readonly PartFigure[],
  ): PathPart => ({
    kind,
    name,
    span: source.nameSpan,
    depth,
    figures,
  });
  return [
    ...plates.filter((each) => each.lever === lever).map((each) => part('plates', each, platesFigures(study, each))),
    ...sensors.filter((each) => each.lever === lever).map((each) => part('sensor', each, sensorFigures(study, each))),
    ...springs.filter((each) => each.lever === lever).map((each) => part('spring', each, springFigures(study, each))),
  ];
}

function platesFigures(study: Study, plates: PlatesModel): readonly PartFigure[] {
  const most = greatestOf(along(study, `${plates.name}.area`), areaSamples(study.travel, plates));
  return [extremeFigure('open area of one plate', most, 'area')];
}

function sensorFigures({ travel }: Study, sensor: SensorModel): readonly PartFigure[] {
  const { rest, full } = signalEnds(travel.build, sensor);
  const signal = (label: string, value: number): PartFigure =>
    Number.isNaN(value) ? { label, text: NOT_ASSEMBLED } : { label, figure: { value, dimension: 'voltage' } };
  return [signal('signal at rest', rest), signal('at full pedal', full)];
}

function springFigures(study: Study, spring: SpringModel): readonly PartFigure[] {
  const missing = missingOf(spring);
  if (missing !== undefined) return [{ label: 'closing torque', text: `not checked, ${missing}` }];
  const samples = springActions(study).find((each) => each.spring.name === spring.name)?.samples ?? study.travel.samples;
  const torque = along(study, `${spring.name}.torque`);
  const extremes = (label: string, figure: Along): readonly PartFigure[] => [
    torqueFigure(label, leastOf(figure, samples)),
    torqueFigure('greatest', greatestOf(figure, samples)),
  ];
  if (spring.kind === 'torsion' || spring.from.kind === 'place') return extremes('least closing torque', torque);
  // Its column is of one end alone; what it does to the levers together is another figure.
  const own = study.travel.mechanism.levers[spring.lever]!.name;
  const together = springActions(study).find((each) => each.spring.name === spring.name)?.torques ?? [];
  return [
    ...extremes(`least closing torque about ${own}, of this end alone`, torque),
    ...together
      .filter(({ brought }) => brought)
      .flatMap((each) => extremes(`least at ${each.lever.name}, both ends through the linkage`, each.torque)),
  ];
}

function torqueFigure(label: string, found: Extreme | undefined): PartFigure {
  return found !== undefined && isUnbounded(found.value, 'torque')
    ? { label, text: 'without bound, at a dead centre' }
    : extremeFigure(label, found, 'torque');
}

function extremeFigure(label: string, found: Extreme | undefined, dimension: Figure['dimension']): PartFigure {
  return found === undefined ? { label, text: NOT_ASSEMBLED } : { label, figure: { value: found.value, dimension }, travel: found.travel };
}

const NOT_ASSEMBLED = '– (cannot be assembled)';
