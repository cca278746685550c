/** Has single failures and snap-backs worked out, when a person asks for them: one table at a time, and of the snap-backs the newest. */
import type { ReturnRow, Working } from '../../src/protocol/returns.ts';
import { isSameTried, messageOf, requestReturns, requestTrace, triedNow } from '../send.ts';
import { announcement, returns, returnsComing, returnsRefused, shown, snapAsked } from '../state.ts';
import { WORDS } from '../words.ts';
import { endSnapBack, startSnapBack } from './snapBack.ts';

/** A row of its own in the table. */
export const rowKey = ({ failure }: Pick<ReturnRow, 'failure'>): string => (failure === undefined ? '' : `${failure.kind} ${failure.part}`);

/** Whether the table is of what the picture shows. */
export const areReturnsCurrent = (): boolean => returns.value !== undefined && isSameTried(returns.value.of, triedNow());

/** After this a person wants to know that something is going on. */
const LONG_MS = 500;

export async function workOutReturns(): Promise<void> {
  const of = triedNow();
  if (of === undefined || returnsComing.value !== undefined) return;
  returnsComing.value = { of, progress: undefined };
  returnsRefused.value = undefined;
  const timer = setTimeout(() => (announcement.value = WORDS.beingWorkedOut), LONG_MS);
  try {
    const table = await requestReturns(of);
    // The page may be of another file by then.
    if (shown.value?.source.uri !== of.source.uri) return;
    returns.value = { of, table };
    snapAsked.value = undefined;
    announcement.value = WORDS.failuresAnnounced(table.verdict);
  } catch (error) {
    returnsRefused.value = WORDS.failuresNotCome(messageOf(error));
    announcement.value = returnsRefused.value;
  } finally {
    clearTimeout(timer);
    returnsComing.value = undefined;
  }
}

/** What comes late, twice, out of turn, or of what was not asked for is left aside. */
export function tellWorking(working: Working): void {
  const coming = returnsComing.value;
  if (coming === undefined || !isSameTried(coming.of, working)) return;
  const { done, all } = working;
  if (done > (coming.progress?.done ?? -1)) returnsComing.value = { of: coming.of, progress: { done, all } };
}

/** Counts what was asked for, so that an answer to something older is told. */
let asked = 0;

/** Plays the snap-back of a row, of the table as it stands. */
export async function playReturn(row: ReturnRow): Promise<void> {
  const of = returns.value?.of;
  if (of === undefined || !isSameTried(of, triedNow())) return;
  const mine = ++asked;
  endSnapBack();
  snapAsked.value = { row: rowKey(row), why: undefined };
  try {
    const trace = await requestTrace(of, row.failure);
    if (mine !== asked) return;
    snapAsked.value = undefined;
    if (!isSameTried(of, triedNow()) || trace.rotations.length !== shown.value?.picture.levers.length) return;
    const lost = row.failure?.kind === 'cable-seized' ? undefined : row.part;
    startSnapBack({ of, failure: row.failure, name: row.name, lost, trace });
  } catch (error) {
    if (mine !== asked) return;
    const why = WORDS.snapNotCome(messageOf(error));
    snapAsked.value = { row: rowKey(row), why };
    announcement.value = why;
  }
}
