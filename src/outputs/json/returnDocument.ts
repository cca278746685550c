/**
 * The JSON of `return`, as types: `docs/outputs.md` describes it, `schema/return.schema.json` holds it. A key keeps its meaning; what is not
 * there is `null`, never left out.
 */
import type { FailureKind, FreedLever, Outcome } from '../../failures/failure.ts';
import type { Standing } from '../../failures/statements.ts';
import type { FileOutcome } from '../checkedFile.ts';
import type { Place } from '../place.ts';
import type { JsonFinding, JsonProblem } from './document.ts';
import type { JsonFigure } from './figures.ts';

export interface JsonReturn {
  /** Of this shape. */
  readonly format: 1;
  /** As given; `<stdin>` for standard input. */
  readonly file: string;
  readonly title: string | null;
  readonly verdict: { readonly outcome: FileOutcome; readonly text: string | null };
  readonly problems: readonly JsonProblem[];
  /** With every part; null where nothing was looked at. */
  readonly whole: JsonFailureRow | null;
  readonly failures: readonly JsonFailureRow[];
  readonly findings: readonly JsonFinding[];
  readonly statements: readonly JsonStatement[];
  readonly assumptions: readonly string[];
  /** Why nothing was looked at; null where it was. */
  readonly notChecked: string | null;
  readonly caution: string;
}

export interface JsonFailureRow {
  /** Null where nothing has failed. */
  readonly failure: { readonly kind: FailureKind; readonly part: string; readonly place: Place } | null;
  readonly outcome: Outcome;
  readonly plates: readonly JsonPlatesLeft[];
  readonly freed: {
    readonly lever: string;
    readonly falls: FreedLever['falls'];
    readonly springs: readonly string[];
    readonly stop: string | null;
  } | null;
}

export interface JsonPlatesLeft {
  readonly levers: readonly string[];
  readonly outcome: Outcome;
  readonly why: string | null;
  readonly weakest: {
    readonly lever: string;
    readonly torque: JsonFigure;
    /** Null where the file gives none, and where a joint jams. */
    readonly friction: JsonFigure | null;
    /** Null where the file gives no friction, and where nothing rubs. */
    readonly margin: number | null;
    readonly opening: JsonFigure;
  } | null;
  readonly heldAt: JsonFigure | null;
  /** Seconds until closed for good, with the foot off from full pedal. */
  readonly time: {
    readonly seconds: number | null;
    readonly why: string | null;
    readonly leftOut: string | null;
    /** How they first met their closed stops, and how often they left them again; null where they never met one. */
    readonly stop: { readonly speed: JsonFigure; readonly bounces: number } | null;
  } | null;
}

export interface JsonStatement {
  readonly figure: string;
  readonly asks: string;
  readonly source: string;
  readonly status: 'read' | 'from memory';
  readonly note: string | null;
  readonly standing: Standing;
  readonly why: string | null;
}
