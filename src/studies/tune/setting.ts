/** What a `tune` block asks of its file: the free dimensions, the column that is to follow the curve, the curve, and the angles to watch. */
import { limitOf, type Study } from '../../findings/study.ts';
import { areaWhen, fractionWhen } from '../../plates/platesAt.ts';
import { greatestOf } from '../../travel/extremes.ts';
import type { Demand } from './demands.ts';
import type { FreeDimension, Guard, TrialCase } from './trial.ts';
import { countedPoints, wantedOf, type Ends, type Wanted } from './wanted.ts';

export interface Setting {
  readonly trialCase: TrialCase;
  readonly enough: number;
  /** Lever whose opening follows the curve; undefined for other columns. */
  readonly lever: number | undefined;
}

/** Why a file cannot be tuned, in words without a full stop; undefined where it can. */
export function whyNotTuned(study: Study): string | undefined {
  const { tune: block, lets } = study.definition;
  if (block === undefined) return 'The file has no `tune` block';
  if (block.unread.length > 0) return 'Something in the `tune` block is not understood; see the problem with its text';
  if (block.curve === undefined) return 'The `tune` block gives no curve';
  if (block.free.length === 0) return 'The `tune` block leaves nothing free';
  const idle = block.free.find((free) => dimensionOf(study, lets[free.let]!.name) === undefined);
  if (idle !== undefined) return `No part of the linkage uses \`${idle.name}\``;
  const name = nameOfColumn(block.curve.of);
  return study.columns.has(name) ? undefined : `${name} cannot be solved in this file`;
}

/** @param demands of which those on angles are watched while searching @returns undefined where the file cannot be tuned */
export function settingOf(study: Study, demands: readonly Demand[]): Setting | undefined {
  const { tune: block } = study.definition;
  if (whyNotTuned(study) !== undefined || block?.curve === undefined) return undefined;
  const name = nameOfColumn(block.curve.of);
  const column = study.columns.get(name)!;
  const { mechanism } = study.travel;
  const free = block.free.map(({ name: of, from, to, step }): FreeDimension => {
    return { name: of, index: dimensionOf(study, of)!, from: from.nominal, to: to.nominal, step: step?.nominal };
  });
  const lever = column.key === 'opening' ? mechanism.leverIndex.get(column.owner) : undefined;
  const wanted = wantedOf(block.curve, endsOf(study, name));
  const heights = countedPoints(wanted).map((at) => Math.abs(wanted.value(at)));
  const enough = column.dimension === 'angle' ? ENOUGH_ANGLE : ENOUGH_SHARE * Math.max(...heights);
  return { trialCase: { mechanism, free, column: name, wanted, guards: guardsOf(study, demands) }, enough, lever };
}

/** The column that follows the curve, and what is wanted of it; undefined where the file cannot be tuned. */
export function wantedIn(study: Study): { readonly column: string; readonly wanted: Wanted } | undefined {
  return settingOf(study, [])?.trialCase;
}

/**
 * Where a curve given by its slopes begins and ends: closed, and fully open. `isFound`: the file does not say what is full opening, and it
 * is the greatest as the file stands.
 */
export function endsOf(study: Study, name: string): Ends & { readonly isFound: boolean } {
  const column = study.columns.get(name)!;
  const { build, poseAt, mechanism, samples } = study.travel;
  const fullOf = column.lever === undefined ? undefined : mechanism.levers[column.lever]!.fullOpening;
  const full = fullOf === undefined ? NaN : build.parameters[fullOf]!;
  if (column.key === 'opening' && fullOf !== undefined) return { closed: 0, full, isFound: false };
  const plates = mechanism.attached.plates.find((each) => each.name === column.owner);
  if (plates !== undefined && fullOf !== undefined) {
    const at = (opening: number): number => (column.key === 'area' ? areaWhen : fractionWhen)(build, plates, opening);
    return { closed: at(0), full: at(full), isFound: false };
  }
  const read = (at: number): number => column.read(build, poseAt(at));
  return { closed: read(0), full: greatestOf(read, samples)?.value ?? NaN, isFound: true };
}

/** rad */
const ENOUGH_ANGLE = (0.1 * Math.PI) / 180;
/** Of the curve's greatest value. */
const ENOUGH_SHARE = 0.005;

const nameOfColumn = ({ owner, column }: { readonly owner: string; readonly column: string }): string => `${owner}.${column}`;

function dimensionOf({ travel: { mechanism } }: Study, name: string): number | undefined {
  return mechanism.dimensions.find(({ path }) => path === `let.${name}`)?.index;
}

function guardsOf(study: Study, demands: readonly Demand[]): readonly Guard[] {
  return demands.flatMap(({ kept }): readonly Guard[] => {
    if (kept.kind !== 'limit' || (kept.key !== 'transmission' && kept.key !== 'drive')) return [];
    const { key } = kept;
    const least = limitOf(study, key).warning;
    return study.travel.mechanism.joints.flatMap((joint) => {
      // The cable that is the pedal leaves no lever: there is no such angle to keep.
      if (key === 'drive' && joint.kind === 'cable' && joint.driver === undefined) return [];
      const column = `${joint.name}.${key}`;
      return study.columns.has(column) ? [{ column, least }] : [];
    });
  });
}
