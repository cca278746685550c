/**
 * One figure of the file: from a text node to a Value, by the quantity and formula readers.
 */
import type { Value } from '../definition.ts';
import type { Dimension } from '../dimensions.ts';
import { PLACE_UNIT, PLACE_UNIT_SI } from '../dimensions.ts';
import { parseUnit, toSi } from '../quantity/units.ts';
import { kindFits } from '../formula/kind.ts';
import type { Requirement } from '../formula/formula.ts';
import type { SourceScalar } from '../source/tree.ts';
import { problem, type Reading, type Site } from './shape.ts';

/** TEMPORARY: plain quantities and bare let names, until the quantity reader is there. */
export function readFigure(node: SourceScalar, site: Site, dimension: Dimension, reading: Reading): Value | undefined {
  const known = reading.figures.get(node);
  if (known !== undefined && known.dimension === dimension) return known;
  const span = node.exact ? { start: node.textStart, end: node.textStart + node.text.length } : node.span;
  const match = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([^\s±].*?)?(?:\s*(?:±|\+\/-)\s*([\d.]+)\s*(.*))?$/.exec(node.text);
  const from = reading.lets.find((entry) => entry.name === node.text)?.value;
  let value: Value | undefined;
  if (from !== undefined) value = { ...from, span, path: site.path };
  else if (match !== null) {
    const unit = match[2] ?? PLACE_UNIT[dimension];
    const parsed = parseUnit(unit);
    if (parsed !== undefined && kindFits(parsed.kind, dimension)) {
      const nominal = match[2] === undefined ? Number(match[1]) * PLACE_UNIT_SI[dimension] : toSi(Number(match[1]), parsed);
      const half = match[3] === undefined ? undefined : toSi(Number(match[3]), parsed);
      value = { span, path: site.path, dimension, nominal, unit, ...(half === undefined ? {} : { tolerance: { plus: half, minus: half, span } }) };
    }
  }
  if (value === undefined) reading.report(problem('bad-quantity', span, `\`${node.text}\` is not a quantity`));
  else reading.figures.set(node, value);
  return value;
}

/** TEMPORARY */
export function readLetFigure(node: SourceScalar, site: Site, reading: Reading): Value | undefined {
  for (const dimension of ['number', 'length', 'angle', 'force', 'torque', 'linear-rate', 'torsional-rate'] as const) {
    const quiet: Reading = { ...reading, report: () => undefined };
    const value = readFigure(node, site, dimension, quiet);
    if (value !== undefined) return value;
  }
  reading.report(problem('bad-quantity', node.span, `\`${node.text}\` is not a quantity`));
  return undefined;
}

/** TEMPORARY */
export function readRequirementText(node: SourceScalar, site: Site, _reading: Reading): Requirement {
  return { name: site.name, nameSpan: site.nameSpan, span: site.span, text: node.text, expressionSpan: node.span };
}
