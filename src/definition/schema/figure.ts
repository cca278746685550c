/**
 * One figure of the file: from a text node to a Value, by the quantity and formula readers.
 */
import type { Let, Value } from '../definition.ts';
import { PLACE_UNIT, PLACE_UNIT_SI, type Dimension } from '../dimensions.ts';
import type { Kind } from '../formula/kind.ts';
import { dimensionOfKind } from '../formula/kind.ts';
import type { Requirement } from '../formula/formula.ts';
import { keptByText, type TextReader } from '../formula/keptByText.ts';
import { readFormula, readRequirement } from '../formula/readFormula.ts';
import type { Vocabulary } from '../formula/scope.ts';
import type { Problem } from '../problem.ts';
import { placeInFile, type Origin } from '../quantity/fault.ts';
import { readQuantity, type QuantityReading } from '../quantity/quantity.ts';
import type { Span } from '../span.ts';
import type { SourceScalar } from '../source/tree.ts';
import { defined, named, problem, type Reading, type Site } from './shape.ts';

/** A figure at a place of one dimension. An alias gives the very Value of the figure that it repeats. */
export function readFigure(node: SourceScalar, site: Site, dimension: Dimension, reading: Reading): Value | undefined {
  const known = reading.figures.get(node);
  if (known?.dimension === dimension) return known;
  const value = readAny(node, site, dimension, reading)?.value;
  if (value === undefined) return undefined;
  const most = LARGEST[dimension];
  if (most !== undefined && Math.abs(value.nominal) > most * PLACE_UNIT_SI[dimension]) {
    const unit = PLACE_UNIT[dimension];
    reading.report(
      problem('out-of-range', value.span, `\`${site.name}\` is larger than any linkage: more than ${most} ${unit}`, {
        cure: `Write ${most} ${unit} or less`,
      }),
    );
    return undefined;
  }
  reading.figures.set(node, value);
  return value;
}

/**
 * The largest figure of a kind, in the unit of its place: beyond what any throttle linkage has, and small enough that squares and
 * turns counted from it stay exact.
 */
const LARGEST: Partial<Readonly<Record<Dimension, number>>> = { length: 100_000, angle: 3600 };

/** A figure of `let`, of whatever dimension it turns out to be. */
export function readLet(node: SourceScalar, site: Site, reading: Reading): Let | undefined {
  const read = readAny(node, site, undefined, reading);
  return read === undefined ? undefined : { ...named(site), ...read };
}

/** A line of `require`; without its expression where that could not be understood. */
export function readRequirementLine(node: SourceScalar, site: Site, reading: Reading): Requirement {
  const { expression, problems } = readRequirement(node.text, originOf(node), reading.scope);
  report(problems, node, reading);
  return { ...named(site), text: node.text, expressionSpan: textSpan(node), ...defined({ expression }) };
}

function readAny(
  node: SourceScalar,
  site: Site,
  expected: Dimension | undefined,
  reading: Reading,
): { value: Value; kind: Kind } | undefined {
  const span = textSpan(node);
  if (node.style === 'block' || node.multiline) {
    reading.report(problem('bad-quantity', span, `\`${site.name}\` runs over several lines`, { cure: 'Write the value on one line' }));
    return undefined;
  }
  const at = originOf(node);
  const { path } = site;
  const plain = readPlain(node.text, at, expected, reading.letNames);
  if (plain.form === 'quantity') {
    report(plain.problems, node, reading);
    if (plain.quantity === undefined) return undefined;
    const { nominal, unit, kind, tolerance } = plain.quantity;
    const dimension = expected ?? dimensionOfKind(kind) ?? 'number';
    // Written out: of each figure of the file, spreading would cost more than reading it.
    const value = tolerance === undefined ? { span, path, dimension, nominal, unit } : { span, path, dimension, nominal, unit, tolerance };
    return { value, kind };
  }
  const { formula, nominal, kind, problems } = readFormula(node.text, at, expected, reading.scope);
  report(problems, node, reading);
  if (formula === undefined || nominal === undefined || kind === undefined) return undefined;
  return { value: { span, path, dimension: expected ?? dimensionOfKind(kind) ?? 'number', nominal, unit: '', formula }, kind };
}

/** As `readQuantity`, which is done once for each text: only its tolerance and its faults know where it stands. */
function readPlain(text: string, at: Origin, expected: Dimension | undefined, names: Vocabulary): QuantityReading {
  const read = readerOf(expected)(text, names);
  if (read.form === 'formula') return read;
  if (read.problems.length > 0) return readQuantity(text, at, expected, names);
  const { quantity } = read;
  if (quantity?.tolerance === undefined) return read;
  const { tolerance } = quantity;
  return { ...read, quantity: { ...quantity, tolerance: { ...tolerance, span: placeInFile(at, tolerance.span) } } };
}

/** Places count from the start of the text. */
function readerOf(expected: Dimension | undefined): TextReader<QuantityReading> {
  const known = readers.get(expected);
  if (known !== undefined) return known;
  const reader = keptByText((text, names) => readQuantity(text, 0, expected, names));
  readers.set(expected, reader);
  return reader;
}

/** By the dimension of the place: joined with the text to one key it would cost more than is saved. */
const readers = new Map<Dimension | undefined, TextReader<QuantityReading>>();

/** Edits fit only where the text stands in the file letter by letter. */
function report(problems: readonly Problem[], node: SourceScalar, reading: Reading): void {
  for (const found of problems) {
    const { replacements, ...rest } = found;
    reading.report(node.exact && replacements !== undefined ? found : rest);
  }
}

/** The text without its quotes; the whole scalar where its text is not the file's letter by letter. */
function textSpan(node: SourceScalar): Span {
  return node.exact ? { start: node.textStart, end: node.textStart + node.text.length } : node.span;
}

/** In a text of several lines, a place is found only roughly. */
function originOf(node: SourceScalar): Origin {
  const { offsets } = node;
  if (offsets !== undefined) return (offset) => offsets[offset] ?? node.span.end;
  return node.exact ? node.textStart : (offset) => Math.min(node.textStart + offset, node.span.end);
}
