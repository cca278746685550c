/** Names for what is saved: after the file and what it shows, e.g. `four-barrel-progression.svg`. */
import { shown } from '../state.ts';

export const fileNameFor = (what: string, kind: string): string =>
  `${(shown.value?.fileName ?? 'linkage').replace(/(?:\.throttle)?\.ya?ml$/i, '')}-${what}.${kind}`;
