/** What a part does over the travel, in three short lines. */
import { reportFourBar } from '../../findings/fourBarOf.ts';
import type { Study } from '../../findings/study.ts';
import { wireLoads, worstStress } from '../../findings/wireLoads.ts';
import { megapascals } from '../../findings/words.ts';
import { rateOf } from '../../forces/wire/rate.ts';
import type { RodJoint } from '../../kinematics/model.ts';
import { figureText, NO_VALUE } from '../../outputs/figure.ts';
import { sensorResolution } from '../../sensor/resolution.ts';
import type { Answers } from '../../solve.ts';
import { plain } from '../markdown.ts';
import type { DeclaredName } from '../names.ts';
import { KIND_WORDS } from '../../definition/schema/declared.ts';
import { heading } from './heading.ts';
import { columnText, extremesOf, greatestText, leastText, textAt } from './travelled.ts';

type PartKind = Exclude<DeclaredName['kind'], 'let' | 'point' | 'arm' | 'drum' | 'requirement' | 'obstacle' | 'movement'>;

const WORDS: Readonly<Record<PartKind, string>> = { ...KIND_WORDS, drive: 'what the foot moves' };

/** In the place of figures. */
export const NOTHING_SOLVED = 'Nothing is solved: the file does not say enough yet.';

/** Its name and what it is; then its lines, or why there are none. */
export function partLines({ study, definition }: Answers, kind: PartKind, name: string): readonly string[] {
  const head = heading(name, `${WORDS[kind]}${ends(definition, kind, name)}`);
  if (study === undefined) return [head, NOTHING_SOLVED];
  const lines = linesOf(study, kind, name);
  if (lines === undefined) return [head, 'The pedal does not move it, or it could not be read.'];
  return [head, lines.map((line) => `- ${plain(line)}`).join('\n')];
}

function ends(definition: Answers['definition'], kind: PartKind, name: string): string {
  const joint =
    kind === 'rod'
      ? definition?.rods.find((each) => each.name === name)
      : kind === 'cable'
        ? definition?.cables.find((each) => each.name === name)
        : undefined;
  if (joint?.from === undefined) return '';
  return ` from \`${joint.from.lever}.${joint.from.part}\` to \`${joint.to.lever}.${joint.to.part}\``;
}

function linesOf(study: Study, kind: PartKind, name: string): readonly string[] | undefined {
  switch (kind) {
    case 'lever':
      return leverLines(study, name);
    case 'rod':
      return rodLines(study, name);
    case 'slot':
      return slotLines(study, name);
    case 'cable':
      return cableLines(study, name);
    case 'coupling':
      return couplingLines(study, name);
    case 'plates':
      return platesLines(study, name);
    case 'sensor':
      return sensorLines(study, name);
    case 'spring':
      return springLines(study, name);
    case 'drive':
      return driveLines(study);
  }
}

function leverLines(study: Study, name: string): readonly string[] | undefined {
  const opens = greatestText(study, `${name}.opening`);
  const ratio = extremesOf(study, `${name}.ratio`);
  if (opens === undefined) return undefined;
  const least = leastText(study, `${name}.closing`);
  return [
    `Opens ${opens} of pedal travel; rests at ${textAt(study, `${name}.opening`, 'rest')}`,
    ...(ratio === undefined
      ? []
      : [
          `Ratio from ${columnText(study, `${name}.ratio`, ratio.least.value)} to ${columnText(study, `${name}.ratio`, ratio.greatest.value)}`,
        ]),
    ...(least === undefined ? [] : [`Least closing torque ${least}`]),
  ];
}

function rodLines(study: Study, name: string): readonly string[] | undefined {
  const { joints, levers } = study.travel.mechanism;
  const joint = joints.find((each): each is RodJoint => each.kind === 'rod' && each.name === name);
  if (joint === undefined) return undefined;
  const driven = levers[joint.driven]?.name ?? '';
  const driver = levers[joint.driver]?.name ?? '';
  return [
    `Four-bar: ${fourBarText(study, joint)}`,
    `Least transmission angle ${leastText(study, `${name}.transmission`) ?? NOT_ASSEMBLED}, at ${driven}`,
    `Least drive angle ${leastText(study, `${name}.drive`) ?? NOT_ASSEMBLED}, at ${driver}`,
  ];
}

function fourBarText(study: Study, joint: RodJoint): string {
  const report = reportFourBar(study.travel, joint);
  if (report === undefined) return 'spatial';
  const { classification } = report;
  if (classification.kind === 'invalid') return 'none, both levers turn about one axis';
  if (classification.kind !== 'class') return 'its lengths cannot be assembled';
  return `${classification.name} (Grashof class ${classification.grashof})`;
}

function slotLines(study: Study, name: string): readonly string[] | undefined {
  const reach = extremesOf(study, `${name}.reach`);
  if (reach === undefined) return undefined;
  return [
    `Reach from ${columnText(study, `${name}.reach`, reach.least.value)} to ${columnText(study, `${name}.reach`, reach.greatest.value)}`,
    `Least transmission angle ${leastText(study, `${name}.transmission`) ?? NOT_ASSEMBLED}`,
    `Least drive angle ${leastText(study, `${name}.drive`) ?? NOT_ASSEMBLED}`,
  ];
}

