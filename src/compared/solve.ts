/** Solving, as what counts or stops it is handed to what needs it. */
import type { Answered } from '../findings/answered.ts';

export type Solve = (text: string) => Answered;
