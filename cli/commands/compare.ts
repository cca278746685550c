/** `compare OLD NEW`: what changed from one file to another, and what it did. */
import { compareJson } from '../../src/outputs/compareJson.ts';
import { compareMarkdown } from '../../src/outputs/compareMarkdown.ts';
import { compareText } from '../../src/outputs/compareText.ts';
import { printable } from '../../src/outputs/paint.ts';
import { solve } from '../../src/solve.ts';
import { compareAnswers } from '../../src/studies/compare.ts';
import type { Comparison } from '../../src/studies/compare/comparison.ts';
import type { CompareRequest } from '../arguments.ts';
import { chooseColumns } from '../columns.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource, type Source } from '../source.ts';
import { pageWidth, painterFor } from '../terminal.ts';

export async function compare(request: CompareRequest, io: Io): Promise<number> {
  const paintError = painterFor(request.color, io.errorIsTerminal, io.environment);
  const refuse = (message: string): number => {
    io.writeError(`${paintError('error', 'error:')} ${printable(message)}\n`);
    return UNUSABLE;
  };
  const was = await readSource(request.was, io);
  const is = await readSource(request.is, io);
  for (const source of [was, is]) if (source.kind === 'unusable') refuse(source.message);
  if (was.kind === 'unusable' || is.kind === 'unusable') return UNUSABLE;
  const [before, after] = [solve(was.text), solve(is.text)];
  const columns = [...after.columns, ...before.columns];
  // Where nothing is solved there is nothing to choose from, and the comparison says so.
  const names = request.columns === undefined || columns.length === 0 ? undefined : chooseColumns(request.columns, columns);
  if (typeof names === 'string') return refuse(names);
  const comparison = compareAnswers(before, after, names === undefined ? {} : { columns: names });
  io.writeOut(write(comparison, was, is, request, io));
  if (comparison.was === 'unusable' || comparison.is === 'unusable') return UNUSABLE;
  return comparison.verdict.worse ? WRONG : SOUND;
}

type Text = Extract<Source, { readonly kind: 'text' }>;

function write(comparison: Comparison, was: Text, is: Text, { format, color }: CompareRequest, io: Io): string {
  switch (format) {
    case 'text': {
      const paint = painterFor(color, io.outIsTerminal, io.environment);
      const width = pageWidth(io);
      return compareText(comparison, { was: was.label, is: is.label, paint, ...width });
    }
    case 'markdown':
      return compareMarkdown(comparison, { was: was.label, is: is.label });
    case 'json':
      return compareJson(comparison, { was: { name: was.label, text: was.text }, is: { name: is.label, text: is.text } });
  }
}
