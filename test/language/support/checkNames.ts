/** Checks of what is told of the name under `$0`; see `cursorAndMarks.ts` for how files are marked. */
import { expect } from 'vitest';
import { applyEdits } from '../../../src/definition/edit.ts';
import { findDefinition } from '../../../src/language/definition.ts';
import { findHighlights } from '../../../src/language/highlights.ts';
import { indexNames } from '../../../src/language/names.ts';
import { findReferences } from '../../../src/language/references.ts';
import { prepareRename, renameAt } from '../../../src/language/rename.ts';
import { shown, takeCursor, takeMarks } from './cursorAndMarks.ts';

/** The one place marked `definition`, or none where there is none. */
export function checkDefinition(annotated: string): void {
  const { text, cursor, marks } = takeMarks(annotated);
  if (cursor === undefined) throw new Error('There is no $0');
  const found = findDefinition(indexNames(text), cursor);
  expect(found === undefined ? [] : [shown(text, found.target)]).toEqual(marks.map(({ span }) => shown(text, span)));
  if (found === undefined) return;
  expect(found.origin.start).toBeLessThanOrEqual(cursor);
  expect(found.origin.end).toBeGreaterThanOrEqual(cursor);
  expect(found.targetEntry.start).toBeLessThanOrEqual(found.target.start);
  expect(found.targetEntry.end).toBeGreaterThanOrEqual(found.target.end);
}

/** Every place of the name, marked `declaration` or `use`. */
export function checkReferences(annotated: string): void {
  const { text, cursor, marks } = takeMarks(annotated);
  if (cursor === undefined) throw new Error('There is no $0');
  const index = indexNames(text);
  const all = marks.map(({ span }) => shown(text, span));
  const uses = marks.filter(({ words }) => words === 'use').map(({ span }) => shown(text, span));
  expect(findReferences(index, cursor, true).map((span) => shown(text, span))).toEqual(all);
  expect(findReferences(index, cursor, false).map((span) => shown(text, span))).toEqual(uses);
  expect(findHighlights(index, cursor).map(({ span, kind }) => `${kind === 'write' ? 'declaration' : 'use'} ${shown(text, span)}`)).toEqual(
    marks.map(({ span, words }) => `${words} ${shown(text, span)}`),
  );
}

/** Renames what stands at `$0` and compares the whole text. */
export function checkRename(before: string, newName: string, after: string): void {
  const { text, cursor } = takeCursor(before);
  const index = indexNames(text);
  expect(prepareRename(index, cursor).kind).toBe('ready');
  const answer = renameAt(index, cursor, newName);
  if (answer.kind === 'refused') throw new Error(answer.reason);
  expect(applyEdits(text, answer.edits)).toBe(after);
}

/** A name that cannot be changed to this one. @param reason a part of what is said */
export function checkRefused(before: string, newName: string, reason: string): void {
  const { text, cursor } = takeCursor(before);
  const index = indexNames(text);
  expect(prepareRename(index, cursor).kind).toBe('ready');
  expect(renameAt(index, cursor, newName)).toEqual({ kind: 'refused', reason: expect.stringContaining(reason) as string });
}

/** A place where there is nothing to rename. */
export function checkNoRename(before: string, reason: string): void {
  const { text, cursor } = takeCursor(before);
  const refusal = { kind: 'refused', reason: expect.stringContaining(reason) as string };
  expect(prepareRename(indexNames(text), cursor)).toEqual(refusal);
  expect(renameAt(indexNames(text), cursor, 'fresh')).toEqual(refusal);
}
