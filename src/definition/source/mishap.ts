/**
 * What the YAML library found wrong, in this project's words: the place, what it is, what to write.
 */
import type { YAMLError } from 'yaml';
import type { Problem, Replacement } from '../problem.ts';
import type { Span } from '../span.ts';
import { keyAboveDeeper, keyBeforeBracket, keyBeforeValue, type Colonless } from './colonless.ts';
import { bracketFormula, quoteProblem } from './quoteFormula.ts';
import { shortened } from './shortened.ts';
import {
  lineBefore,
  lineRest,
  multilineQuoteBefore,
  openQuote,
  skipBlank,
  skipLinesWithoutText,
  slice,
  startsLine,
  wordAt,
} from './stretches.ts';

/** A mistake of YAML in this project's words. */
export interface Mishap {
  readonly problem: Problem;
  /** Text to blank before parsing again, where the mistake would swallow what follows it. */
  readonly mask?: readonly Span[];
  /** Whether blanking loses nothing, so that what is read after it is whole. */
  readonly lossless?: boolean;
  /** A key that lacks its colon: the file is read on as if that stood there, and nothing is blanked. */
  readonly colonless?: Colonless;
}

/** The text with spaces in the place of a stretch, which moves nothing. */
export function blank(text: string, span: Span): string {
  return text.slice(0, span.start) + text.slice(span.start, span.end).replace(/[^\r\n]/g, ' ') + text.slice(span.end);
}

/** Undefined for a mistake that is told elsewhere (an unclosed bracket, told where it opens) or is none here. */
export function mishapOf(error: YAMLError, text: string): Mishap | undefined {
  const [start, end] = error.pos;
  const at: Span = { start: Math.min(start, text.length), end: Math.min(Math.max(end, start + 1), text.length) };
  switch (error.code) {
    case 'UNEXPECTED_TOKEN':
      return unexpected(at, text);
    case 'MISSING_CHAR':
      return missingCharacter(error.message, at, text);
    case 'BAD_INDENT':
      return /^Flow (map|sequence)/.test(error.message) ? undefined : badIndent(at, text);
    case 'TAB_AS_INDENT':
      return tabs(at, text);
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
      return nestedInLine(at, text);
    case 'BAD_SCALAR_START':
      return badStart(at, text);
    case 'BAD_DQ_ESCAPE':
      return syntax(at, `\`${slice(text, at)}\` means nothing inside double quotes`, 'Use single quotes, or write the backslash twice');
    case 'TAG_RESOLVE_FAILED':
      return tag(at, text);
    case 'BAD_DIRECTIVE':
      return syntax(
        lineRest(at.start, text),
        'A line that begins with `%` is a YAML directive, which a throttle file does not use',
        'Remove the line',
        [lineRest(at.start, text)],
      );
    case 'MULTIPLE_DOCS':
      return undefined;
    case 'BLOCK_IN_FLOW':
      return (
        missingComma(at, text) ??
        syntax(
          at,
          'Inside `{}` or `[]` everything is written with commas, not on indented lines',
          'Use `{key: value, …}` or indented lines, not both',
        )
      );
    case 'BAD_COLLECTION_TYPE':
    case 'MULTIPLE_TAGS':
    case 'MULTIPLE_ANCHORS':
    case 'BAD_PROP_ORDER':
    case 'ALIAS_PROPS':
      return syntax(
        at,
        `\`${slice(text, at)}\` cannot stand here`,
        'An anchor `&name` stands once, right before its value; an alias `*name` stands alone',
      );
    case 'BAD_ALIAS':
      return syntax(
        at,
        `\`${slice(text, at)}\` is not a name for an anchor`,
        'Write `&name` before the value and `*name` where it is used again',
      );
    default:
      return syntax(at, `This is not YAML: ${lowerFirst(error.message)}`, PLAIN_YAML);
  }
}

const PLAIN_YAML = 'Write `key: value`, with a value that holds special characters in quotes';

function syntax(span: Span, message: string, cure?: string, mask?: readonly Span[], replacements?: readonly Replacement[]): Mishap {
  return {
    problem: {
      code: 'yaml-syntax',
      severity: 'error',
      span,
      message,
      ...(cure === undefined ? {} : { cure }),
      ...(replacements === undefined ? {} : { replacements }),
    },
    ...(mask === undefined ? {} : { mask }),
  };
}

