/** What a fix is after: a figure of the linkage at a wanted value, by way of one figure of the file. */
import type { Outcome } from '../findings/finding.ts';

export interface FixAim {
  /** Path of the figure to write, as in `Value.path`; it need not be in the file yet. */
  readonly unknown: string;
  readonly outcome: Outcome;
  /** SI. Worked out only when the fix is asked for. */
  readonly target: () => number;
  /** On which side of the target the unknown must stay, where the finding alone does not tell. */
  readonly stay?: 'below';
  /** Whether a second figure may be written with it, where this one alone does not do it. */
  readonly goesOn?: true;
}
