/** A file as it stands once every single failure was looked at: what is told when there is time for that. */
import type { FailureRow, PlatesLeft } from '../failures/failure.ts';
import type { Failures } from '../findings/failures.ts';
import type { NotChecked } from '../findings/finding.ts';
import { inOrder } from '../findings/findings.ts';
import { isOfFailures } from '../findings/notChecked.ts';
import { listed } from '../findings/words.ts';
import type { Answers } from '../solve.ts';
import { withFindings } from './withFindings.ts';

/**
 * With what single failures do among its findings, and in place of the line that they were not checked those that could not be. Works the
 * failures out where that was not done (`Failures.work`), but no times.
 */
export function withFailures(answers: Answers): Answers {
  const failures = answers.failures();
  if (failures === undefined) return answers;
  return withFindings(answers, inOrder(answers.findings, failures.late), () =>
    answers.notChecked.flatMap((each) => (isOfFailures(each) ? leftOpen(each, failures) : [each])),
  );
}

/** What could not be told, those of the same plates for the same reason together. @param told the line that these take the place of */
function leftOpen(told: NotChecked, { whole, rows, notChecked }: Failures): readonly NotChecked[] {
  if (notChecked !== undefined) return [{ ...told, message: `${told.message.split(':', 2).join(':')}: ${notChecked}` }];
  const groups = new Map<string, { readonly left: PlatesLeft; readonly lost: string[]; isWhole: boolean }>();
  for (const { failure, plates } of [whole, ...rows.filter(isLost)]) {
    for (const left of plates.filter(({ outcome }) => outcome === 'not-checked')) {
      const key = JSON.stringify([left.levers, left.why]);
      const group = groups.get(key) ?? { left, lost: [], isWhole: false };
      groups.set(key, group);
      if (failure === undefined) group.isWhole = true;
      else group.lost.push(failure.part);
    }
  }
  return [...groups.values()].map(({ left: { levers, why, butPedal }, lost, isWhole }) => {
    const when = [...(isWhole ? ['with every part'] : []), ...(lost.length === 0 ? [] : [`with ${eachOf(lost)} lost`])].join(' and ');
    const closes = levers.length === 1 ? 'closes' : 'close';
    if (butPedal)
      return {
        ...told,
        message: `Not checked: the pedal’s return ${when}, since the file gives of it the cable alone; ${listed(levers)} ${closes}`,
      };
    return { ...told, message: `Not checked: whether ${listed(levers)} ${closes} ${when}${why === undefined ? '' : `: ${why}`}` };
  });
}

/** A cable that seizes holds what it opens on every throttle: whether it does is no question of the file. */
function isLost({ failure }: FailureRow): boolean {
  return failure?.kind !== 'cable-seized';
}

function eachOf(parts: readonly string[]): string {
  const named = parts.length > MOST_NAMED ? [...parts.slice(0, MOST_NAMED), `${parts.length - MOST_NAMED} more`] : parts;
  return parts.length === 1 ? listed(named) : `each of ${listed(named)}`;
}

const MOST_NAMED = 6;
