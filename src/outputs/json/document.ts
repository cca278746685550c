/**
 * The JSON of a check, as types: `docs/outputs.md` describes it for those who read it, `schema/check.schema.json` for those who hold it
 * to something. A key keeps its meaning; what is not there is `null`, never left out. Travels are in % of the pedal's travel.
 */
import type { FindingSeverity } from '../../findings/finding.ts';
import type { PathPart } from '../../findings/part.ts';
import type { ComparisonOperator, RequirementOutcome } from '../../requirements/requirement.ts';
import type { FileOutcome } from '../checkedFile.ts';
import type { Place } from '../place.ts';
import type { JsonFigure, JsonMend } from './figures.ts';

export interface JsonDocument {
  /** Of this shape. */
  readonly format: 1;
  readonly files: readonly JsonFile[];
  readonly caution: string;
}

export interface JsonFile {
  /** As given; `<stdin>` for standard input. */
  readonly file: string;
  readonly title: string | null;
  readonly verdict: JsonVerdict;
  readonly problems: readonly JsonProblem[];
  readonly findings: readonly JsonFinding[];
  readonly requirements: readonly JsonRequirement[];
  readonly facts: readonly JsonFact[];
  /** The load path. */
  readonly parts: readonly JsonPart[];
  readonly notChecked: readonly JsonNotChecked[];
}

export interface JsonVerdict {
  readonly outcome: FileOutcome;
  /** Why the file could not be read; null where it could. */
  readonly reason: string | null;
  /** Problems and findings together. */
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly requirements: Readonly<Record<RequirementOutcome, number>>;
  readonly notChecked: number;
}

interface JsonMark {
  readonly code: string;
  readonly severity: FindingSeverity;
  readonly place: Place;
  readonly message: string;
  readonly cure: string | null;
  readonly related: readonly { readonly place: Place; readonly message: string }[];
  /** Page of the docs, a path from this project's root. */
  readonly docs: string;
}

export interface JsonProblem extends JsonMark {
  /** Edits that carry out the cure; empty where it takes a person. */
  readonly replacements: readonly { readonly place: Place; readonly text: string }[];
}

export interface JsonFinding extends JsonMark {
  readonly part: string;
  /** Null where it has nothing to do with the pedal's position. */
  readonly ranges: readonly { readonly from: number | null; readonly to: number | null }[] | null;
  readonly worst: (JsonFigure & { readonly travel: number | null }) | null;
  readonly limit: (JsonFigure & { readonly from: string }) | null;
  readonly mend: JsonMend | null;
}

export interface JsonRequirement {
  readonly name: string;
  readonly place: Place;
  readonly expression: string;
  readonly outcome: RequirementOutcome;
  readonly reason: string | null;
  readonly comparisons: readonly JsonComparison[];
}

export interface JsonComparison {
  readonly text: string;
  readonly place: Place;
  readonly operator: ComparisonOperator;
  readonly actual: JsonFigure | null;
  readonly demanded: JsonFigure | null;
  readonly margin: JsonFigure | null;
  /** Null where it cannot be decided. */
  readonly holds: boolean | null;
  readonly reason: string | null;
  readonly travel: number | null;
}

export interface JsonFact {
  readonly key: string;
  readonly part: string;
  readonly label: string;
  readonly figure: JsonFigure | null;
  readonly travel: number | null;
  readonly why: string | null;
  /** What published guidance says of such a figure, with its source. */
  readonly guidance: string | null;
}

export interface JsonPart {
  readonly kind: PathPart['kind'];
  readonly name: string;
  readonly place: Place;
  readonly depth: number;
  readonly figures: readonly {
    readonly label: string;
    readonly figure: JsonFigure | null;
    readonly text: string | null;
    readonly travel: number | null;
  }[];
}

export interface JsonNotChecked {
  readonly part: string;
  readonly place: Place;
  readonly message: string;
}
