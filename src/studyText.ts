/** A text and what is asked of it in, a page for the view out: every study by one door, for a face that runs it in steps. */
import type { StudyFound, StudyProgress } from './protocol/studies.ts';
import { spreadOf } from './picture/charts/spread.ts';
import { fitPage } from './picture/studies/fitPage.ts';
import { solvePage } from './picture/studies/solvePage.ts';
import { tolerancePage } from './picture/studies/tolerancePage.ts';
import { tunePage } from './picture/studies/tunePage.ts';
import { solve } from './solve.ts';
import { TOLERANCE_DEFAULTS, tolerances, whyNoTolerance } from './studies/tolerance/tolerance.ts';
import { solveFigure, type FigureQuestion } from './solveFigure.ts';
import { fitText } from './fitText.ts';
import type { BesideFile } from './studies/fit/gather.ts';
import { tuneText } from './tuneText.ts';

export type StudyAsk =
  | { readonly kind: 'tune' }
  | { readonly kind: 'tolerance' }
  /** `beside`: the CSV files of the readings, by name. */
  | { readonly kind: 'fit'; readonly beside: readonly (readonly [string, BesideFile])[] }
  | { readonly kind: 'solve'; readonly question: FigureQuestion };

export type StudyOutcome =
  | { readonly kind: 'found'; readonly found: StudyFound }
  /** `why` is a sentence without a full stop. */
  | { readonly kind: 'refused'; readonly why: string };

export type StudySteps = Generator<StudyProgress, StudyOutcome>;

/** Yields as it goes; whoever asks for the next step decides whether to go on. Never throws, whatever the text. The outcome is plain data. */
export function studyText(text: string, ask: StudyAsk): StudySteps {
  switch (ask.kind) {
    case 'tune':
      return tuneSteps(text);
    case 'tolerance':
      return toleranceSteps(text);
    case 'fit':
      return fitSteps(text, ask.beside);
    case 'solve':
      return solveSteps(text, ask.question);
  }
}

function* tuneSteps(text: string): StudySteps {
  const steps = tuneText(text);
  let [share, note] = [0, 'searching'];
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) {
      if (value.kind === 'not-tuned') return { kind: 'refused', why: value.why };
      yield { share, note };
      const answers = solve(text);
      yield { share, note };
      return { kind: 'found', found: tunePage(answers, value) };
    }
    const next = value.of > 0 ? value.done / value.of : 0;
    // Where nothing keeps everything it is begun again, with one demand after the other left out.
    if (next < share) note = 'seeing what stands in the way';
    share = next;
    yield { share, note };
  }
}

function* toleranceSteps(text: string): StudySteps {
  const answers = solve(text);
  yield { share: 0, note: 'building at random' };
  const { study } = answers;
  if (study === undefined) return { kind: 'refused', why: 'Nothing in the file can be solved' };
  const why = whyNoTolerance(study);
  if (why !== undefined) return { kind: 'refused', why };
  const found = yield* noted(tolerances(study), 'building at random');
  const spread = found.toleranced.length === 0 ? undefined : yield* noted(spreadOf(study, TOLERANCE_DEFAULTS), 'bands for the charts');
  return { kind: 'found', found: tolerancePage(answers, found, spread) };
}

function* fitSteps(text: string, beside: readonly (readonly [string, BesideFile])[]): StudySteps {
  const files = new Map(beside);
  const steps = fitText(text, (name) => files.get(name) ?? { kind: 'missing' });
  let said: StudyProgress = { share: 0, note: 'the dimensions' };
  for (;;) {
    const { done, value } = steps.next();
    if (done !== true) {
      said = { share: value.of > 0 ? Math.min(1, value.done / value.of) : 0, note: value.note };
      yield said;
      continue;
    }
    const answers = solve(text);
    yield said;
    const { study, problems } = answers;
    if (value.kind === 'fitted' && study !== undefined)
      return { kind: 'found', found: fitPage(text, study, value, [...problems, ...value.problems]) };
    return { kind: 'refused', why: value.kind === 'not-fitted' ? value.why : 'Nothing in the file can be solved' };
  }
}

function* solveSteps(text: string, question: FigureQuestion): StudySteps {
  const outcome = yield* noted(solveFigure(text, question), 'looking');
  const answers = solve(text);
  yield { share: 1, note: 'looking' };
  const { study } = answers;
  if (outcome.kind === 'refused' || study === undefined) {
    const { why = 'Nothing in the file can be solved', cure } = outcome.kind === 'refused' ? outcome : {};
    return { kind: 'refused', why: cure === undefined ? why : `${why}. ${cure}` };
  }
  return { kind: 'found', found: solvePage(text, study, outcome) };
}

function* noted<End>(steps: Generator<{ readonly done: number; readonly of: number }, End>, note: string): Generator<StudyProgress, End> {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
    yield { share: value.of > 0 ? Math.min(1, value.done / value.of) : 0, note };
  }
}

/** Whether something from elsewhere is asked of a text. */
export function isStudyAsk(value: unknown): value is StudyAsk {
  if (typeof value !== 'object' || value === null || !('kind' in value)) return false;
  if (value.kind === 'tune' || value.kind === 'tolerance') return true;
  if (value.kind === 'fit') return 'beside' in value && Array.isArray(value.beside);
  return value.kind === 'solve' && 'question' in value && isQuestion(value.question);
}

function isQuestion(value: unknown): value is FigureQuestion {
  if (typeof value !== 'object' || value === null) return false;
  const { change, demand, from, to } = value as Readonly<Record<string, unknown>>;
  const isLeftOut = (bound: unknown): boolean => bound === undefined || typeof bound === 'string';
  return typeof change === 'string' && typeof demand === 'string' && isLeftOut(from) && isLeftOut(to);
}
