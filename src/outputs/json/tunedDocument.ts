/**
 * The JSON of `tune`, as types: `docs/outputs.md` describes it, `schema/tune.schema.json` holds it. A key keeps its meaning; what is not
 * there is `null`, never left out.
 */
import type { Place } from '../place.ts';
import type { JsonProblem } from './document.ts';
import type { JsonFigure } from './figures.ts';

export interface JsonTuned {
  /** Of this shape. */
  readonly format: 1;
  /** As given; `<stdin>` for standard input. */
  readonly file: string;
  readonly title: string | null;
  readonly problems: readonly JsonProblem[];
  readonly seed: number;
  /** Column that is to follow the curve. */
  readonly column: string;
  /** As near as this is on the curve. */
  readonly enough: JsonFigure;
  /** As the file stands; null where it has no value somewhere along the curve. */
  readonly before: JsonDistance | null;
  /** Best first. */
  readonly answers: readonly JsonTunedAnswer[];
  /** Demands without one of which it would come nearer. */
  readonly obstacles: readonly { readonly demand: string; readonly error: JsonFigure }[];
  readonly caution: string;
}

/** Greatest distance from the curve, whatever the weights of its points but 0, beside which it does not count, and the pedal travel where it is, in %. */
export interface JsonDistance {
  readonly error: JsonFigure;
  readonly travel: number | null;
}

export interface JsonTunedAnswer extends JsonDistance {
  readonly isOnCurve: boolean;
  readonly keepsAll: boolean;
  readonly values: readonly {
    readonly name: string;
    readonly value: JsonFigure;
    readonly was: JsonFigure;
    /** The bound that it stands on; null within them. */
    readonly bound: 'from' | 'to' | null;
  }[];
  readonly demands: readonly {
    readonly name: string;
    /** 0 where it is kept, else in parts of its limit; null where it was not checked. */
    readonly shortfall: number | null;
    readonly words: string | null;
  }[];
  /** Errors and warnings that the file as it stands does not have, and that no demand tells of; `part` is null where it is of the text. */
  readonly brings: readonly {
    readonly severity: 'error' | 'warning' | 'note';
    readonly code: string;
    readonly part: string | null;
    readonly message: string;
  }[];
  /** Lines of `require` that were met and no longer are, beside the demands. */
  readonly lost: readonly string[];
  /** They write the free values and nothing else. */
  readonly edits: readonly { readonly place: Place; readonly text: string }[];
}
