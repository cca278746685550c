/**
 * The load path in order, each part with the figure that matters for it.
 */
import { classify, inputLimits, type FourBar } from '../kinematics/fourBar/index.ts';
import type { Joint, LeverModel, RodJoint } from '../kinematics/model.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import { cross, dot, minus, vectorAt } from '../table/geometry.ts';
import { fourBarOf } from './fourBarOf.ts';
import type { PartFigure, PathPart } from './part.ts';
import { along, type Study } from './study.ts';

export function pathParts(study: Study): readonly PathPart[] {
  const { mechanism } = study.travel;
  const { pedal } = study.definition;
  const parts: PathPart[] = [];
  const depths = new Map<number, number>();
  if (pedal !== undefined) parts.push({ kind: 'pedal', name: 'pedal', span: pedal.span, depth: 0, figures: pedalFigures(study) });
  for (const joint of mechanism.joints) {
    const depth = (joint.driver === undefined ? 0 : (depths.get(joint.driver) ?? 0)) + 1;
    depths.set(joint.driven, depth);
    parts.push({ kind: joint.kind, name: joint.name, span: joint.source.nameSpan, depth, figures: jointFigures(study, joint) });
    const lever = mechanism.levers[joint.driven]!;
    parts.push({ kind: 'lever', name: lever.name, span: lever.source.nameSpan, depth, figures: leverFigures(study, lever) });
  }
  return parts;
}

function pedalFigures(study: Study): readonly PartFigure[] {
  const { pedal } = study.definition;
  if (pedal?.kind === 'lever') return [{ label: 'travel', figure: { value: pedal.travel.nominal, dimension: 'angle' } }];
  return pedal === undefined ? [] : [{ label: 'pull', figure: { value: pedal.pull.nominal, dimension: 'length' } }];
}

function leverFigures(study: Study, lever: LeverModel): readonly PartFigure[] {
  const most = greatestOf(along(study, `${lever.name}.opening`), study.travel.samples);
  return [
    most === undefined
      ? { label: 'opens', text: 'cannot be assembled' }
      : { label: 'opens', figure: { value: most.value, dimension: 'angle' }, travel: most.travel },
  ];
}

function jointFigures(study: Study, joint: Joint): readonly PartFigure[] {
  const { samples } = study.travel;
  const least = (key: string, label: string): PartFigure => {
    const found = leastOf(along(study, `${joint.name}.${key}`), samples);
    return found === undefined
      ? { label, text: 'none' }
      : {
          label,
          figure: { value: found.value, dimension: study.columns.get(`${joint.name}.${key}`)?.dimension ?? 'angle' },
          travel: found.travel,
        };
  };
  switch (joint.kind) {
    case 'rod':
      return [least('transmission', 'least transmission angle'), least('drive', 'least drive angle'), ...fourBarFigures(study, joint)];
    case 'slot':
      return [least('transmission', 'least transmission angle'), least('drive', 'least drive angle'), least('reach', 'least reach')];
    case 'cable': {
      const figures: PartFigure[] = [];
      const pull = greatestOf(along(study, `${joint.name}.pull`), samples);
      if (pull) figures.push({ label: 'pull', figure: { value: pull.value, dimension: 'length' }, travel: pull.travel });
      const stretch = greatestOf(along(study, `${joint.name}.stretch`), samples);
      if (stretch && stretch.value > 0)
        figures.push({ label: 'stretch', figure: { value: stretch.value, dimension: 'length' }, travel: stretch.travel });
      return figures;
    }
    case 'coupling':
      return [{ label: 'ratio', figure: { value: study.travel.build.parameters[joint.ratio]!, dimension: 'number' } }];
  }
}

/** Class of a planar four-bar and where its driving arm must stop, as rotation since drawn. */
function fourBarFigures(study: Study, joint: RodJoint): readonly PartFigure[] {
  const links = fourBarOf(study.travel, joint);
  if (links === undefined) return [{ label: 'four-bar', text: 'spatial' }];
  const kind = classify(links);
  if (kind.kind !== 'class') return [{ label: 'four-bar', text: 'cannot be assembled' }];
  const figures: PartFigure[] = [{ label: 'four-bar', text: `${kind.name} (${kind.type})` }];
  const ahead = travelToLimit(study, joint, links);
  if (ahead !== undefined) figures.push({ label: 'driving arm can open from drawn by', figure: { value: ahead, dimension: 'angle' } });
  return figures;
}

/** How far the driving arm can turn in its opening direction before rod and driven arm come in line; undefined where nothing stops it. */
function travelToLimit(study: Study, joint: RodJoint, links: FourBar): number | undefined {
  const { mechanism, build } = study.travel;
  const p = build.parameters;
  const axis = vectorAt(p, mechanism.levers[joint.driver]!.axis);
  const ground = minus(vectorAt(p, mechanism.levers[joint.driven]!.pivot), vectorAt(p, mechanism.levers[joint.driver]!.pivot));
  const arm = vectorAt(p, joint.driverPin + 3);
  const drawn = Math.atan2(dot(cross(ground, arm), axis), dot(ground, arm));
  const sense = mechanism.senses[joint.driver]!;
  const turn = 2 * Math.PI;
  const ahead = (inputLimits(links)?.toggles ?? []).map(({ angle }) => {
    const left = sense * (angle - drawn);
    return left - turn * Math.floor(left / turn);
  });
  return ahead.length === 0 ? undefined : Math.min(...ahead);
}
