/**
 * What the foot feels where a throttle shaft meets its open stop before the pedal is down, and at full pedal: the rest of the travel stretches
 * the cable or bends the linkage, and the greatest effort is then not what it takes to open the throttle.
 */
import type { Fact } from '../finding.ts';
import { effortAlong } from '../forcesAlong.ts';
import type { Study } from '../study.ts';
import { isUnbounded } from '../unbounded.ts';

/** None where both are the same, or no shaft meets its stop before. @param label what is felt; `note`: what is left out of it */
export function effortAtStop(study: Study, label: string, note: string): readonly Fact[] {
  const { mechanism, contacts } = study.travel;
  const [first] = contacts
    .filter(({ lever, travel }) => mechanism.levers[lever]!.plates.length > 0 && travel < 1)
    .sort((one, other) => one.travel - other.travel);
  if (first === undefined) return [];
  const effort = effortAlong(study);
  const [atStop, atFull] = [effort(first.travel), effort(1)];
  const isKnown = [atStop, atFull].every((value) => Number.isFinite(value) && !isUnbounded(value, 'force'));
  if (!isKnown || Math.abs(atFull - atStop) < TENTH) return [];
  const fact = (key: string, words: string, value: number, travel: number): Fact => ({
    key,
    part: 'pedal',
    label: `${label} ${words}${note}`,
    figure: { value, dimension: 'force' },
    travel,
  });
  return [
    fact('effort-at-stop', `as ${mechanism.levers[first.lever]!.name} meets its open stop`, atStop, first.travel),
    fact('effort-at-full', 'at full pedal, pressed on beyond that stop', atFull, 1),
  ];
}

/** N: what is not told apart where forces are shown. */
const TENTH = 0.1;
