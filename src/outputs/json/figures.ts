/** Figures for other programs: in the unit of the table, with every digit, `null` where there is none. */
import { FIGURE_UNIT, FIGURE_UNIT_SI } from '../../definition/dimensions.ts';
import type { Value } from '../../definition/definition.ts';
import type { Figure, Mend, Outcome, TravelRange } from '../../findings/finding.ts';
import type { ComparedFigure } from '../../requirements/requirement.ts';
import type { Answers } from '../../solve.ts';

export interface JsonFigure {
  /** Null where the computation gives none. */
  readonly value: number | null;
  /** As in the table: `mm`, `deg`, `N·mm`, `%`; empty for a plain number. */
  readonly unit: string;
}

export interface JsonMend {
  readonly unknown: string;
  readonly outcome: JsonOutcome;
  readonly target: JsonFigure;
}

export interface JsonOutcome {
  readonly kind: Outcome['kind'];
  /** Null where the unknown's own value is the outcome. */
  readonly column: string | null;
  /** In %; null where it is not told at one pedal travel. */
  readonly travel: number | null;
}

export function jsonFigure({ value, dimension }: Figure): JsonFigure {
  return { value: finite(value * (1 / FIGURE_UNIT_SI[dimension])), unit: FIGURE_UNIT[dimension] };
}

/** A fraction in percent. */
export function jsonShare(fraction: number): JsonFigure {
  return { value: percent(fraction), unit: '%' };
}

export function jsonCompared(figure: ComparedFigure): JsonFigure {
  if (figure.dimension === undefined) return { value: finite(figure.value), unit: figure.unit };
  return figure.percent === true ? jsonShare(figure.value) : jsonFigure(figure);
}

/** A pedal travel in %; null where there is none. */
export function jsonTravel(travel: number | undefined): number | null {
  return travel === undefined ? null : percent(travel);
}

export function jsonRange({ from, to }: TravelRange): { readonly from: number | null; readonly to: number | null } {
  return { from: percent(from), to: percent(to) };
}

export function jsonMend({ unknown, outcome, target }: Mend, answers: Answers): JsonMend {
  if (outcome.kind === 'itself') {
    const dimension = answers.definition && valueAt(answers.definition, unknown)?.dimension;
    return {
      unknown,
      outcome: { kind: 'itself', column: null, travel: null },
      target: jsonFigure({ value: target, dimension: dimension ?? 'number' }),
    };
  }
  const column = answers.columns.find(({ name }) => name === outcome.column);
  return {
    unknown,
    outcome: { kind: outcome.kind, column: outcome.column, travel: outcome.kind === 'at' ? percent(outcome.travel) : null },
    target: { value: finite(target * (column?.scale ?? 1)), unit: column?.unit ?? '' },
  };
}

/** The figure of the file at a path, wherever in the definition it stands. */
function valueAt(part: object, path: string): Value | undefined {
  if (isValue(part)) return part.path === path ? part : undefined;
  for (const inner of Object.values(part) as readonly unknown[]) {
    const found = typeof inner === 'object' && inner !== null ? valueAt(inner, path) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

function isValue(part: object): part is Value {
  return 'nominal' in part && 'path' in part && 'dimension' in part;
}

function percent(fraction: number): number | null {
  return finite(fraction * 100);
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
