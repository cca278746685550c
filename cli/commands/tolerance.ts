/** `tolerance FILE`: what the file's tolerances do to openings, signals, angles and effort, and how many builds keep rules and requirements. */
import { toleranceJson } from '../../src/outputs/toleranceJson.ts';
import { toleranceText } from '../../src/outputs/toleranceText.ts';
import { isKeptByAll } from '../../src/outputs/toleranceVerdict.ts';
import { finished } from '../../src/studies/finished.ts';
import { BAND_BUILDS, bandsOf, mainCurves } from '../../src/studies/tolerance/bands.ts';
import { TOLERANCE_DEFAULTS, tolerances, whyNoTolerance, type ToleranceOptions } from '../../src/studies/tolerance/tolerance.ts';
import type { StudyRequest } from '../arguments.ts';
import type { Io } from '../io.ts';
import { studyFile } from '../studyFile.ts';

export function tolerance(request: StudyRequest, io: Io): Promise<number> {
  return studyFile(request, io, (answers, page) => {
    const { study, problems } = answers;
    if (study === undefined) return 'Nothing in the file can be solved';
    const why = whyNoTolerance(study);
    if (why !== undefined) return why;
    const { seed = TOLERANCE_DEFAULTS.seed, law = TOLERANCE_DEFAULTS.law, builds = TOLERANCE_DEFAULTS.builds } = request;
    const options: ToleranceOptions = { seed, law, builds };
    const found = finished(tolerances(study, options));
    const isUnread = problems.some(({ severity }) => severity === 'error');
    const isSound = isKeptByAll(found) && !isUnread;
    if (request.format === 'text') return { page: toleranceText(found, page), isSound };
    const columns = mainCurves(study);
    const drawn = { ...options, from: 0, to: Math.min(BAND_BUILDS, builds) };
    const spread =
      columns.length === 0 || found.toleranced.length === 0
        ? undefined
        : finished(bandsOf(study.travel.mechanism, columns, found.toleranced, STATIONS, drawn));
    const bands = spread && { ...spread, builds: drawn.to, stations: STATIONS };
    return { page: toleranceJson(answers, found, bands, page.file), isSound };
  });
}

/** Pedal travels of the bands. */
const STATIONS: readonly number[] = Array.from({ length: 101 }, (_, i) => i / 100);
