/**
 * `require`: what the linkage must do, by any name.
 */
import type { Requirement } from '../formula/formula.ts';
import { readRequirementLine } from './figure.ts';
import { keptPart } from './keptPart.ts';
import { mapOf } from './record.ts';
import { reportShape, type Shape } from './shape.ts';

const requirement: Shape<Requirement> = {
  about: { kind: 'text', what: 'a condition' },
  read(node, site, reading) {
    if (node.kind !== 'scalar')
      return reportShape(node, site, reading, 'a condition', 'Write a comparison, such as `at(100%, shaft.opening) >= 80 deg`');
    return readRequirementLine(node, site, reading);
  },
};

/** The block `require`, in file order. */
export const requirements = mapOf(keptPart(requirement), 'requirement', { freeNames: true });
