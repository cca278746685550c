/**
 * `let`: named quantities and formulas.
 */
import type { Let } from '../definition.ts';
import { readLetFigure } from './figure.ts';
import { mapOf } from './record.ts';
import { named, reportShape, type Shape } from './shape.ts';

const letEntry: Shape<Let> = {
  about: { kind: 'text', what: 'a quantity or a formula' },
  read(node, site, reading) {
    if (node.kind !== 'scalar') return reportShape(node, site, reading, 'a quantity or a formula', 'Write a number with its unit, or a formula');
    const value = readLetFigure(node, site, reading);
    if (value === undefined) return undefined;
    const made: Let = { ...named(site), value };
    reading.addLet(made);
    return made;
  },
};

export const lets = mapOf(letEntry, 'value');
