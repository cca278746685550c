/** `tune FILE`: the dimensions that give the curve which the file asks for. */
import { tunedJson } from '../../src/outputs/tunedJson.ts';
import { tunedText } from '../../src/outputs/tunedText.ts';
import { finished } from '../../src/studies/finished.ts';
import { isMet, TUNE_DEFAULTS } from '../../src/studies/tune/tune.ts';
import { tuneText } from '../../src/tuneText.ts';
import type { StudyRequest } from '../arguments.ts';
import type { Io } from '../io.ts';
import { studyFile } from '../studyFile.ts';

export function tune(request: StudyRequest, io: Io): Promise<number> {
  return studyFile(request, io, (answers, options) => {
    const { seed = TUNE_DEFAULTS.seed } = request;
    const outcome = finished(tuneText(answers.text, { ...TUNE_DEFAULTS, seed }));
    if (outcome.kind === 'not-tuned') return outcome.why;
    const [best] = outcome.answers;
    const isSound = isMet(best, outcome.enough);
    const { definition } = answers;
    const asJson = request.format === 'json' && definition !== undefined;
    const page = asJson ? tunedJson(answers, definition, outcome, seed, options.file) : tunedText(answers, outcome, options);
    return { page, isSound };
  });
}
