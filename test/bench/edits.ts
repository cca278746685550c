/**
 * What a person does to a text between two answers: a digit more or less, a key in the middle of being typed, a word in a comment. Each
 * takes a whole text and gives one that differs from it by a single act.
 */

/** Numbers from 0 to below 1. */
export type Draw = () => number;

export interface EditKind {
  readonly name: string;
  edit(text: string, draw: Draw): string;
}

/** One after the other, and as they come. */
export const EDIT_KINDS: readonly EditKind[] = [
  {
    name: 'a digit of a lever, joint or place',
    edit: (text, draw) => otherDigit(text, draw, linesOf(text, /^(?:let|points|levers|pedal|cables|rods|slots):/)),
  },
  {
    name: 'a digit of a spring, plate or sensor',
    edit: (text, draw) => otherDigit(text, draw, linesOf(text, /^(?:springs|plates|sensors):/)),
  },
  { name: 'a key half typed', edit: halfTyped },
  { name: 'a word of a comment or title', edit: otherWord },
  { name: 'any of these and worse: digits, letters, lines', edit: anything },
];

/** The same for the same seed. */
export function drawing(seed: number): Draw {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A stretch of a text. */
interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** The lines of some blocks of the file without those that are comments. */
function linesOf(text: string, block: RegExp): readonly Stretch[] {
  const found: Stretch[] = [];
  let isWithin = false;
  for (let start = 0; start < text.length;) {
    const newline = text.indexOf('\n', start);
    const end = newline < 0 ? text.length : newline;
    const line = text.slice(start, end);
    if (/^[a-z]/.test(line)) isWithin = block.test(line);
    if (isWithin && !/^\s*(?:#|$)/.test(line)) found.push({ start, end });
    start = end + 1;
  }
  return found;
}

function oneOf<Item>(items: readonly Item[], draw: Draw): Item {
  const item = items[Math.floor(draw() * items.length)];
  if (item === undefined) throw new Error('There is nothing of this kind in the text');
  return item;
}

function otherDigit(text: string, draw: Draw, within: readonly Stretch[] = [{ start: 0, end: text.length }]): string {
  // A digit within a name is none of a figure.
  const digits = within.flatMap(({ start, end }) =>
    [...text.slice(start, end).matchAll(/(?<![a-z_\d]\d*)\d/g)].map(({ index }) => start + index),
  );
  const at = oneOf(digits, draw);
  const digit = (Number(text[at]) + 1 + Math.floor(draw() * 9)) % 10;
  return `${text.slice(0, at)}${digit}${text.slice(at + 1)}`;
}

/** A key without its last letters, or with its first ones alone and no value: as it stands while it is being typed. */
function halfTyped(text: string, draw: Draw): string {
  const { 0: key, index } = oneOf([...text.matchAll(/(?<=[{,] ?|^ +)[a-z_]{3,}(?=: )/gm)], draw);
  const typed = key.slice(0, 1 + Math.floor(draw() * (key.length - 1)));
  if (draw() < 0.5) return text.slice(0, index) + typed + text.slice(index + key.length);
  const line = text.indexOf('\n', index);
  const indentation = /^ */.exec(text.slice(text.lastIndexOf('\n', index) + 1))?.[0] ?? '';
  return `${text.slice(0, line)}\n${indentation}${typed}${text.slice(line)}`;
}

function otherWord(text: string, draw: Draw): string {
  const { 0: found, index } = oneOf([...text.matchAll(/(?<=^ *# .*|^title: .*)[a-z]{2,}/gm)], draw);
  const at = index + Math.floor(draw() * found.length);
  return text.slice(0, at) + String.fromCharCode(97 + Math.floor(draw() * 26)) + text.slice(at);
}

function anything(text: string, draw: Draw): string {
  const kind = draw();
  if (kind < 0.5) return otherDigit(text, draw);
  return kind < 0.8 ? anotherLetter(text, draw) : otherLines(text, draw);
}

function anotherLetter(text: string, draw: Draw): string {
  const at = Math.floor(draw() * text.length);
  const letter = String.fromCharCode(97 + Math.floor(draw() * 26));
  return text.slice(0, at) + letter + text.slice(at);
}

/** A line taken out, or written twice. */
function otherLines(text: string, draw: Draw): string {
  const lines = text.split('\n');
  const at = Math.floor(draw() * lines.length);
  return (draw() < 0.5 ? lines.toSpliced(at, 1) : lines.toSpliced(at, 0, lines[at] ?? '')).join('\n');
}
