/** What a thread does: one study after the other, each told of as it goes. Whoever wants it to stop ends the thread. */
import { studyText } from '../../src/studyText.ts';
import { isJob, type FromThread } from './jobs.ts';

export interface ThreadPort {
  post(message: FromThread): void;
  listen(heard: (message: unknown) => void): void;
}

export function serveStudies({ post, listen }: ThreadPort): void {
  listen((message) => {
    if (!isJob(message)) return;
    try {
      const steps = studyText(message.text, message.ask);
      let told = Date.now();
      for (;;) {
        const { done, value } = steps.next();
        if (done === true) return post({ type: 'end', outcome: value });
        if (Date.now() - told < TOLD_EVERY_MS) continue;
        told = Date.now();
        post({ type: 'progress', progress: value });
      }
    } catch (error) {
      post({ type: 'failed', why: error instanceof Error ? error.message : String(error) });
    }
  });
  post({ type: 'ready' });
}

/** As often as a person can read. */
const TOLD_EVERY_MS = 100;
