/** The figure of the file that a fix writes: what it is now, and the edit that writes another. */
import { addKey, formatQuantity, setFigure } from '../definition/edit.ts';
import { PLACE_UNIT, type Dimension } from '../definition/dimensions.ts';
import type { Replacement } from '../definition/problem.ts';
import type { Study } from '../findings/study.ts';
import { createBuild } from '../kinematics/createBuild.ts';
import { valueAt } from './values.ts';

export interface Unknown {
  readonly path: string;
  /** What it is now, SI; of a rod without a length, the drawn one. */
  readonly present: number;
  readonly dimension: Dimension;
  /** As in `Value.unit`; what it would be added in where the file leaves it out. */
  readonly unit: string;
  /** The edit that writes a value, SI; undefined where it cannot be written. @param digits significant digits, 12 where left out */
  edit(text: string, nominal: number, digits?: number): Replacement | undefined;
}

/** @param path of a plain figure, or of one that the file leaves out */
export function unknownAt(study: Study, path: string): Unknown {
  const value = valueAt(study.definition, path);
  if (value !== undefined) {
    const { nominal: present, dimension, unit } = value;
    return { path, present, dimension, unit, edit: (text, nominal, digits = DIGITS) => setFigure(text, value, nominal, digits) };
  }
  const known = study.travel.mechanism.dimensions.find((each) => each.path === path);
  // Of what the linkage does not turn on, only a spring's preload is added.
  const dimension = known?.dimension ?? 'torque';
  const unit = UNIT_WHEN_ADDED[dimension] ?? PLACE_UNIT[dimension];
  const dot = path.lastIndexOf('.');
  const edit = (text: string, nominal: number, digits = DIGITS): Replacement | undefined => {
    const written = formatQuantity(nominal, unit, digits);
    return written === undefined ? undefined : addKey(text, path.slice(0, dot), path.slice(dot + 1), written);
  };
  return { path, present: known?.kind === 'as-drawn' ? drawnLength(study, known.index) : (known?.nominal ?? 0), dimension, unit, edit };
}

/** As a person would write it. @param digits significant digits, as many as it takes where left out */
export function writtenAs(value: number, { unit, dimension }: Unknown, digits = DIGITS): string {
  return formatQuantity(value, unit === '' ? PLACE_UNIT[dimension] : unit, digits) ?? String(value);
}

/** More than any rounded figure has; less than would show how a computer rounds. */
const DIGITS = 12;

/** As a person would type it. */
const UNIT_WHEN_ADDED: Partial<Readonly<Record<Dimension, string>>> = { torque: 'N*mm' };

function drawnLength({ travel: { mechanism } }: Study, dimension: number): number {
  const joint = mechanism.joints.find((each) => each.kind === 'rod' && each.lengthDimension === dimension);
  return joint?.kind === 'rod' ? (createBuild(mechanism).parameters[joint.length] ?? NaN) : NaN;
}
