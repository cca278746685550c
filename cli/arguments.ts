/** Arguments of the command line, understood; a mistake is answered with the word that was probably meant. */
import { parseArgs } from 'node:util';
import { nearestWord } from '../src/definition/names.ts';
import type { ChosenSeverities } from '../src/findings/chosenSeverities.ts';
import { printable } from '../src/outputs/paint.ts';
import { readColumns } from './columns.ts';
import { readFormat } from './format.ts';
import { USAGE, type Command } from './help.ts';
import { readSeverities } from './severityOption.ts';
import { readSolveOptions, type SolveOptions } from './solveOptions.ts';
import { readStudyOptions, type StudyOptions } from './studyOptions.ts';
import { readTableOptions, type TableOptions } from './tableOptions.ts';

export interface CheckRequest {
  readonly kind: 'check';
  readonly files: readonly string[];
  readonly format: CheckFormat;
  /** Where not a finding's own. */
  readonly severities: ChosenSeverities;
  /** Undefined where the stream decides. */
  readonly color: boolean | undefined;
}

export type CheckFormat = (typeof CHECK_FORMATS)[number];

export interface TableRequest extends TableOptions {
  readonly kind: 'table';
  readonly file: string;
  readonly color: boolean | undefined;
}

export interface CompareRequest {
  readonly kind: 'compare';
  readonly was: string;
  readonly is: string;
  /** Of the curves, as written; undefined for those that differ of the usual ones. */
  readonly columns: readonly string[] | undefined;
  readonly format: CompareFormat;
  readonly color: boolean | undefined;
}

export type CompareFormat = (typeof COMPARE_FORMATS)[number];

export interface ReturnRequest {
  readonly kind: 'return';
  readonly file: string;
  readonly format: ReturnFormat;
  readonly color: boolean | undefined;
}

export interface FitRequest extends Omit<ReturnRequest, 'kind'> {
  readonly kind: 'fit';
}

export type ReturnFormat = (typeof RETURN_FORMATS)[number];

/** Of a command that searches, or draws at random. */
export interface StudyRequest extends StudyOptions {
  readonly kind: 'tune' | 'tolerance';
  readonly file: string;
  readonly color: boolean | undefined;
}

export interface SolveRequest extends SolveOptions {
  readonly kind: 'solve';
  readonly file: string;
  readonly color: boolean | undefined;
}

export type Request =
  | CheckRequest
  | TableRequest
  | CompareRequest
  | ReturnRequest
  | StudyRequest
  | SolveRequest
  | FitRequest
  | { readonly kind: 'help'; readonly topic: Command | undefined }
  | { readonly kind: 'version' }
  | Mistake;

export interface Mistake {
  readonly kind: 'mistake';
  readonly message: string;
  /** The usage line that fits, and where there is more. */
  readonly usage: string;
}

const CHECK_FORMATS = ['text', 'markdown', 'json', 'sarif'] as const;

const COMPARE_FORMATS = ['text', 'markdown', 'json'] as const;

const RETURN_FORMATS = ['text', 'json'] as const;

const COMMANDS: readonly Command[] = ['check', 'table', 'compare', 'return', 'tune', 'solve', 'tolerance', 'fit'];

const OPTIONS = {
  stations: { type: 'string' },
  count: { type: 'string' },
  columns: { type: 'string' },
  format: { type: 'string' },
  severity: { type: 'string' },
  seed: { type: 'string' },
  law: { type: 'string' },
  builds: { type: 'string' },
  change: { type: 'string' },
  for: { type: 'string' },
  from: { type: 'string' },
  to: { type: 'string' },
  color: { type: 'boolean' },
  'no-color': { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
} as const;

type OptionName = keyof typeof OPTIONS;

/** Options that not every command has, each with those that have it. */
const BELONGS: Readonly<Partial<Record<OptionName, readonly Command[]>>> = {
  stations: ['table'],
  count: ['table'],
  columns: ['table', 'compare'],
  severity: ['check'],
  seed: ['tune', 'tolerance'],
  law: ['tolerance'],
  builds: ['tolerance'],
  change: ['solve'],
  for: ['solve'],
  from: ['solve'],
  to: ['solve'],
};

export function readArguments(argv: readonly string[]): Request {
  const { tokens } = parseArgs({ args: [...argv], options: OPTIONS, allowPositionals: true, strict: false, tokens: true });
  const words: string[] = [];
  const given = new Map<OptionName, string>();
  const severities: string[] = [];
  const wrong: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') words.push(token.value);
    if (token.kind !== 'option') continue;
    const problem = optionProblem(token.name, token.rawName, token.value);
    if (problem !== undefined) wrong.push(problem);
    else given.set(token.name as OptionName, token.value ?? '');
    if (token.name === 'severity' && token.value !== undefined) severities.push(token.value);
  }
  const [first, ...files] = words;
  const command = COMMANDS.find((name) => name === first);
  if (first === 'help') return { kind: 'help', topic: COMMANDS.find((name) => name === files[0]) };
  if (given.has('help')) return { kind: 'help', topic: command };
  if (given.has('version')) return { kind: 'version' };
  if (first === undefined) return mistake(wrong[0] ?? 'A command is missing', undefined);
  if (command === undefined) return mistake(unknownCommand(first), undefined);
  const [problem] = wrong;
  if (problem !== undefined) return mistake(problem, command);
  const color = given.has('no-color') ? false : given.has('color') ? true : undefined;
  const misplaced = misplacedOption(command, given);
  if (misplaced !== undefined) return mistake(misplaced, command);
  switch (command) {
    case 'check':
      return checkRequest(files, given, severities, color);
    case 'table':
      return tableRequest(files, given, color);
    case 'compare':
      return compareRequest(files, given, color);
    case 'return':
    case 'fit':
      return returnRequest(command, files, given, color);
    case 'tune':
    case 'tolerance':
      return studyRequest(command, files, given, color);
    case 'solve':
      return solveRequest(files, given, color);
  }
}

