/**
 * Every word of the view that does not come from the core, in English: the one place where they stand, and from which the list of what is to
 * be translated is made (`npm run generate`). A text has no gap twice.
 */
import { CHARTS } from './english/charts.ts';
import { DRAWING } from './english/drawing.ts';
import { FAILURES } from './english/failures.ts';
import { KEYS } from './english/keys.ts';
import { PAGE } from './english/page.ts';
import { REPORT } from './english/report.ts';
import { STUDIES } from './english/studies.ts';

export const ENGLISH = {
  ...PAGE,
  ...REPORT,
  ...FAILURES,
  ...CHARTS,
  ...KEYS,
  studies: STUDIES,
  drawing: DRAWING,
} as const;
