/**
 * What the file describes or leaves open and no rule decides. A verdict must never read better for what was not looked at.
 */
import type { Definition } from '../definition/definition.ts';
import type { Span } from '../definition/span.ts';
import { createPose } from '../kinematics/pose.ts';
import { innerAt } from '../kinematics/poseGeometry.ts';
import { attachedNotChecked, SNAPS_BACK } from './attachedNotChecked.ts';
import { clearanceNotChecked } from './clearanceNotChecked.ts';
import type { NotChecked } from './finding.ts';
import { greatestOf } from '../travel/extremes.ts';
import { along, type Study } from './study.ts';
import { listed } from './words.ts';

const PLAY = 'Not checked: what the play of its ends does';
const TOLERANCES = 'Not checked: what tolerances do; all figures are of the nominal dimensions';

/** What random builds do look at, or is said of them otherwise. */
export const LEFT_TO_BUILDS: ReadonlySet<string> = new Set([PLAY, TOLERANCES, `Not checked: ${SNAPS_BACK}`]);

/** What cannot be decided from geometry alone; `study` is absent where the linkage could not be solved. */
export function findNotChecked(definition: Definition, study: Study | undefined): readonly NotChecked[] {
  const all: NotChecked[] = [];
  const each = (parts: readonly { readonly name: string; readonly nameSpan: Span }[], what: string): void => {
    for (const { name, nameSpan } of parts) all.push({ part: name, span: nameSpan, message: what });
  };
  all.push(...withoutParts(definition, study !== undefined));
  if (study === undefined) {
    each(definition.keepOuts, 'Not checked: clearance');
    each(definition.springs, 'Not checked: its torque, and whether it closes the throttle');
    each(definition.plates, 'Not checked: open area, and the closing torque of the springs');
    each(definition.sensors, 'Not checked: signal and range');
    if (definition.pedal !== undefined) {
      all.push({ part: 'pedal', span: definition.pedal.span, message: 'Not checked: pedal effort and release, friction, and snap-back' });
    }
  } else all.push(...clearanceNotChecked(study), ...attachedNotChecked(study));
  each(
    definition.rods.filter(({ ends }) => ends?.play !== undefined),
    PLAY,
  );
  all.push(...readingsNotChecked(definition));
  if (study === undefined) return all;
  const toleranced = study.travel.mechanism.dimensions.find(({ tolerance }) => tolerance !== undefined);
  if (toleranced?.tolerance) {
    all.push({
      part: toleranced.path,
      span: toleranced.tolerance.span,
      message: TOLERANCES,
    });
  }
  const { build, mechanism } = study.travel;
  for (const cable of mechanism.cables) {
    if (cable.source.stiffness === undefined && (greatestOf(along(study, `${cable.name}.stretch`), study.travel.samples)?.value ?? 0) > 0) {
      all.push({ part: cable.name, span: cable.source.nameSpan, message: 'Not checked: force of its stretch, for want of `stiffness`' });
    }
  }
  for (const cable of mechanism.cables) {
    if (cable.source.bend === undefined) continue;
    const message = 'Not checked: what its inner gives away across the bends of its housing, since the format holds no clearance of it';
    all.push({ part: cable.name, span: cable.source.nameSpan, message });
  }
  for (const cable of mechanism.cables) {
    for (const which of ['leaves', 'enters'] as const) {
      const end = which === 'leaves' ? cable.driverEnd : cable.drivenEnd;
      if (end?.kind !== 'drum' || innerAt(build, createPose(mechanism), cable, which) !== undefined) continue;
      all.push({
        part: cable.name,
        span: cable.source[which]?.span ?? cable.source.nameSpan,
        message: `Not checked: its lead, since \`${which}\` lies within the drum that it runs to`,
      });
    }
  }
  for (const joint of mechanism.joints) {
    if (joint.kind === 'rod' && joint.source.ends === undefined) {
      all.push({ part: joint.name, span: joint.source.nameSpan, message: 'Not checked: tilt of its ends, for want of `ends`' });
    }
    if (joint.kind === 'slot' && joint.source.reach === undefined) {
      all.push({
        part: joint.name,
        span: joint.source.nameSpan,
        message: 'Not checked: whether its pin stays in the fork, for want of `reach`',
      });
    }
  }
  for (const lever of mechanism.levers) {
    if (lever.plates.length > 0 && lever.openStop === undefined) {
      all.push({ part: lever.name, span: lever.source.nameSpan, message: 'Not checked: what stops it open, for want of `stops`' });
    }
    for (const drum of lever.source.drums) {
      if (drum.groove === undefined)
        all.push({
          part: `${lever.name}.${drum.name}`,
          span: drum.nameSpan,
          message: 'Not checked: whether the cable stays in its groove, for want of `groove`',
        });
    }
  }
  return all;
}

/** No rule fits. Of a file beside this one no rule knows more than the name, so that what only its readings could tell is left out by all. */
function readingsNotChecked({ measured }: Definition): readonly NotChecked[] {
  if (measured === undefined || measured.runs.length === 0) return [];
  const files = [...new Set(measured.runs.flatMap(({ readings }) => (readings.kind === 'file' ? [readings.file.name] : [])))];
  const beside = files.length === 0 ? '' : `, and what its readings can tell, since some stand in ${listed(files)}`;
  const message = `Not checked: whether the built car is as the file has it${beside}; \`pedal-to-plate fit\` tells`;
  return [{ part: 'measured', span: measured.nameSpan, message }];
}

/** It takes longer than there is between two key presses. Where nothing is solved nobody tells it. */
const OF_FAILURES = 'what is left with any one spring, rod, cable or pin lost';
const TOLD_LATER =
  'that is told by `pedal-to-plate check` and `return`, and in the editor once typing rests and in the view under “If one part fails”';

/** Whether it is the line that takes the place of single failures, where these were not looked at. */
export function isOfFailures({ message }: NotChecked): boolean {
  return message.startsWith(`Not checked: ${OF_FAILURES}`);
}

/** What a file is silent on as a whole: told first, before what is left open of its parts. */
function withoutParts(definition: Definition, isSolved: boolean): readonly NotChecked[] {
  const { pedal, levers, plates, springs, unread = [] } = definition;
  const isThere = (block: string): boolean => unread.some(({ path }) => path === block || path.startsWith(`${block}.`));
  const [lever] = levers;
  const [first] = plates;
  const about = first ?? pedal ?? lever;
  if (about === undefined) return [];
  const span = 'nameSpan' in about ? about.nameSpan : about.span;
  const told = (part: string, what: string): NotChecked => ({ part, span, message: `Not checked: ${what}` });
  const left: NotChecked[] = [];
  if (first !== undefined && springs.length === 0 && !isThere('springs')) {
    left.push(told(first.name, 'what closes the throttle, since the file describes no springs'));
  }
  if (first === undefined && !isThere('plates')) left.push(told('plates', 'whether anything closes, since the file describes no plates'));
  if (pedal === undefined && !isThere('pedal')) left.push(told('pedal', 'the whole travel, since the file describes no pedal'));
  if (first !== undefined) left.push(told(first.name, isSolved ? `${OF_FAILURES}: ${TOLD_LATER}` : OF_FAILURES));
  for (const each of plates) {
    const missing = (['shaft', 'seat', 'idle'] as const).filter((key) => each[key] === undefined);
    if (missing.length === 0) continue;
    const named = listed(missing.map((key) => `\`${key}\``));
    left.push({
      part: each.name,
      span: each.nameSpan,
      message: `Not checked: what ${named} of these plates ${missing.length === 1 ? 'does' : 'do'}; left out, and taken as 0`,
    });
  }
  return left;
}
