/**
 * The JSON of `solve`, as types: `docs/outputs.md` describes it, `schema/solve.schema.json` holds it. A key keeps its meaning; what is not
 * there is `null`, never left out.
 */
import type { RequirementOutcome } from '../../requirements/requirement.ts';
import type { Place } from '../place.ts';
import type { JsonRequirement } from './document.ts';
import type { JsonFigure } from './figures.ts';

export interface JsonSolvedFigure {
  /** Of this shape. */
  readonly format: 1;
  /** As given; `<stdin>` for standard input. */
  readonly file: string;
  readonly title: string | null;
  readonly change: { readonly name: string; readonly path: string; readonly present: JsonFigure };
  /** `name` is null for a condition that is no line of `require`. */
  readonly demand: { readonly name: string | null; readonly text: string; readonly now: JsonDemand };
  readonly bounds: { readonly from: JsonFigure; readonly to: JsonFigure; readonly by: 'asked' | 'tune' | 'usual' };
  /** At so many values evenly within the bounds, `missing` of them without a value; two crossings nearer together than `apart` can be missed. */
  readonly search: { readonly places: number; readonly missing: number; readonly apart: JsonFigure };
  /** Rising. */
  readonly choices: readonly JsonChoice[];
  /** Null where there are choices, or the demand has no value anywhere. */
  readonly nearest: { readonly value: JsonFigure; readonly answer: JsonDemand } | null;
  /** `open`: known to a step between two places only. */
  readonly holding: readonly {
    readonly from: JsonFigure;
    readonly to: JsonFigure;
    readonly openFrom: boolean;
    readonly openTo: boolean;
  }[];
  readonly caution: string;
}

/** How the linkage stands to the demand. */
export interface JsonDemand {
  readonly outcome: RequirementOutcome;
  readonly reason: string | null;
  readonly comparisons: readonly Omit<JsonRequirement['comparisons'][number], 'place'>[];
}

export interface JsonChoice {
  /** Where it is just met, and what is written. */
  readonly root: JsonFigure;
  readonly value: JsonFigure;
  readonly answer: JsonDemand;
  readonly edits: readonly { readonly place: Place; readonly text: string }[];
  readonly effects: {
    readonly worse: boolean;
    readonly text: string;
    readonly requirements: readonly {
      readonly name: string;
      readonly was: RequirementOutcome | null;
      readonly is: RequirementOutcome | null;
    }[];
    readonly findings: { readonly added: readonly JsonEffect[]; readonly gone: readonly JsonEffect[] };
  };
}

export interface JsonEffect {
  readonly code: string;
  readonly severity: string;
  readonly part: string;
  readonly message: string;
}
