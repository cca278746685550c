/**
 * What a person tries in the view, as the smallest edits of the text: figures and places keep their units, tolerances and comments, and
 * nothing else moves.
 */
import type { Definition } from '../definition/definition.ts';
import { applyEdits } from '../definition/edit.ts';
import type { Replacement } from '../definition/problem.ts';
import { readDefinition } from '../definition/read.ts';
import type { Change, Trial } from '../protocol/messages.ts';
import { compose } from './compose.ts';
import type { Edited } from './edited.ts';
import { placeEdits } from './placeEdits.ts';
import { valueEdits } from './valueEdits.ts';

/** A text as it was read; the answers of the one door are that. */
export interface ReadText {
  readonly text: string;
  readonly definition: Definition | undefined;
}

/**
 * All changes one after the other, so that an arm lands where it is asked to though its pivot moves too.
 * @returns edits of the text as it stands, none of which overlap, or why one of the changes cannot be made: then none is
 */
export function editsFor(read: ReadText, trial: Trial): Edited {
  let edits: readonly Replacement[] = [];
  let { text, definition } = read;
  // What carries others moves first.
  const inOrder = [...trial].sort((a, b) => rank(a) - rank(b));
  for (const [index, change] of inOrder.entries()) {
    if (definition === undefined) return { why: 'Nothing of the text can be understood as it stands' };
    const step = change.kind === 'value' ? valueEdits(text, definition, change) : placeEdits(text, definition, change);
    if ('why' in step) return step;
    edits = compose(edits, step.edits);
    if (index === inOrder.length - 1) break;
    text = applyEdits(text, step.edits);
    ({ definition } = readDefinition(text));
  }
  return { edits };
}

function rank({ kind, path }: Change): number {
  return kind === 'value' ? 0 : path.includes('.arms.') ? 2 : 1;
}