function unexpected(at: Span, text: string): Mishap {
  const rest = lineRest(at.start, text);
  const character = text[at.start] ?? '';
  const quote = multilineQuoteBefore(at.start, text);
  if (quote !== undefined) return unclosedQuote(quote, text);
  const formula = bracketFormula(at.start, text);
  if (formula !== undefined) return { problem: quoteProblem(formula, text), mask: [formula] };
  const colonless = keyBeforeBracket(at.start, text);
  if (colonless !== undefined) return noColon(colonless, ' before its value');
  if (character === '}' || character === ']') {
    const one = { start: at.start, end: at.start + 1 };
    return syntax(
      one,
      `\`${character}\` closes nothing that was opened`,
      'Remove it, or open the bracket that it should close',
      [rest],
      [{ span: one, text: '' }],
    );
  }
  const before = text.slice(0, at.start).trimEnd().slice(-1);
  if (character === ',' && /[,[{]/.test(before)) {
    const comma = { start: at.start, end: at.start + 1 };
    return syntax(comma, 'There is no value before this comma', 'Write the value, or remove the comma', [comma]);
  }
  const signed = /^- +(\d|\.\d)/.exec(slice(text, rest));
  if (signed !== null) {
    const gap = { start: at.start, end: at.start + signed[0].length - (signed[1]?.length ?? 0) };
    return syntax(
      rest,
      `\`${shortened(slice(text, rest))}\` reads as an item of a list, which cannot stand here`,
      'Write the sign right before the figure',
      [rest],
      [{ span: gap, text: '-' }],
    );
  }
  const after =
    before === '"' || before === "'"
      ? ' after the closing quote'
      : before === '}' || before === ']'
        ? ' after the closing bracket'
        : ' here';
  return syntax(
    rest,
    `\`${shortened(slice(text, rest))}\` cannot stand${after}`,
    'Start a new key on a line of its own, and put text with special characters in quotes as a whole',
    [rest],
  );
}

function missingCharacter(message: string, at: Span, text: string): Mishap | undefined {
  if (message.includes('quote')) {
    const opened = openQuote(at.start, text, message.includes('"') ? '"' : "'");
    return unclosedQuote(opened, text);
  }
  if (message.includes('followed by map values')) {
    const word = wordAt(at.start, text);
    const span = word.end > word.start ? word : at;
    const line = lineWithoutColon(at.start, text);
    if (line !== undefined) return line;
    return syntax(
      span,
      `\`${shortened(slice(text, span))}\` has no value`,
      `Write \`${shortened(slice(text, span))}: …\`, with a colon and a space`,
    );
  }
  if (/^Flow (map|sequence) must end/.test(message) || /expected flow/i.test(message)) return undefined;
  if (message.startsWith('Comments must be separated')) {
    const insert = { span: { start: at.start, end: at.start }, text: ' ' };
    return syntax(
      { start: at.start, end: at.start + 1 },
      'A comment begins with a space before its `#`',
      'Write a space before it',
      undefined,
      [insert],
    );
  }
  if (message.includes('Missing , ')) {
    const formula = bracketFormula(at.start, text);
    if (formula !== undefined) return { problem: quoteProblem(formula, text), mask: [formula] };
    return syntax(at, 'A comma is missing before this', 'Put a comma between the entries inside `{}` or `[]`');
  }
  return syntax(at, `This is not YAML: ${lowerFirst(message)}`, PLAIN_YAML);
}

function badIndent(at: Span, text: string): Mishap {
  const before = lineBefore(at.start, text);
  const line = before && lineWithoutColon(before.start, text);
  if (line !== undefined) return line;
  const word = wordAt(skipBlank(at.start, text), text);
  return syntax(word, 'This line does not line up with the lines above it', 'Give all keys of one block the same indentation', undefined);
}

/** Tabs stand as one space each while the file is read on, which keeps a file that is indented by tabs throughout readable. */
export function tabs(at: Span, text: string): Mishap {
  const indents: Span[] = [];
  for (const match of text.matchAll(/^[ \t]*\t[ \t]*/gm)) indents.push({ start: match.index, end: match.index + match[0].length });
  const first = indents.find((indent) => indent.end > at.start) ?? indents[0] ?? at;
  const replacements = indents.map((span) => ({ span, text: slice(text, span).replaceAll('\t', '  ') }));
  const mishap = syntax(first, 'YAML does not allow tabs in the indentation', 'Indent with spaces', indents, replacements);
  return { ...mishap, lossless: true };
}

function nestedInLine(at: Span, text: string): Mishap {
  const lineBreak = text.slice(at.start, at.end).search(/[\r\n]/);
  if (lineBreak >= 0) {
    return startsLine(at.start, text) ? wordAlone(at.start, text) : indentedUnderValue(at.start + lineBreak, text);
  }
  const rest = lineRest(at.start, text);
  const value = slice(text, rest);
  const colonless = keyBeforeBracket(at.start, text);
  if (colonless !== undefined) return noColon(colonless, ' before its value');
  if (!/:(\s|$)/.test(value) && rest.end < text.length) return indentedUnderValue(rest.end, text);
  return syntax(
    rest,
    `A second \`: \` on one line, in \`${shortened(value)}\``,
    'Put the value in quotes, or start the second key on a line of its own',
    [rest],
  );
}

/** `{radius: 26 mm wraps: clockwise}`: a second key on the line of a first. */
function missingComma(at: Span, text: string): Mishap | undefined {
  const second = /^[^,:[\]{}#\r\n]*?\s([a-z_]+):(?=\s)/.exec(text.slice(at.start, at.start + LONGEST_VALUE));
  const key = second?.[1];
  if (second === null || key === undefined) return undefined;
  const end = at.start + second[0].length - 1;
  const start = end - key.length;
  const before = at.start + text.slice(at.start, start).trimEnd().length;
  const line = lineRest(start, text);
  const length = slice(text, line).search(/[,}\]]/);
  const lost = { start, end: length < 0 ? line.end : start + length };
  return syntax(
    { start, end },
    `A comma is missing before \`${key}\``,
    'Put a comma between the entries inside `{}` or `[]`',
    [lost],
    [{ span: { start: before, end: before }, text: ',' }],
  );
}

// A value that runs on further was not meant as one.
const LONGEST_VALUE = 200;

/** A line without a colon and space between lines that have one. */
function wordAlone(start: number, text: string): Mishap {
  const line = lineWithoutColon(start, text);
  if (line !== undefined) return line;
  const rest = lineRest(start, text);
  const [, key, value] = /^([a-z_]+)(?:\s*[:=]\s*|\s+(?=[-+.\d[{]))(\S.*)$/.exec(slice(text, rest)) ?? [];
  if (key !== undefined && value !== undefined) return { ...noColonAndSpace(rest, `${key}: ${value}`, text), mask: [rest] };
  const word = shortened(slice(text, rest));
  return syntax(rest, `\`${word}\` has no value`, `Write \`${word}: …\`, with a colon and a space`, [rest]);
}

/** A line where it is plain which key lacks its colon: one above lines that stand farther in, or with its value behind it. */
function lineWithoutColon(start: number, text: string): Mishap | undefined {
  if (!startsLine(start, text)) return undefined;
  const rest = lineRest(start, text);
  const above = keyAboveDeeper(rest, text);
  if (above !== undefined) return noColon(above, '');
  const joined = keyBeforeValue(rest, text);
  if (joined === undefined) return undefined;
  const { colonless, value } = joined;
  return { ...noColonAndSpace(rest, `${colonless.key}: ${value}`, text), colonless };
}

/** @param mended the line as it should be */
function noColonAndSpace(rest: Span, mended: string, text: string): Mishap {
  const message = `\`${shortened(slice(text, rest))}\` has no colon and space between key and value`;
  return syntax(rest, message, `Write \`${shortened(mended)}\``, undefined, [{ span: rest, text: mended }]);
}

/** @param where behind the name of the key, in words */
function noColon(colonless: Colonless, where: string): Mishap {
  const { key, span } = colonless;
  const insert = { span: { start: span.end, end: span.end }, text: ':' };
  return { ...syntax(span, `\`${key}\` has no colon${where}`, `Write \`${key}:\``, undefined, [insert]), colonless };
}

function indentedUnderValue(after: number, text: string): Mishap {
  const rest = lineRest(skipLinesWithoutText(after, text), text);
  return syntax(
    rest,
    'This line is indented under a value that is already complete',
    'Line it up with the key above, or give that key no value of its own',
    [rest],
  );
}

function badStart(at: Span, text: string): Mishap {
  const rest = lineRest(at.start, text);
  return syntax(at, `A value cannot begin with \`${slice(text, at)}\``, `Put it in quotes: "${shortened(slice(text, rest))}"`);
}

function tag(at: Span, text: string): Mishap {
  const word = wordAt(at.start, text);
  const after = skipBlank(word.end, text);
  return syntax(word, `The tag \`${slice(text, word)}\` has no meaning in a throttle file`, 'Remove it', undefined, [
    { span: { start: word.start, end: after }, text: '' },
  ]);
}

function unclosedQuote(start: number, text: string): Mishap {
  const quote = text[start] ?? '"';
  const rest = lineRest(start, text);
  return syntax(rest, `The quote opened here is not closed on its line`, `Close it with ${quote}`, [rest]);
}

function lowerFirst(message: string): string {
  return message.slice(0, 1).toLowerCase() + message.slice(1);
}
