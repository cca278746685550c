/** Figures over the travel, in words. */
import { along, type Study } from '../../findings/study.ts';
import { figureText, percentText } from '../../outputs/figure.ts';
import { fullTravel } from '../../sensor/sensorAt.ts';
import { greatestOf, leastOf, type Extreme } from '../../travel/extremes.ts';

/** Undefined where the column has no value anywhere, or there is no such column. */
export function extremesOf(study: Study, column: string): { readonly least: Extreme; readonly greatest: Extreme } | undefined {
  const figure = along(study, column);
  const { samples } = study.travel;
  const least = leastOf(figure, samples);
  const greatest = greatestOf(figure, samples);
  return least && greatest && { least, greatest };
}

/** A column's value, with the foot off or the pedal down as far as it goes; `–` where it has none. */
export function textAt(study: Study, column: string, where: 'rest' | 'full'): string {
  return columnText(study, column, along(study, column)(where === 'rest' ? 0 : fullTravel(study.travel.build)));
}

/** A value of a column, in its unit. */
export function columnText(study: Study, column: string, value: number): string {
  const found = study.columns.get(column);
  if (found?.unit === '%') return percentText(value);
  return figureText({ value, dimension: found?.dimension ?? 'number' });
}

/** E.g. `43.1° at 100 %`; undefined where it has no value anywhere. */
export function leastText(study: Study, column: string): string | undefined {
  const found = extremesOf(study, column)?.least;
  return found && `${columnText(study, column, found.value)} at ${percentText(found.travel)}`;
}

/** E.g. `82° at 97.1 %`; undefined where it has no value anywhere. */
export function greatestText(study: Study, column: string): string | undefined {
  const found = extremesOf(study, column)?.greatest;
  return found && `${columnText(study, column, found.value)} at ${percentText(found.travel)}`;
}