function misplacedOption(command: Command, given: ReadonlyMap<OptionName, string>): string | undefined {
  for (const name of given.keys()) {
    const owners = BELONGS[name];
    if (owners?.includes(command) === false) return `\`--${name}\` belongs to ${owners.map((owner) => `\`${owner}\``).join(' and ')}`;
  }
  return undefined;
}

/** @param severities each as given: the option may stand several times */
function checkRequest(
  files: readonly string[],
  given: ReadonlyMap<OptionName, string>,
  severities: readonly string[],
  color: boolean | undefined,
): Request {
  if (files.length === 0) return mistake('A file to check is missing', 'check');
  if (files.filter((file) => file === '-').length > 1) return mistake('Standard input, `-`, can be read once only', 'check');
  const chosen = readFormat(given.get('format'), CHECK_FORMATS);
  if (typeof chosen === 'string') return mistake(chosen, 'check');
  const read = readSeverities(severities);
  return typeof read === 'string' ? mistake(read, 'check') : { kind: 'check', files, color, ...chosen, ...read };
}

function tableRequest(files: readonly string[], given: ReadonlyMap<OptionName, string>, color: boolean | undefined): Request {
  const [file, another] = files;
  if (file === undefined) return mistake('A file is missing', 'table');
  if (another !== undefined) return mistake(`One file at a time: \`${file}\` and \`${another}\` are two`, 'table');
  const options = readTableOptions(given);
  return typeof options === 'string' ? mistake(options, 'table') : { kind: 'table', file, color, ...options };
}

function compareRequest(files: readonly string[], given: ReadonlyMap<OptionName, string>, color: boolean | undefined): Request {
  const [was, is, another] = files;
  if (was === undefined) return mistake('Two files are missing, the old one and the new one', 'compare');
  if (is === undefined) return mistake(`The file to compare \`${was}\` with is missing`, 'compare');
  if (another !== undefined) return mistake(`Two files are compared; \`${another}\` is one too many`, 'compare');
  if (was === '-' && is === '-') return mistake('Standard input, `-`, can be read once only', 'compare');
  const chosen = readFormat(given.get('format'), COMPARE_FORMATS);
  if (typeof chosen === 'string') return mistake(chosen, 'compare');
  const named = readColumns(given.get('columns'));
  return typeof named === 'string' ? mistake(named, 'compare') : { kind: 'compare', was, is, color, ...chosen, ...named };
}

function returnRequest(
  kind: 'return' | 'fit',
  files: readonly string[],
  given: ReadonlyMap<OptionName, string>,
  color: boolean | undefined,
): Request {
  const [file, another] = files;
  if (file === undefined) return mistake('A file is missing', kind);
  if (another !== undefined) return mistake(`One file at a time: \`${file}\` and \`${another}\` are two`, kind);
  const chosen = readFormat(given.get('format'), RETURN_FORMATS);
  return typeof chosen === 'string' ? mistake(chosen, kind) : { kind, file, color, ...chosen };
}

function studyRequest(
  kind: StudyRequest['kind'],
  files: readonly string[],
  given: ReadonlyMap<OptionName, string>,
  color: boolean | undefined,
): Request {
  const [file, another] = files;
  if (file === undefined) return mistake('A file is missing', kind);
  if (another !== undefined) return mistake(`One file at a time: \`${file}\` and \`${another}\` are two`, kind);
  const options = readStudyOptions(given);
  return typeof options === 'string' ? mistake(options, kind) : { kind, file, color, ...options };
}

function solveRequest(files: readonly string[], given: ReadonlyMap<OptionName, string>, color: boolean | undefined): Request {
  const [file, another] = files;
  if (file === undefined) return mistake('A file is missing', 'solve');
  if (another !== undefined) return mistake(`One file at a time: \`${file}\` and \`${another}\` are two`, 'solve');
  const options = readSolveOptions(given);
  return typeof options === 'string' ? mistake(options, 'solve') : { kind: 'solve', file, color, ...options };
}

/** What is wrong with an option by itself; undefined where nothing is. */
function optionProblem(name: string, rawName: string, value: string | undefined): string | undefined {
  if (!isOption(name)) {
    const near = nearestWord(name, Object.keys(OPTIONS));
    return `There is no option \`${rawName}\`${near === undefined ? '' : `; did you mean \`--${near}\`?`}`;
  }
  const takesValue = OPTIONS[name].type === 'string';
  // Without a value of its own, an option would take the next one for it.
  if (takesValue && (value === undefined || /^--[a-z]/.test(value))) return `\`${rawName}\` needs a value`;
  if (!takesValue && value !== undefined) return `\`${rawName}\` takes no value`;
  return undefined;
}

function isOption(name: string): name is OptionName {
  return Object.hasOwn(OPTIONS, name);
}

function unknownCommand(word: string): string {
  if (/\.ya?ml$/i.test(word) || word === '-') return `\`${word}\` is a file, not a command; write \`pedal-to-plate check ${word}\``;
  const near = nearestWord(word, [...COMMANDS, 'help']);
  return `There is no command \`${word}\`${near === undefined ? '' : `; did you mean \`${near}\`?`}`;
}

function mistake(message: string, command: Command | undefined): Mistake {
  const usage = command === undefined ? `Usage: ${COMMANDS.map((name) => USAGE[name]).join('\n       ')}` : `Usage: ${USAGE[command]}`;
  const help = `\`pedal-to-plate ${command === undefined ? '' : `${command} `}--help\` says more.`;
  return { kind: 'mistake', message: printable(message), usage: `${usage}\n${help}` };
}
