/** Steps from finding to finding, each at the pedal travel where it is worst. */
import type { ReportedMark } from '../../src/protocol/report.ts';
import { announcement, selected, shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { setTravel } from './play.ts';

/** The finding that was gone to last; its place in the list is told by what it says. */
let last: ReportedMark | undefined;

/** Those that are worst somewhere. */
const placed = () => (shown.value?.report.marks ?? []).filter(({ worst }) => worst !== undefined);

/** Sets the pedal where a finding is worst, and lights its part up. */
export function goToWorst(mark: ReportedMark): void {
  if (mark.worst === undefined) return;
  last = mark;
  setTravel(mark.worst);
  const part = shown.value?.report.parts.find(({ name }) => name === mark.part);
  if (part !== undefined) selected.value = part;
  announcement.value = WORDS.atWorst(mark, mark.worst);
}

/** To the next finding in the list, or to the one before; round and round. */
export function stepWorst(way: 1 | -1): void {
  const marks = placed();
  if (marks.length === 0) {
    announcement.value = WORDS.noPlacedFinding;
    return;
  }
  const index = marks.findIndex((mark) => mark.code === last?.code && mark.message === last.message);
  const next = index < 0 ? (way > 0 ? 0 : marks.length - 1) : (index + way + marks.length) % marks.length;
  goToWorst(marks[next]!);
}
