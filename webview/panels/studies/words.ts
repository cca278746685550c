/** Words of the studies that do not come from the editor. */
import type { StudyKind } from '../../../src/protocol/studies.ts';

export const STUDY_WORDS = {
  title: 'Studies',
  hint: 'Each takes some seconds; the editor goes on meanwhile. Nothing is written until you say so.',
  names: {
    tune: 'Dimensions for the curve',
    tolerance: 'What tolerances do',
    solve: 'One figure solved for',
    fit: 'The car as built',
  } satisfies Record<StudyKind, string>,
  ask: {
    tune: 'Find dimensions',
    tolerance: 'What tolerances do',
    solve: 'Solve for a figure…',
    fit: 'Fit to the measurements',
  } satisfies Record<StudyKind, string>,
  begun: 'begins…',
  working: (note: string, share: number, left: number | undefined) =>
    `${note}, ${Math.floor(100 * share)} %${left === undefined ? '' : `, about ${Math.max(1, Math.round(left))} s left`}`,
  bar: (name: string) => `${name}: how far`,
  cancel: 'Cancel',
  cancelled: 'Cancelled; nothing was found out.',
  again: 'Run again',
  putAway: 'Put away',
  old: 'Of the text before the last change, not as it stands.',
  outrun: 'Of the files of readings before the last change, not as they stand.',
  notCome: (why: string) => `Not worked out: ${why}.`,
  write: 'Write this',
  isWritten: 'Written: one undo takes it back.',
  nothingToWrite: 'The file has these values already.',
  diff: (title: string) => `Lines that ${title.toLowerCase()} changes`,
  lineNumber: (line: number) => `line ${line}`,
  removed: 'was',
  added: 'is',
  announced: {
    running: (name: string) => `${name}: begun`,
    cancelled: (name: string) => `${name}: cancelled`,
    refused: (name: string, why: string) => `${name}: ${why}`,
    found: (name: string, verdict: string) => `${name}: ${verdict}`,
    written: 'Written into the text',
  },
} as const;
