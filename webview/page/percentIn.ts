/** Reads the pedal travel that a person types. */
import { numberIn } from '../panels/numberText.ts';

/** What is typed, in percent, with a point or a comma; undefined where it is no number from 0 to 100. */
export function percentIn(typed: string): number | undefined {
  const read = numberIn(typed, '%');
  if (read === undefined) return undefined;
  const percent = 'number' in read ? read.number : read.wrong === 'comma' ? Number(read.meant) : Number.NaN;
  return percent >= 0 && percent <= 100 ? percent : undefined;
}
