/** Which figure of a file a question for one figure means, and between which values it is looked for. */
import type { Dimension } from './definition/dimensions.ts';
import { PLACE_UNIT } from './definition/dimensions.ts';
import { formatQuantity } from './definition/edit.ts';
import { fitNames } from './definition/fitNames.ts';
import { nearestWord } from './definition/names.ts';
import { readQuantity } from './definition/quantity/quantity.ts';
import { linkageValues } from './definition/values.ts';
import type { Study } from './findings/study.ts';
import { boundsFor, isWhole } from './language/fixBounds.ts';
import { unknownAt, type Unknown } from './language/fixUnknown.ts';
import { letsBehind } from './language/letBehind.ts';

/** SI, and whose they are. */
export interface FigureBounds {
  readonly from: number;
  readonly to: number;
  readonly by: 'asked' | 'tune' | 'usual';
}

export interface AskedBounds {
  readonly change: string;
  /** As a person writes them. */
  readonly from?: string;
  readonly to?: string;
}

/** The usual bounds in one line, e.g. `34 mm to 44 mm`; undefined where the figure cannot be looked for. */
export function usualBounds(study: Study, change: string): string | undefined {
  const path = pathOf(change, study);
  if (typeof path !== 'string') return undefined;
  const unknown = unknownAt(study, path);
  const bounds = boundsOf({ change }, study, unknown);
  return 'kind' in bounds ? undefined : [bounds.from, bounds.to].map((value) => shownFigure(value, unknown, SHOWN_DIGITS)).join(' to ');
}

/** Of bounds that nobody has asked for. */
const SHOWN_DIGITS = 4;

/** Bounds that a person writes in one line, e.g. `34 mm to 44 mm`: what they are, or why they are none. An empty line asks for the usual ones. */
export function readBounds(study: Study, change: string, line: string): Pick<AskedBounds, 'from' | 'to'> | Refused {
  if (line.trim() === '') return {};
  const path = pathOf(change, study);
  if (typeof path !== 'string') return path;
  const unknown = unknownAt(study, path);
  const written = splitBounds(line);
  const usual = usualBounds(study, change);
  if (written === undefined)
    return refused(`Two figures are wanted, the lesser one first${usual === undefined ? '' : `, such as \`${usual}\``}`);
  const bounds = boundsOf({ change, ...written }, study, unknown);
  return 'kind' in bounds ? bounds : written;
}

/** A first figure without a unit takes that of the second. */
function splitBounds(line: string): { readonly from: string; readonly to: string } | undefined {
  const [from, to, ...more] = line
    .split(BETWEEN)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (from === undefined || to === undefined || more.length > 0) return undefined;
  const unit = BARE.test(from) ? (UNIT_BEHIND.exec(to)?.[1] ?? '') : '';
  return { from: `${from} ${unit}`.trimEnd(), to };
}

/** A word, dots, a long dash, a dash between blanks, or a comma or semicolon with a blank behind it: `1,5` is no two figures. */
const BETWEEN = /\s+to\s+|\s*(?:\.\.+|…|–|—)\s*|\s+-\s+|[,;]\s+/i;
const BARE = /^[+−-]?[\d.]+(?:e[+-]?\d+)?$/i;
const UNIT_BEHIND = /^[+−-]?[\d.]+(?:e[+-]?\d+)?\s*(\D.*)$/i;

export function refused(why: string, cure?: string): { readonly kind: 'refused'; readonly why: string; readonly cure?: string } {
  return { kind: 'refused', why, ...(cure !== undefined && { cure }) };
}

export type Refused = ReturnType<typeof refused>;

/** Path of the figure that a word means: a path, or a name as `fit` takes it. */
export function pathOf(word: string, { definition, travel: { mechanism } }: Study): string | Refused {
  const values = linkageValues(definition);
  const path = fitNames(definition).get(word)?.path ?? word;
  const value = values.get(path);
  if (value?.formula !== undefined) {
    const behind = letsBehind(definition, value).map(({ name }) => `\`${name}\``);
    const cure = behind.length > 0 ? `Change ${behind.length === 1 ? '' : 'one of '}${behind.join(', ')} instead` : undefined;
    return refused(`\`${word}\` follows from the formula \`${value.formula.text}\``, cure);
  }
  if (value !== undefined || mechanism.dimensions.some((each) => each.path === path)) return path;
  const paths = [...new Set([...values.keys(), ...mechanism.dimensions.map((each) => each.path)])].filter(
    (each) => !each.startsWith('let.'),
  );
  const within = paths.filter((each) => each.startsWith(`${word}.`) || each.split('.')[1] === word);
  if (within.length > 0)
    return refused(`\`${word}\` is not one figure`, `Name one of its figures, such as \`${within.slice(0, 4).join('`, `')}\``);
  const near = nearestWord(word, [...definition.lets.map(({ name }) => name), ...paths]);
  return refused(
    `The file has no figure \`${word}\``,
    near === undefined ? 'Give a name of `let`, or a path such as `rods.link.length`' : `Did you mean \`${near}\`?`,
  );
}

/** The usual ones where none are asked for. */
export function boundsOf({ change, from, to }: AskedBounds, { definition }: Study, unknown: Unknown): FigureBounds | Refused {
  const { path, dimension, present } = unknown;
  const free = definition.tune?.free.find(({ name }) => path === `let.${name}`);
  const usual = free === undefined ? boundsFor(definition, path, dimension, present) : { from: free.from.nominal, to: free.to.nominal };
  const [low, high] = [boundOf(from, '`from`', dimension), boundOf(to, '`to`', dimension)];
  if (typeof low === 'object') return low;
  if (typeof high === 'object') return high;
  const asked = { from: low ?? usual.from, to: high ?? usual.to };
  const bounds = isWhole(path) ? { from: Math.ceil(asked.from), to: Math.floor(asked.to) } : asked;
  const by = low !== undefined || high !== undefined ? 'asked' : free === undefined ? 'usual' : 'tune';
  if (bounds.from < bounds.to) return { ...bounds, by };
  const [a, b] = [bounds.from, bounds.to].map((value) => shownFigure(value, unknown, FIGURE_DIGITS));
  return bounds.from === bounds.to
    ? refused(`There is no room to change \`${change}\`: both bounds are ${a ?? ''}`)
    : refused(`The bounds are reversed: from ${a ?? ''} to ${b ?? ''}`, 'Give the lesser one first');
}

/** SI; undefined where none is given. */
function boundOf(text: string | undefined, which: string, dimension: Dimension): number | Refused | undefined {
  if (text === undefined) return undefined;
  const reading = readQuantity(text, 0, dimension);
  const quantity = reading.form === 'quantity' ? reading.quantity : undefined;
  if (quantity !== undefined && quantity.tolerance === undefined && Number.isFinite(quantity.nominal)) return quantity.nominal;
  const problem = reading.form === 'quantity' ? reading.problems[0] : undefined;
  const unit = PLACE_UNIT[dimension];
  const example = unit === '' ? '0.5' : `38 ${unit}`;
  return refused(problem?.message ?? `${which} is a plain figure, such as \`${example}\`, not \`${text}\``, problem?.cure);
}

/** A value of the figure as a person would write it. */
export function shownFigure(
  value: number,
  { unit, dimension }: { readonly unit: string; readonly dimension: Dimension },
  digits?: number,
): string {
  return formatQuantity(value, unit === '' ? PLACE_UNIT[dimension] : unit, digits) ?? String(value);
}

/** Significant digits in which a value of a figure is shown whole. */
export const FIGURE_DIGITS = 12;
