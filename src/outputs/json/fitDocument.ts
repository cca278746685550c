/**
 * The JSON of `fit`, as types: `docs/outputs.md` describes it, `schema/fit.schema.json` holds it. A key keeps its meaning; what is not there
 * is `null`, never left out.
 */
import type { Turn } from '../../studies/fit/turn.ts';
import type { FileOutcome } from '../checkedFile.ts';
import type { Place } from '../place.ts';
import type { JsonProblem } from './document.ts';
import type { JsonFigure } from './figures.ts';

export interface JsonFit {
  /** Of this shape. */
  readonly format: 1;
  /** As given; `<stdin>` for standard input. */
  readonly file: string;
  readonly title: string | null;
  readonly verdict: { readonly outcome: FileOutcome; readonly text: string };
  /** Those of the text, then those of its CSV files. */
  readonly problems: readonly JsonProblem[];
  readonly dimensions: readonly JsonFittedDimension[];
  /** Of the dimensions, in their order: the correlation of each with each; null for one that is not told. */
  readonly correlations: readonly (readonly (number | null)[])[];
  /** How many directions the readings tell at all, and more closely than the tolerances; null where nothing was found. */
  readonly rank: { readonly dimensions: number; readonly told: number; readonly narrowed: number } | null;
  readonly untold: readonly { readonly dimensions: readonly string[]; readonly shown: number; readonly text: string }[];
  readonly correlated: readonly {
    readonly dimensions: readonly [string, string];
    readonly correlation: number;
    readonly text: string;
  }[];
  readonly columns: readonly JsonFitColumn[];
  readonly readings: readonly JsonFitReading[];
  readonly leftOut: readonly (JsonReadingPlace & { readonly why: string })[];
  /** How the car as found stands to what the file demands: lines of `require` and errors of a check; null where nothing was found. */
  readonly asFound: {
    /** Why it was not checked; null where it was. */
    readonly notChecked: string | null;
    readonly notMet: readonly {
      /** Of an error; null for a line of `require`. */
      readonly code: string | null;
      readonly requirement: string | null;
      readonly metAsDrawn: boolean;
      readonly text: string;
    }[];
  } | null;
  readonly turning: JsonTurning | null;
  readonly notChecked: readonly string[];
  readonly caution: string;
}

export interface JsonFittedDimension {
  readonly name: string;
  readonly place: Place;
  /** As the file has it; of a rod that the file leaves as drawn, what is added to its length. */
  readonly nominal: JsonFigure;
  readonly tolerance: JsonFigure | null;
  readonly value: JsonFigure;
  /** How long a rod is that the file leaves as drawn, with all that was found; null of anything else. */
  readonly length: JsonFigure | null;
  /** One standard error; its value is null where the dimension is not told. */
  readonly error: JsonFigure;
  /** Of its tolerance, a fraction; null without one. */
  readonly left: number | null;
  readonly beyondTolerance: boolean | null;
}

export interface JsonFitColumn {
  readonly run: string;
  readonly column: string;
  readonly noise: JsonFigure;
  readonly noiseFrom: 'file' | 'own scatter' | 'common practice, no source';
  readonly count: number;
  /** Of the noise; null with too few readings. */
  readonly scatter: number | null;
  readonly noisy: boolean;
  /** Whether the readings do not go with the linkage as the file has it. */
  readonly astray: boolean;
  readonly derivatives: 'closed form' | 'differences';
}

export interface JsonReadingPlace {
  readonly run: string;
  /** From 1, within the run. */
  readonly row: number;
  readonly column: string;
  readonly place: Place;
  /** Line of the CSV file; null for rows of the throttle file. */
  readonly csvLine: number | null;
}

export interface JsonFitReading extends JsonReadingPlace {
  /** Of the pedal, in %. */
  readonly travel: number | null;
  readonly read: JsonFigure;
  readonly fitted: JsonFigure;
  readonly drawn: JsonFigure;
  readonly standardised: number | null;
  readonly leverage: number;
  readonly verdict: 'counts' | 'off' | 'unheld';
}

export interface JsonTurning extends JsonTurningPlan {
  /** Null where it was checked. */
  readonly notChecked: string | null;
  readonly wanted: 'tune' | 'drawing' | null;
  readonly before: readonly JsonOffCurve[];
  /** Of each of these curves the greatest standard error along it. */
  readonly known: readonly JsonFigure[];
  /** Names of what else the file demands; null where nothing was held against it. */
  readonly demands: readonly string[] | null;
  /** What would come nearer to the curve, but gives up a demand. */
  readonly nearer: JsonTurningPlan | null;
}

export interface JsonTurningPlan {
  readonly turns: readonly {
    readonly kind: Turn['kind'];
    readonly part: string;
    readonly change: JsonFigure;
    readonly turns: number | null;
    /** One standard error of the change; null where it stands at an end, or goes as far as the demands let it. */
    readonly error: JsonFigure | null;
    readonly atEnd: boolean;
  }[];
  readonly after: readonly JsonOffCurve[];
  /** Demands that then do not hold, or could not be checked. */
  readonly unmet: readonly { readonly name: string; readonly metAsFound: boolean; readonly metAsDrawn: boolean; readonly text: string }[];
}

export interface JsonOffCurve {
  readonly column: string;
  readonly error: JsonFigure;
  readonly travel: number | null;
}