function cableLines(study: Study, name: string): readonly string[] | undefined {
  const pull = greatestText(study, `${name}.pull`);
  if (pull === undefined) return undefined;
  const source = study.definition.cables.find((each) => each.name === name);
  const stretch = extremesOf(study, `${name}.stretch`)?.greatest;
  return [
    `Pulls ${pull} of pedal travel`,
    `Slack ${figureText({ value: source?.slack?.nominal ?? 0, dimension: 'length' })} as drawn`,
    stretch !== undefined && stretch.value > LEAST_STRETCH
      ? `Stretches ${figureText({ value: stretch.value, dimension: 'length' })} past an open stop`
      : 'Is not stretched',
  ];
}

function couplingLines(study: Study, name: string): readonly string[] | undefined {
  const { mechanism, build } = study.travel;
  const joint = mechanism.joints.find((each) => each.kind === 'coupling' && each.name === name);
  if (joint?.kind !== 'coupling') return undefined;
  const lag = joint.lag === undefined ? 0 : build.parameters[joint.lag]!;
  return [
    `Ratio ${figureText({ value: build.parameters[joint.ratio]!, dimension: 'number' })}`,
    ...(lag > 0
      ? [`Takes ${mechanism.levers[joint.driven]?.name ?? ''} along after ${figureText({ value: lag, dimension: 'angle' })}`]
      : []),
    ...(joint.oneWay ? ['Only pushes open'] : []),
  ];
}

function platesLines(study: Study, name: string): readonly string[] | undefined {
  const area = `${name}.area`;
  if (extremesOf(study, area) === undefined) return undefined;
  return [
    `Open area of one plate: ${textAt(study, area, 'rest')} at rest, ${textAt(study, area, 'full')} at full pedal`,
    `Of its greatest possible: ${textAt(study, `${name}.fraction`, 'rest')} at rest, ${textAt(study, `${name}.fraction`, 'full')} at full pedal`,
  ];
}

function sensorLines(study: Study, name: string): readonly string[] | undefined {
  const sensor = study.travel.mechanism.attached.sensors.find((each) => each.name === name);
  if (sensor === undefined || extremesOf(study, `${name}.signal`) === undefined) return undefined;
  const { overall, lever } = sensorResolution(study.travel, sensor);
  const degree = Math.PI / 180;
  const volts = overall && figureText({ value: Math.abs(overall.voltsPerAngle) * degree, dimension: 'voltage' }, 1);
  const counts =
    overall?.countsPerAngle === undefined
      ? ''
      : `, ${figureText({ value: Math.abs(overall.countsPerAngle) * degree, dimension: 'number' })} counts`;
  return [
    `Signal ${textAt(study, `${name}.signal`, 'rest')} at rest, ${textAt(study, `${name}.signal`, 'full')} at full pedal`,
    `Angle ${textAt(study, `${name}.angle`, 'rest')} at rest, ${textAt(study, `${name}.angle`, 'full')} at full pedal`,
    ...(volts === undefined ? [] : [`Resolution ${volts}${counts} for 1° of ${lever.name}, over the whole travel`]),
  ];
}

function springLines(study: Study, name: string): readonly string[] | undefined {
  const torque = `${name}.torque`;
  const least = leastText(study, torque);
  if (least === undefined) return undefined;
  return [
    `Closing torque ${textAt(study, torque, 'rest')} at rest, ${textAt(study, torque, 'full')} at full pedal`,
    `Least ${least} of pedal travel`,
    ...wireLines(study, name),
  ];
}

/** Of a spring wound from wire: its rate, and how much of its strength is used. */
function wireLines(study: Study, name: string): readonly string[] {
  const load = wireLoads(study).find(({ spring }) => spring.name === name);
  if (load === undefined) return [];
  const { build } = study.travel;
  const rate = figureText({
    value: rateOf(build, load.spring),
    dimension: load.spring.kind === 'torsion' ? 'torsional-rate' : 'linear-rate',
  });
  const [rest, full] = [0, 1].map((at) => worstStress(load, load.load(at))?.stress ?? NaN);
  const worst = worstStress(load, load.greatest.value);
  const stress = (value = NaN): string => (Number.isFinite(value) ? megapascals(value) : NO_VALUE);
  return [
    `Rate ${rate} from its wire`,
    `Stressed to ${stress(rest)} at rest, ${stress(full)} at full pedal`,
    worst?.safety === undefined
      ? 'Strength of its wire not known'
      : `Takes a set at ${figureText({ value: worst.safety, dimension: 'number' })} times its greatest stress`,
  ];
}

function driveLines(study: Study): readonly string[] | undefined {
  const { pedal } = study.definition;
  if (pedal === undefined) return undefined;
  const effort = extremesOf(study, 'pedal.effort');
  const release = leastText(study, 'pedal.release');
  return [
    pedal.kind === 'lever'
      ? `Turns ${figureText({ value: pedal.travel.nominal, dimension: 'angle' })}`
      : `Pulls ${figureText({ value: pedal.pull.nominal, dimension: 'length' })} of cable`,
    ...(effort === undefined
      ? []
      : [
          `Effort from ${columnText(study, 'pedal.effort', effort.least.value)} to ${columnText(study, 'pedal.effort', effort.greatest.value)}`,
        ]),
    ...(release === undefined ? [] : [`Least release force ${release} of pedal travel`]),
  ];
}

const NOT_ASSEMBLED = '– (cannot be assembled)';
/** m; what is less is rounding. */
const LEAST_STRETCH = 1e-9;
