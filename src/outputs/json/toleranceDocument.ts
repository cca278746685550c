/**
 * The JSON of `tolerance`, as types: `docs/outputs.md` describes it, `schema/tolerance.schema.json` holds it. A key keeps its meaning; what is
 * not there is `null`, never left out. Figures of an outcome are in its unit, travels in % of the pedal's travel.
 */
import type { Place } from '../place.ts';
import type { JsonProblem } from './document.ts';
import type { JsonFigure } from './figures.ts';

export interface JsonTolerance {
  /** Of this shape. */
  readonly format: 1;
  /** As given; `<stdin>` for standard input. */
  readonly file: string;
  readonly title: string | null;
  readonly problems: readonly JsonProblem[];
  readonly options: { readonly seed: number; readonly law: 'normal' | 'uniform'; readonly builds: number };
  /** What varies: tolerances, then play. */
  readonly figures: readonly JsonVaried[];
  readonly outcomes: readonly JsonOutcome[];
  readonly requirements: readonly (JsonYield & {
    readonly name: string;
    readonly builds: number;
    readonly failed: number;
    readonly undecided: number;
  })[];
  /** Of each rule of the check that judges builds, in the order of the check. */
  readonly rules: readonly JsonRule[];
  /** Builds that keep all that judges an outcome; null where nothing does. */
  readonly kept: JsonYield | null;
  /** Builds that keep everything, of those that were gone through by outcomes, rules and requirements. */
  readonly together: JsonYield & { readonly builds: number };
  readonly settings: readonly JsonSetting[];
  readonly bands: JsonBands | null;
  readonly notChecked: readonly string[];
  readonly caution: string;
}

export interface JsonVaried {
  readonly path: string;
  readonly place: Place;
  /** Of play the pin; null for a tolerance. */
  readonly pin: string | null;
  readonly middle: JsonFigure;
  /** Either way. */
  readonly half: JsonFigure;
}

/** A share of the builds, and between what it lies as sure as 95 %, 0 to 1. */
export interface JsonYield {
  readonly share: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export interface JsonRule extends JsonYield {
  readonly code: string;
  /** Gone through; with an error or a warning of it; with an error. */
  readonly builds: number;
  readonly failed: number;
  readonly errors: number;
  /** Where it is found, in how many builds, most first. */
  readonly parts: readonly { readonly name: string; readonly builds: number }[];
  /** Whether the file as drawn has it, too. */
  readonly asDrawn: boolean;
  /** What the check says of the worst build; null where every build keeps it. */
  readonly worst: string | null;
}

export interface JsonOutcome {
  readonly name: string;
  readonly unit: string;
  /** With every figure in its middle. */
  readonly middle: number | null;
  /** Off the middle, linear: all against it, and the root of the sum of squares; `kinked` where that tells little. */
  readonly stack: {
    readonly lowest: number | null;
    readonly highest: number | null;
    readonly rootSumSquare: number | null;
    readonly kinked: boolean;
  };
  /** The same of play alone; null where none is given. */
  readonly play: JsonOutcome['stack'] | null;
  /** With each figure at one of its ends, exact; null with more than 12 figures. */
  readonly corners: { readonly least: number | null; readonly most: number | null; readonly missing: number } | null;
  readonly builds: {
    readonly missing: number;
    readonly mean: number | null;
    readonly deviation: number | null;
    readonly percentiles: readonly { readonly share: number; readonly value: number | null }[];
    readonly kept: JsonYield | null;
  };
  /** In the order of `figures`: what half of each does, and its share of the variance (null where there is none). */
  readonly effects: readonly { readonly swing: number | null; readonly share: number | null }[];
  /** Of dimensions that `tune` leaves free and that have no tolerance: what a change by so much does, the greatest first. */
  readonly free: readonly { readonly path: string; readonly by: JsonFigure; readonly swing: number | null }[];
}

export interface JsonSetting {
  readonly rod: string;
  readonly adjustable: boolean;
  /** Name of the outcome by which it is set. */
  readonly by: string;
  readonly takes: JsonFigure;
  readonly beyondRange: boolean | null;
  /** In the order of `outcomes`, as the root of the sum of squares. */
  readonly spreads: readonly { readonly before: number | null; readonly after: number | null }[];
}

/** Columns along the travel in so many builds: 5 % of them lie below `low`, half below `middle`, 95 % below `high`. */
export interface JsonBands {
  readonly builds: number;
  readonly missing: number;
  readonly travels: readonly (number | null)[];
  readonly columns: readonly {
    readonly name: string;
    readonly unit: string;
    readonly low: readonly (number | null)[];
    readonly middle: readonly (number | null)[];
    readonly high: readonly (number | null)[];
  }[];
}
