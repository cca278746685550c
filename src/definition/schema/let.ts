/**
 * `let`: named quantities and formulas.
 */
import type { Let } from '../definition.ts';
import { readLet } from './figure.ts';
import { mapOf } from './record.ts';
import { reportShape, type Shape } from './shape.ts';

const letEntry: Shape<Let> = {
  about: { kind: 'text', what: 'a quantity or a formula' },
  read(node, site, reading) {
    if (node.kind !== 'scalar') {
      reading.scope.fail(site.name);
      return reportShape(node, site, reading, 'a quantity or a formula', 'Write a number with its unit, or a formula');
    }
    const read = readLet(node, site, reading);
    if (read === undefined) reading.scope.fail(site.name);
    else reading.scope.add(read);
    return read;
  },
};

/** The block `let`, in file order; what is read joins the scope of later formulas. */
export const lets = mapOf(letEntry, 'value');
