/** The options of `tune` and `tolerance`: from where it begins, by which law it draws, in what form it tells. */
import type { Law } from '../src/studies/tolerance/monteCarlo.ts';
import { readFormat } from './format.ts';

export interface StudyOptions {
  /** Undefined for the usual one. */
  readonly seed: number | undefined;
  readonly law: Law | undefined;
  readonly builds: number | undefined;
  readonly format: StudyFormat;
}

export type StudyFormat = (typeof STUDY_FORMATS)[number];

export const STUDY_FORMATS = ['text', 'json'] as const;
const LAWS = ['normal', 'uniform'] as const;

/** The options, or a sentence on what is wrong with them, without a full stop. */
export function readStudyOptions(given: ReadonlyMap<string, string>): StudyOptions | string {
  const chosen = readFormat(given.get('format'), STUDY_FORMATS);
  if (typeof chosen === 'string') return chosen;
  const seed = readWhole(given.get('seed'), '--seed', 0, GREATEST_SEED);
  if (typeof seed === 'string') return seed;
  const builds = readWhole(given.get('builds'), '--builds', LEAST_BUILDS, MOST_BUILDS);
  if (typeof builds === 'string') return builds;
  const written = given.get('law');
  const law = LAWS.find((each) => each === written?.toLowerCase());
  if (written !== undefined && law === undefined) return `There is no law \`${written}\`; write ${LAWS.join(' or ')}`;
  return { seed, law, builds, ...chosen };
}

const GREATEST_SEED = 2 ** 32 - 1;
/** Fewer say nothing of a percentile. */
const LEAST_BUILDS = 100;
const MOST_BUILDS = 1_000_000;

function readWhole(written: string | undefined, option: string, least: number, most: number): number | undefined | string {
  if (written === undefined) return undefined;
  const value = /^\d{1,10}$/.test(written) ? Number(written) : NaN;
  return value >= least && value <= most ? value : `\`${option}\` is a whole number from ${least} to ${most}, not \`${written}\``;
}
