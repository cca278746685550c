/** `tolerance FILE`: what the file's tolerances do to openings, signals, angles and effort. */
import { toleranceText } from '../../src/outputs/toleranceText.ts';
import { finished } from '../../src/studies/finished.ts';
import { TOLERANCE_DEFAULTS, tolerances, whyNoTolerance } from '../../src/studies/tolerance/tolerance.ts';
import type { StudyRequest } from '../arguments.ts';
import type { Io } from '../io.ts';
import { studyFile } from '../studyFile.ts';

export function tolerance(request: StudyRequest, io: Io): Promise<number> {
  return studyFile(request, io, ({ study, problems }, options) => {
    if (study === undefined) return 'Nothing in the file can be solved';
    const why = whyNoTolerance(study);
    if (why !== undefined) return why;
    const found = finished(tolerances(study, { ...TOLERANCE_DEFAULTS, ...(request.seed !== undefined && { seed: request.seed }) }));
    const isUnread = problems.some(({ severity }) => severity === 'error');
    return { page: toleranceText(found, options), isSound: found.kept?.share === 1 && !isUnread };
  });
}
