/**
 * How far the curves of the charts spread over builds within the tolerances: of each, between what nine of ten builds lie. What acts, torques
 * and effort among it, counts the friction that the file gives.
 */
import type { Study } from '../../findings/study.ts';
import { isGiven } from '../../forces/friction/missing.ts';
import type { SpreadColumn, StudySpread } from '../../protocol/studies.ts';
import { BAND_BUILDS, bandsOf, BAND_SHARES, type Figure } from '../../studies/tolerance/bands.ts';
import type { Law } from '../../studies/tolerance/monteCarlo.ts';
import type { Progress } from '../../studies/tolerance/stack.ts';
import { variedFigures } from '../../kinematics/toleranced.ts';
import { percentText } from '../../outputs/figure.ts';
import { PLANS } from './charts.ts';
import type { CurvePlan } from './plan.ts';

interface Spreading {
  readonly column: Figure;
  readonly shown: NonNullable<CurvePlan['shown']>;
}

/** Yields as it goes. Undefined where no curve can spread. */
export function* spreadOf(
  study: Study,
  { seed, law }: { readonly seed: number; readonly law: Law },
): Generator<Progress, StudySpread | undefined> {
  const { mechanism } = study.travel;
  const toleranced = variedFigures(mechanism);
  const curves = PLANS.flatMap((plan) => plan(study).curves).flatMap(({ column: charted, shown = same }): readonly Spreading[] => {
    const column = isRead(charted) ? charted : study.columns.get(charted.name);
    return column === undefined ? [] : [{ column, shown }];
  });
  if (toleranced.length === 0 || curves.length === 0) return undefined;
  const columns = [...new Set(curves.map(({ column }) => column))];
  const { missing, bands } = yield* bandsOf(mechanism, columns, toleranced, STATIONS, { seed, law, from: 0, to: BAND_BUILDS });
  const words = [
    `Shaded beside a curve: ${percentText(BAND_SHARES.low)} of ${BAND_BUILDS} random builds within the tolerances lie below, as many above` +
      `${missing > 0 ? `; ${missing} that have no figure somewhere, as where they cannot be assembled, are left out there` : ''}.`,
    ...(curves.some(({ column }) => 'forces' in column) ? [frictionWords(study)] : []),
  ].join(' ');
  return {
    words,
    stations: Float64Array.from(STATIONS),
    columns: curves.map(({ column, shown }): SpreadColumn => {
      const { low, high } = bands.find((band) => band.column === column)!;
      const [a, b] = [low, high].map((values) => values.map((value) => shown(value * column.scale))) as [Float64Array, Float64Array];
      return {
        column: column.name,
        low: a.map((value, i) => finite(Math.min(value, b[i]!))),
        high: b.map((value, i) => finite(Math.max(value, a[i]!))),
      };
    }),
  };
}

/** Whether it can be read of any build. */
function isRead(column: CurvePlan['column']): column is CurvePlan['column'] & Figure {
  return 'read' in column;
}

function frictionWords({ travel: { mechanism } }: Study): string {
  return isGiven(mechanism.friction)
    ? 'Effort counts the friction that the file gives.'
    : 'Friction is left out of the effort: the file gives none.';
}

const same = (value: number): number => value;

const finite = (value: number): number => (Number.isFinite(value) ? value : NaN);

const STATIONS: readonly number[] = Array.from({ length: 101 }, (_, i) => i / 100);
