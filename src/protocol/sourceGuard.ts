/** The guard of the text that a message speaks of. */
import { isFiniteNumber, isText, shape } from './guard.ts';
import type { Source } from './messages.ts';

export const isSource = shape<Source>({ uri: isText, version: isFiniteNumber });
