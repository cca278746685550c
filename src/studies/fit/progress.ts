/** How far a fit has come. */
export interface FitProgress {
  readonly done: number;
  readonly of: number;
  /** What is done now, in words. */
  readonly note: string;
}

/** @param done phases that are over @param note what is done now, in words */
export function progress(done: number, note: string): FitProgress {
  return { done, of: PHASES, note };
}

const PHASES = 4;
