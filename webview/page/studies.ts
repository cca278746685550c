/** What is told of studies, and the writing of their answers. */
import type { StudyKind, ToldStudy } from '../../src/protocol/studies.ts';
import { messageOf, requestAnswer } from '../send.ts';
import { announcement, complaint, missing, shown, studies, studyToShow, writtenAnswer } from '../state.ts';
import { WORDS } from '../words.ts';

export function tellStudy({ kind, source, now, isOutrun, show }: ToldStudy): void {
  const before = studies.peek()[kind]?.now.stage;
  studies.value = { ...studies.peek(), [kind]: { source, now, isOutrun } };
  if (show) studyToShow.value = { kind };
  const { names, announced } = WORDS.studies;
  if (now.stage === 'running' && before !== 'running') announcement.value = announced.running(names[kind]);
  if (now.stage === 'cancelled') announcement.value = announced.cancelled(names[kind]);
  if (now.stage === 'refused') announcement.value = announced.refused(names[kind], now.why);
  // What was found is told again as old: that it was found is known.
  if (now.stage === 'found' && !isOutrun) announcement.value = announced.found(names[kind], now.found.verdict);
  if (now.stage === 'running' && writtenAnswer.peek()?.kind === kind) writtenAnswer.value = undefined;
}

/** Takes a study off the page. */
export function putAway(kind: StudyKind): void {
  const { [kind]: _, ...others } = studies.peek();
  studies.value = others;
}

/** Whether a study is of the text as the page shows it, or of the one before its own answer was written, and of the files beside it as they are. */
export function isStudyCurrent(kind: StudyKind): boolean {
  const { source: of, isOutrun = false } = studies.value[kind] ?? {};
  if (isOutrun) return false;
  const now = shown.value?.source;
  if (now === undefined || of?.uri !== now.uri || missing.value !== undefined) return false;
  const { value: written } = writtenAnswer;
  return of.version === now.version || (written?.kind === kind && written.version === now.version);
}

/** One undo step. */
export async function chooseAnswer(kind: StudyKind, block: number): Promise<void> {
  const source = studies.peek()[kind]?.source;
  if (source === undefined) return;
  try {
    const version = await requestAnswer({ kind, source, block });
    writtenAnswer.value = { kind, block, version };
    announcement.value = WORDS.studies.announced.written;
  } catch (error) {
    complaint.value = WORDS.notWritten(messageOf(error));
  }
}
