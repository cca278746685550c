/** A figure of the file with another value, in the unit in which it is written. */
import type { Definition } from '../definition/definition.ts';
import { PLACE_UNIT } from '../definition/dimensions.ts';
import { setFigure } from '../definition/edit.ts';
import { parseUnit, toSi } from '../definition/quantity/units.ts';
import { valueAt } from '../language/values.ts';
import type { Change } from '../protocol/messages.ts';
import type { Edited } from './edited.ts';

export function valueEdits(text: string, definition: Definition, { path, value }: Extract<Change, { kind: 'value' }>): Edited {
  const figure = valueAt(definition, path);
  if (figure === undefined) return { why: `There is no figure \`${path}\` in the text any more` };
  if (figure.formula !== undefined) return { why: `\`${path}\` follows from a formula: change a value in \`let\` that it uses` };
  if (!Number.isFinite(value)) return { why: `\`${path}\` cannot be given that value` };
  const unit = parseUnit(figure.unit === '' ? PLACE_UNIT[figure.dimension] : figure.unit);
  const edit = unit && setFigure(text, figure, toSi(value, unit), DIGITS);
  if (edit === undefined) return { why: `\`${path}\` is written in a way in which it can only be changed in the text` };
  return { edits: text.slice(edit.span.start, edit.span.end) === edit.text ? [] : [edit] };
}

/** Significant digits: more than any figure has that a person sets, less than would show how a computer rounds. */
const DIGITS = 12;
