/** The options of `table`: which pedal positions, which columns, in what form. */
import { readColumns } from './columns.ts';
import { readFormat } from './format.ts';

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
  const chosen = readFormat(given.get('format'), FORMATS);
  if (typeof chosen === 'string') return chosen;
  const { format } = chosen;
  const [listed, counted] = [given.get('stations'), given.get('count')];
  if (listed !== undefined && counted !== undefined) return '`--stations` and `--count` exclude each other; give one of them';
  const stations = listed === undefined ? evenStations(counted ?? String(DEFAULT_COUNT[format])) : listedStations(listed);
  if (typeof stations === 'string') return stations;
  const named = readColumns(given.get('columns'));
  return typeof named === 'string' ? named : { stations, format, ...named };
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
