/** `tune FILE`: the dimensions that give the curve which the file asks for. */
import { tunedText } from '../../src/outputs/tunedText.ts';
import { finished } from '../../src/studies/finished.ts';
import { keepsAll, TUNE_DEFAULTS } from '../../src/studies/tune/tune.ts';
import { tuneText } from '../../src/tuneText.ts';
import type { StudyRequest } from '../arguments.ts';
import type { Io } from '../io.ts';
import { studyFile } from '../studyFile.ts';

export function tune(request: StudyRequest, io: Io): Promise<number> {
  return studyFile(request, io, (answers, options) => {
    const outcome = finished(tuneText(answers.text, { ...TUNE_DEFAULTS, ...(request.seed !== undefined && { seed: request.seed }) }));
    if (outcome.kind === 'not-tuned') return outcome.why;
    const [best] = outcome.answers;
    const isSound = best !== undefined && keepsAll(best) && best.error <= outcome.enough;
    return { page: tunedText(answers, outcome, options), isSound };
  });
}
