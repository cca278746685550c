/** What goes to a thread and comes from it. Both ends are one build; a guard stands at each all the same. */
import type { StudyProgress } from '../../src/protocol/studies.ts';
import { isFound, isProgress } from '../../src/protocol/studiesGuards.ts';
import { isStudyAsk, type StudyAsk, type StudyOutcome } from '../../src/studyText.ts';

/** A study of a text. */
export interface Job {
  readonly text: string;
  readonly ask: StudyAsk;
}

export type FromThread =
  /** It listens. */
  | { readonly type: 'ready' }
  | { readonly type: 'progress'; readonly progress: StudyProgress }
  | { readonly type: 'end'; readonly outcome: StudyOutcome }
  | { readonly type: 'failed'; readonly why: string };

export function isJob(message: unknown): message is Job {
  return isObject(message) && typeof message.text === 'string' && isStudyAsk(message.ask);
}

export function isFromThread(message: unknown): message is FromThread {
  if (!isObject(message)) return false;
  switch (message.type) {
    case 'ready':
      return true;
    case 'progress':
      return isProgress(message.progress);
    case 'end':
      return isOutcome(message.outcome);
    case 'failed':
      return typeof message.why === 'string';
    default:
      return false;
  }
}

function isOutcome(value: unknown): value is StudyOutcome {
  if (!isObject(value)) return false;
  return value.kind === 'found' ? isFound(value.found) : value.kind === 'refused' && typeof value.why === 'string';
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
