/** The options of `table`: which pedal positions, which columns, in what form. */
import { nearestWord } from '../src/definition/names.ts';

export interface TableOptions {
  /** Pedal travels, fractions from 0 to 1. */
  readonly stations: readonly number[];
  /** As written; undefined for all. */
  readonly columns: readonly string[] | undefined;
  readonly format: Format;
}

export type Format = (typeof FORMATS)[number];

const FORMATS = ['text', 'csv', 'json'] as const;
const DEFAULT_COUNT: Readonly<Record<Format, number>> = { text: 21, csv: 101, json: 101 };
const MOST_STATIONS = 100_000;

/** The options, or a sentence on what is wrong with them, without a full stop. */
export function readTableOptions(given: ReadonlyMap<string, string>): TableOptions | string {
  const format = readFormat(given.get('format'));
  if (format === undefined) return formatMistake(given.get('format') ?? '');
  const [listed, counted] = [given.get('stations'), given.get('count')];
  if (listed !== undefined && counted !== undefined) return '`--stations` and `--count` exclude each other; give one of them';
  const stations = listed === undefined ? evenStations(counted ?? String(DEFAULT_COUNT[format])) : listedStations(listed);
  if (typeof stations === 'string') return stations;
  const columns = given
    .get('columns')
    ?.split(',')
    .map((name) => name.trim());
  if (columns?.some((name) => name === ''))
    return '`--columns` has an empty place; write names with a comma between them, e.g. `pedal.travel,shaft.opening`';
  return { stations, columns, format };
}

function readFormat(text: string | undefined): Format | undefined {
  return text === undefined ? 'text' : FORMATS.find((format) => format === text.toLowerCase());
}

function formatMistake(text: string): string {
  const near = nearestWord(text, FORMATS);
  return `There is no format \`${text}\`; ${near === undefined ? 'write text, csv or json' : `did you mean \`${near}\`?`}`;
}

function evenStations(text: string): number[] | string {
  const count = /^\d{1,7}$/.test(text.trim()) ? Number(text) : NaN;
  if (!(count >= 2 && count <= MOST_STATIONS)) return `\`--count\` takes a whole number from 2 to ${MOST_STATIONS}, not \`${text}\``;
  return Array.from({ length: count }, (_, index) => index / (count - 1));
}

function listedStations(text: string): number[] | string {
  const items = text.split(',').map((item) => item.trim());
  if (items.length > MOST_STATIONS) return `\`--stations\` takes ${MOST_STATIONS} figures at most`;
  const stations: number[] = [];
  for (const item of items) {
    const percent = NUMBER.test(item) ? Number.parseFloat(item) : NaN;
    if (Number.isNaN(percent))
      return `\`--stations\` takes pedal travels in % with commas between them, e.g. \`0,25,50,100\`; \`${item}\` is none`;
    if (percent < 0 || percent > 100) return `\`--stations\` takes pedal travels from 0 to 100 %; ${item} lies outside`;
    stations.push(percent / 100);
  }
  return stations;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*%?$/i;
