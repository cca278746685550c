/** How long what is under way will still take, from how far it has come: as fast as it was so far. */
import type { StudyProgress } from '../../src/protocol/studies.ts';

/** @returns s left, undefined while too little is done to tell; what is done next, by another note, is counted anew */
export function estimateTimeLeft(): (progress: StudyProgress, nowMs: number) => number | undefined {
  let began: { readonly note: string; readonly share: number; readonly atMs: number } | undefined;
  return ({ share, note }, nowMs) => {
    if (began?.note !== note || share < began.share) began = { note, share, atMs: nowMs };
    const [spentMs, done] = [nowMs - began.atMs, share - began.share];
    return spentMs < LEAST_MS || done < LEAST_SHARE ? undefined : (spentMs * (1 - share)) / done / 1000;
  };
}

/** What is told earlier jumps about. Common practice, no source. */
const LEAST_MS = 500;
const LEAST_SHARE = 0.02;
