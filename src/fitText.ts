/** A text with a `measured` block in, what the car's dimensions are out: for every face that fits. */
import { applyEdits } from './definition/edit.ts';
import type { Problem } from './definition/problem.ts';
import type { Study } from './findings/study.ts';
import { createBuild } from './kinematics/createBuild.ts';
import { unknownAt } from './language/fixUnknown.ts';
import { solve } from './solve.ts';
import { drawnRodLength } from './studies/fit/drawnRodLength.ts';
import { fit, type Fit } from './studies/fit/fit.ts';
import { gatherReadings, type ReadBeside } from './studies/fit/gather.ts';
import { progress, type FitProgress } from './studies/fit/progress.ts';
import type { SolveAs } from './studies/fit/turnWeighed.ts';

export type FitOutcome =
  | (Fit & { readonly kind: 'fitted'; readonly problems: readonly Problem[] })
  /** `why` is a sentence without a full stop. `problems` are those of the CSV files, at places of the text. */
  | { readonly kind: 'not-fitted'; readonly why: string; readonly problems: readonly Problem[] };

/**
 * Yields as it goes; whoever asks for the next step decides whether to go on. Never throws, whatever the text.
 * @param beside the CSV files of the runs, whose names `csvNames` tells
 */
export function* fitText(text: string, beside: ReadBeside): Generator<FitProgress, FitOutcome> {
  const answers = solve(text);
  yield progress(0, 'the dimensions');
  const { study, definition } = answers;
  const gathered = definition === undefined ? { runs: [], problems: [], refusing: undefined } : gatherReadings(definition, beside);
  const { problems } = gathered;
  if (study === undefined) return { kind: 'not-fitted', why: 'Nothing in the file can be solved', problems };
  const found = yield* fit(study, gathered, solverOf(text, study));
  return typeof found === 'string' ? { kind: 'not-fitted', why: found, problems } : { kind: 'fitted', ...found, problems };
}

/** A rod's length that the file leaves as drawn is written as long as it is between the arms that the car has. */
function solverOf(text: string, study: Study): SolveAs {
  const { mechanism } = study.travel;
  return (figures) => {
    const car = Float64Array.from(mechanism.nominal);
    for (const { path, value } of figures) {
      const known = mechanism.dimensions.find((each) => each.path === path);
      if (known !== undefined) car[known.index] = value;
    }
    const build = createBuild(mechanism, car);
    const edits = figures.map(({ path, value }) => {
      const known = mechanism.dimensions.find((each) => each.path === path);
      return unknownAt(study, path).edit(text, (known && drawnRodLength(build, known.index)) ?? value);
    });
    return edits.every((edit) => edit !== undefined) ? solve(applyEdits(text, edits)) : undefined;
  };
}
