/**
 * What opens a throttle fully, lets it close, and lets the pedal land first: arm and drum radii, the rod's length, the pedal's travel, and
 * the open stop where it stands beyond the plates' 90°.
 */
import type { Definition } from '../definition/definition.ts';
import type { Finding, Outcome } from '../findings/finding.ts';
import { LENGTH_MARGIN } from '../findings/margin.ts';
import { OPENING_TOLERANCE } from '../findings/openingTolerance.ts';
import type { Study } from '../findings/study.ts';
import type { Joint, LeverModel } from '../kinematics/model.ts';
import type { FixAim } from './fixAim.ts';
import { pedalPath } from './pedalPath.ts';

/** Short of its full opening a lever wants more of what drives it; the finding's own mend is one of these. */
export function aimsToOpen(study: Study, finding: Finding): readonly FixAim[] {
  const { lever, joint } = drivenPart(study, finding.part);
  const stop = aimsAtStop(study.definition, finding.part);
  const full = finding.limit?.value;
  if (lever === undefined || joint === undefined || full === undefined) return stop;
  const outcome: Outcome = { kind: 'greatest', column: `${lever.name}.opening` };
  // Beyond the stop the opening stays the same: exactly full would be no crossing.
  const target = (): number => full - OPENING_TOLERANCE / 2;
  return [...[...moversOf(joint), pedalPath(study)].map((unknown) => ({ unknown, outcome, target })), ...stop];
}

/** A stop that is met before the pedal lands wants less of it. */
export function aimsToLand(study: Study, finding: Finding): readonly FixAim[] {
  const { lever, joint, cable } = drivenPart(study, finding.part);
  if (finding.severity === 'note' || lever === undefined || joint === undefined) return [];
  const unknowns = [pedalPath(study), ...moversOf(joint).filter((path) => !path.startsWith('rods.'))];
  const { limit } = finding;
  if (cable !== undefined && limit?.dimension === 'length') {
    const outcome: Outcome = { kind: 'greatest', column: `${cable}.stretch` };
    return unknowns.map((unknown) => ({ unknown, outcome, target: () => limit.value - LENGTH_MARGIN }));
  }
  const stop = lever.openStop?.parameter;
  if (stop === undefined) return [];
  const outcome: Outcome = { kind: 'greatest', column: `${lever.name}.opening` };
  const target = (): number => (study.travel.build.parameters[stop] ?? NaN) - OPENING_TOLERANCE / 2;
  return unknowns.map((unknown) => ({ unknown, outcome, target }));
}

/** A rod that holds a lever off its closed stop, also where its length follows from a formula. */
export function aimsToClose(study: Study, finding: Finding): readonly FixAim[] {
  const { mechanism, build } = study.travel;
  const lever = mechanism.levers.find(({ name }) => name === finding.part);
  const stop = lever?.closedStop?.parameter;
  const rod = study.definition.rods.find(({ length }) => length !== undefined && isAt(length.span, finding.span));
  if (lever === undefined || stop === undefined || rod === undefined) return [];
  const outcome: Outcome = { kind: 'at', column: `${lever.name}.opening`, travel: 0 };
  return [{ unknown: `rods.${rod.name}.length`, outcome, target: () => build.parameters[stop] ?? NaN }];
}

/**
 * A closed stop below the seat of the plates, where it follows from a formula: half way between there and idle. A plain one
 * belongs at 0, where they are drawn.
 */
export function aimsToSeat({ definition }: Study, finding: Finding): readonly FixAim[] {
  const plates = definition.plates.find(({ name }) => name === finding.part);
  const closed = definition.levers.find(({ name }) => name === plates?.lever.name)?.stops?.closed;
  if (closed?.formula === undefined || !(closed.nominal < (finding.limit?.value ?? NaN))) return [];
  return [{ unknown: closed.path, outcome: { kind: 'itself' }, target: () => (finding.limit?.value ?? NaN) / 2 }];
}

/** Plates past 90° want the open stop of their lever where they stand square, also where it follows from a formula. */
export function aimsToSquarePlates({ definition }: Study, finding: Finding): readonly FixAim[] {
  const plates = definition.plates.find(({ name }) => name === finding.part);
  return plates === undefined ? [] : aimsAtStop(definition, plates.lever.name);
}

/**
 * The open stop of a lever at the opening at which its plates stand square, 90° less seat and idle, where it stands beyond: past 90° they
 * close the bore again. Of several sets of plates that which comes to 90° first counts.
 */
function aimsAtStop(definition: Definition, lever: string): readonly FixAim[] {
  const open = definition.levers.find(({ name }) => name === lever)?.stops?.open;
  const square = definition.plates
    .filter((plates) => plates.lever.name === lever)
    .map(({ seat, idle }) => SQUARE - (seat?.nominal ?? 0) - (idle?.nominal ?? 0));
  const most = Math.min(...square);
  if (open === undefined || square.length === 0 || !(open.nominal > most + BEYOND) || most <= 0) return [];
  return [{ unknown: open.path, outcome: { kind: 'itself' }, target: () => most, stay: 'below' }];
}

const SQUARE = Math.PI / 2;
/** rad (0.01°), as finely as a stop is filed. Common practice, no source. */
const BEYOND = 0.01 * (Math.PI / 180);

function drivenPart(
  { travel: { mechanism } }: Study,
  part: string,
): { readonly lever?: LeverModel | undefined; readonly joint?: Joint | undefined; readonly cable?: string | undefined } {
  const lever = mechanism.levers.find(({ name }) => name === part);
  const joint = lever?.driver === undefined ? undefined : mechanism.joints[lever.driver];
  const cable = mechanism.cables[mechanism.groups[lever?.group ?? -1]?.cable ?? -1]?.name;
  return { lever, joint, cable };
}

/** Paths of what sets how far a joint turns the lever that it drives, the usual one first. */
function moversOf({ kind, name, source }: Joint): readonly string[] {
  switch (kind) {
    case 'rod':
      return [radiusOf(source.from, 'arm'), radiusOf(source.to, 'arm'), `rods.${name}.length`];
    case 'cable':
      return [radiusOf(source.to, source.to.kind), ...(source.from === undefined ? [] : [radiusOf(source.from, source.from.kind)])];
    case 'coupling':
      return [`couplings.${name}.ratio`];
    case 'slot':
      return [];
  }
}

function radiusOf({ lever, part }: { readonly lever: string; readonly part: string }, kind: 'arm' | 'drum'): string {
  return `levers.${lever}.${kind}s.${part}.radius`;
}

function isAt(one: { readonly start: number; readonly end: number }, other: { readonly start: number; readonly end: number }): boolean {
  return one.start === other.start && one.end === other.end;
}
