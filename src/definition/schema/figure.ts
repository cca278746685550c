/**
 * One figure of the file: from a text node to a Value, by the quantity and formula readers.
 */
import type { Let, Value } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import type { Kind } from '../formula/kind.ts';
import { dimensionOfKind } from '../formula/kind.ts';
import type { Requirement } from '../formula/formula.ts';
import type { Problem } from '../problem.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Origin } from '../quantity/fault.ts';
import type { SourceScalar } from '../source/tree.ts';
import { defined, named, problem, type Reading, type Site } from './shape.ts';

/** A figure at a place of one dimension. An alias gives the very Value of the figure that it repeats. */
export function readFigure(node: SourceScalar, site: Site, dimension: Dimension, reading: Reading): Value | undefined {
  const known = reading.figures.get(node);
  if (known !== undefined && known.dimension === dimension) return known;
  const value = readAny(node, site, dimension, reading)?.value;
  if (value !== undefined) reading.figures.set(node, value);
  return value;
}

/** A figure of `let`, of whatever dimension it turns out to be. */
export function readLet(node: SourceScalar, site: Site, reading: Reading): Let | undefined {
  const read = readAny(node, site, undefined, reading);
  return read === undefined ? undefined : { ...named(site), ...read };
}

export function readRequirementText(node: SourceScalar, site: Site, _reading: Reading): Requirement {
  return { name: site.name, nameSpan: site.nameSpan, span: site.span, text: node.text, expressionSpan: node.span };
}

function readAny(node: SourceScalar, site: Site, expected: Dimension | undefined, reading: Reading): { value: Value; kind: Kind } | undefined {
  const span = textSpan(node);
  if (node.style === 'block' || node.multiline) {
    reading.report(problem('bad-quantity', span, 'The value runs over several lines', { cure: 'Write it on one line' }));
    return undefined;
  }
  const at = originOf(node);
  const report = (found: Problem): void => reading.report(node.exact ? found : withoutEdits(found));
  const read = readQuantity(node.text, at, expected, reading.letNames);
  if (read.form === 'quantity') {
    read.problems.forEach(report);
    if (read.quantity === undefined) return undefined;
    const { nominal, unit, kind, tolerance } = read.quantity;
    const dimension = expected ?? dimensionOfKind(kind) ?? 'number';
    return { value: { span, path: site.path, dimension, nominal, unit, ...defined({ tolerance }) }, kind };
  }
  reading.report(problem('formula-syntax', span, 'FORMULA LATER'));
  return undefined;
}

/** The text without its quotes; the whole scalar where its text is not the file's letter by letter. */
function textSpan(node: SourceScalar): { start: number; end: number } {
  return node.exact ? { start: node.textStart, end: node.textStart + node.text.length } : node.span;
}

/** Where escapes stand before it, a place in the text is found only roughly. */
function originOf(node: SourceScalar): Origin {
  return node.exact ? node.textStart : (offset) => Math.min(node.textStart + offset, node.span.end);
}

function withoutEdits({ replacements: _lost, ...rest }: Problem): Problem {
  return rest;
}
