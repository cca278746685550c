/**
 * The load path in order, each part with the figure that matters for it.
 */
import type { Joint, LeverModel, RodJoint } from '../kinematics/model.ts';
import { greatestOf, leastOf } from '../travel/extremes.ts';
import { reportFourBar } from './fourBarOf.ts';
import { attachedParts } from './attachedParts.ts';
import type { PartFigure, PathPart } from './part.ts';
import { along, type Study } from './study.ts';

export function pathParts(study: Study): readonly PathPart[] {
  const { mechanism } = study.travel;
  const { pedal } = study.definition;
  const parts: PathPart[] = [];
  const depths = new Map<number, number>();
  if (pedal !== undefined) parts.push({ kind: 'pedal', name: 'pedal', span: pedal.span, depth: 0, figures: pedalFigures(study) });
  if (mechanism.drive.kind === 'lever') parts.push(...attachedParts(study, mechanism.drive.lever, 1));
  for (const joint of mechanism.joints) {
    const depth = (joint.driver === undefined ? 0 : (depths.get(joint.driver) ?? 0)) + 1;
    depths.set(joint.driven, depth);
    parts.push({ kind: joint.kind, name: joint.name, span: joint.source.nameSpan, depth, figures: jointFigures(study, joint) });
    const lever = mechanism.levers[joint.driven]!;
    parts.push({ kind: 'lever', name: lever.name, span: lever.source.nameSpan, depth, figures: leverFigures(study, lever) });
    parts.push(...attachedParts(study, lever.index, depth + 1));
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
      ? { label: 'opens', text: '– (cannot be assembled)' }
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

const LINK_WORDS = {
  input: 'the driving arm',
  coupler: 'the rod, seen along the axes,',
  output: 'the driven arm',
  ground: 'the base',
} as const;

/** Class of a planar four-bar, what each link is, and how far its driving arm can go from drawn. */
function fourBarFigures(study: Study, joint: RodJoint): readonly PartFigure[] {
  const report = reportFourBar(study.travel, joint);
  if (report === undefined) return [{ label: 'four-bar', text: 'spatial' }];
  const { classification, ahead, behind, otherCircuit } = report;
  if (classification.kind === 'invalid') {
    const { link, length } = classification;
    if (link === 'ground') return [{ label: 'four-bar', text: 'none: both levers turn about one axis' }];
    return [{ label: 'four-bar', text: Number.isNaN(length) ? '– (cannot be assembled)' : `none: ${LINK_WORDS[link]} has no length` }];
  }
  if (classification.kind !== 'class') return [{ label: 'four-bar', text: 'its lengths cannot be assembled' }];
  const { name, type, grashof, parts } = classification;
  const figures: PartFigure[] = [
    { label: 'four-bar', text: `${name} (${type}, Grashof class ${grashof}; driving arm ${parts.input}, driven arm ${parts.output})` },
  ];
  if (ahead !== undefined) figures.push({ label: 'driving arm can open from drawn by', figure: { value: ahead, dimension: 'angle' } });
  if (behind !== undefined) figures.push({ label: 'and close by', figure: { value: behind, dimension: 'angle' } });
  figures.push({ label: 'other circuit: driven arm turned by', figure: { value: otherCircuit, dimension: 'angle' } });
  return figures;
}
