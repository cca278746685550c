import type { Failure } from '../failures.mjs';

/** Where a run leaves its counts and what failed, below the clone's folder. */
export const RESULTS_FILE: string;

export interface Results {
  /** Of the editor; empty where it said none. */
  readonly version: string;
  readonly passed: number;
  /** At least 1 unless every test that was promised passed and the run came to its end. */
  readonly failed: number;
  /** In the order of the run; empty where `failed` is 0. */
  readonly failures: readonly Failure[];
}

export interface Collected {
  hear(line: string): void;
  /** Resolves with the last line. */
  readonly finished: Promise<void>;
  results(): Results;
}

/** @param print takes what a person should see */
export function collectResults(print: (line: string) => void): Collected;
