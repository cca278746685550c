/** The dimensions of each part as they are written, for the pointer resting on it. */
import type { Definition, Value } from '../definition/definition.ts';
import { figureOfValue } from '../language/figures.ts';
import { valuesOf } from '../language/values.ts';
import { printable } from '../outputs/paint.ts';
import type { PartKey, PartKind } from '../protocol/report.ts';

/**
 * Tells of a part its dimensions in the order of the file, e.g. `length 71.5 mm`, `out radius reach = 38 mm`, `pivot [120, 40]`. A place
 * that stands in `points` is told by its name.
 */
export function dimensionsOf(text: string, definition: Definition): (part: PartKey) => readonly string[] {
  const byPart = new Map<string, Value[]>();
  for (const value of valuesOf(definition)) {
    const [block = '', name = ''] = value.path.split('.');
    const key = block === 'pedal' ? block : `${block}.${name}`;
    const known = byPart.get(key);
    if (known === undefined) byPart.set(key, [value]);
    else known.push(value);
  }
  const lines = (key: string): readonly string[] => linesOf(text, byPart.get(key) ?? [], key);
  return ({ kind, name }) => {
    const { pedal } = definition;
    const lever = kind === 'pedal' ? (pedal?.kind === 'lever' ? pedal.lever.name : undefined) : kind === 'lever' ? name : undefined;
    const own = kind === 'lever' ? [] : lines(kind === 'pedal' ? 'pedal' : `${BLOCKS[kind]}.${name}`);
    return [...own, ...(lever === undefined ? [] : [...pivotLine(definition, lever), ...lines(`levers.${lever}`)])];
  };
}

const BLOCKS: Readonly<Record<PartKind, string>> = {
  pedal: 'pedal',
  lever: 'levers',
  cable: 'cables',
  rod: 'rods',
  slot: 'slots',
  coupling: 'couplings',
  plates: 'plates',
  sensor: 'sensors',
  spring: 'springs',
  'keep-out': 'keep_out',
};

function pivotLine({ levers }: Definition, name: string): readonly string[] {
  const point = levers.find((lever) => lever.name === name)?.pivot.point;
  return point === undefined ? [] : [`pivot ${point.name}`];
}

/** Values of one list stand together. */
function linesOf(text: string, values: readonly Value[], key: string): readonly string[] {
  const lists = new Map<string, { readonly written: string[]; readonly isList: boolean }>();
  for (const value of values) {
    const words = value.path.slice(key.length + 1).split('.');
    const label = labelOf(words);
    const written = writtenAs(text, value);
    const known = lists.get(label);
    if (known === undefined) lists.set(label, { written: [written], isList: isNumber(words.at(-1)) });
    else known.written.push(written);
  }
  return [...lists].map(([label, { written, isList }]) => printable(`${label} ${isList ? `[${written.join(', ')}]` : written.join(', ')}`));
}

/** In words: without the blocks `arms` and `drums`, which the name behind them says, and without places in a list. */
function labelOf([block = '', ...words]: readonly string[]): string {
  const isSaid = block === 'arms' || block === 'drums';
  const said = [...(isSaid ? [] : [block]), ...words].filter((word) => !isNumber(word));
  return said.join(' ').replaceAll('_', ' ');
}

/** Names and keys begin with a letter. */
function isNumber(word: string | undefined): boolean {
  return word !== undefined && word >= '0' && word < ':';
}

/** Without the quotes that YAML needs. */
function writtenAs(text: string, value: Value): string {
  const { span, formula } = value;
  if (formula !== undefined) return `${oneLine(formula.text)} = ${figureOfValue(value, undefined)}`;
  const words = text.slice(span.start, span.end);
  return oneLine(words.startsWith('"') || words.startsWith("'") ? words.slice(1, -1) : words);
}

function oneLine(words: string): string {
  return words.includes('\n') ? words.replace(/\s+/g, ' ').trim() : words.trim();
}
