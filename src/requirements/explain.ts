/** Why something cannot be decided, in words: the first part of it that has no value. */
import type { Expression } from '../definition/formula/formula.ts';
import type { Span } from '../definition/span.ts';
import type { Range } from '../travel/extremes.ts';
import { fixed, rangeWords } from '../travel/words.ts';
import { withinTravel, type Atom, type Condition, type Value } from './evaluate.ts';
import type { Sheet, SheetColumn } from './sheet.ts';

export interface Explainer {
  /** Why a condition is neither true nor false at a pedal position. */
  condition(condition: Condition, travel: number): string;
  /** That what a `where` asks for is nowhere so. */
  neverReached(condition: Expression): string;
}

/** @param quote the text of a place in the file; @param missing why a column is not there; @param cause why one has no value at a pedal travel */
export function createExplainer(
  sheet: Sheet,
  quote: (span: Span) => string,
  missing: (name: string) => string,
  cause: (name: string, travel: number) => string | undefined = () => undefined,
): Explainer {
  const explainCondition = (condition: Condition, travel: number): string => {
    if (sheet.exhausted()) return TOO_MUCH;
    switch (condition.kind) {
      case 'comparison':
        return explainValue(condition.left, travel) ?? explainValue(condition.right, travel) ?? NO_REASON;
      case 'at': {
        const position = condition.position.run(travel);
        const why = Number.isNaN(position) ? explainValue(condition.position, travel) : beyond(position);
        return why ?? explainCondition(condition.inner, withinTravel(position));
      }
      default: {
        const open = condition.parts.find((part) => part.run(travel) === undefined);
        return open === undefined ? NO_REASON : explainCondition(open, travel);
      }
    }
  };

  /** Undefined for a value that there is. */
  const explainValue = (value: Value, travel: number): string | undefined => {
    if (!Number.isNaN(value.run(travel))) return undefined;
    const atom = value.atoms.find((each) => Number.isNaN(each.run(travel)));
    if (atom === undefined) return `\`${quote(value.expression.span)}\` has no real value`;
    return explainAtom(atom, travel);
  };

  const explainAtom = (atom: Atom, travel: number): string | undefined => {
    switch (atom.kind) {
      case 'column':
        if (atom.column === undefined) return missing(atom.name);
        return Number.isNaN(travel) ? noPosition(atom.name) : noValueAt(atom.column, travel);
      case 'extreme':
        return atom.column === undefined ? missing(atom.name) : noValue(atom.name, atom.column.gaps());
      case 'at': {
        const position = atom.position.run(travel);
        if (Number.isNaN(position)) return explainValue(atom.position, travel);
        return beyond(position) ?? explainValue(atom.inner, withinTravel(position));
      }
      case 'where': {
        const holding = atom.first();
        if (holding.kind !== 'undecided') return neverReached(atom.never());
        return holding.travel === undefined ? TOO_MUCH : explainCondition(atom.condition, holding.travel);
      }
    }
  };

  const neverReached = (condition: Expression | undefined): string =>
    condition === undefined ? NO_REASON : `\`${quote(condition.span)}\` is never reached`;

  const noValueAt = (column: SheetColumn, travel: number): string => {
    const around = column.gaps().filter(({ from, to }) => from <= travel && travel <= to);
    return noValue(column.name, around.length > 0 ? around : [{ from: travel, to: travel }]);
  };

  const noValue = (name: string, gaps: readonly Range[]): string => {
    const [gap] = gaps;
    const why = gap && cause(name, (gap.from + gap.to) / 2);
    return `${name} has no value ${rangeWords(gaps)}${why === undefined ? '' : `: ${why}`}`;
  };

  return { condition: explainCondition, neverReached };
}

const TOO_MUCH = 'The requirements of this file ask for more computing than is done for one';
const NO_REASON = 'It has no value';

function noPosition(name: string): string {
  return `\`${name}\` has a value at every pedal position; write \`at(…, ${name})\`, \`min(${name})\` or \`max(${name})\``;
}

function beyond(position: number): string | undefined {
  if (!Number.isNaN(withinTravel(position))) return undefined;
  const side = position < 0 ? 'before the pedal travel begins' : 'beyond the pedal travel, which ends at 100 %';
  return `\`at\` asks for ${fixed(position * 100, 7)} %, ${side}`;
}
