/**
 * How many random builds the file's own check would pass: the same builds as those of the outcomes (`monteCarlo.ts`), the first so many of
 * them, each solved over its whole travel and judged by the rules themselves. What they find between stations, against friction and with
 * each spring off is found here, too. That takes some hundred times as long as the outcomes: fewer builds are gone through.
 */
import { failureTable } from '../../failures/failureTable.ts';
import type { FindingCode } from '../../findings/codes.ts';
import type { Finding } from '../../findings/finding.ts';
import { RULES } from '../../findings/findings.ts';
import { createStudy, type Study } from '../../findings/study.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';
import { columnsOf } from '../../table/columns.ts';
import { travelOf } from '../../travel/travel.ts';
import { yieldOf, type Yield } from './distribution.ts';
import { JUDGING } from './judging.ts';
import { drawsOf, type Law } from './monteCarlo.ts';
import { createPlacing } from './placing.ts';
import type { Progress } from './stack.ts';

/** How many builds keep one rule: the check finds neither an error nor a warning of it. */
export interface RuleYield {
  readonly code: FindingCode;
  /** Builds that were gone through, those of them that do not keep it, and those with an error among these. */
  readonly builds: number;
  readonly failed: number;
  readonly errors: number;
  readonly kept: Yield;
  /** Where it is found, in how many builds; most first. */
  readonly parts: readonly { readonly name: string; readonly builds: number }[];
  /** What the check says of the worst build; undefined where every build keeps it. */
  readonly worst: Finding | undefined;
  /** Whether the file as drawn does not keep it either. */
  readonly isAsDrawn: boolean;
}

export interface RuleYields {
  /** Of every rule that judges builds: those that most builds do not keep first, of these errors first. */
  readonly rules: readonly RuleYield[];
  /** Of each build that was gone through by every rule, 1 where it keeps them all. */
  readonly kept: Uint8Array;
}

/** Builds for all rules but that of single failures, and for that one too. */
const BUILDS = 300;
const BUILDS_WHOLE = 100;
/** Of the first that many, those that do not keep a rule: then its share is known well enough, and what would mend each takes long. */
const MANY = BUILDS_WHOLE / 2;

/** Yields after each rule. @param most builds at most */
export function* ruleYields(
  study: Study,
  varied: readonly Toleranced[],
  { seed, law, most }: { readonly seed: number; readonly law: Law; readonly most: number },
): Generator<Progress, RuleYields> {
  const {
    definition,
    travel: { mechanism },
  } = study;
  const counts = { quick: Math.min(BUILDS, most), whole: Math.min(BUILDS_WHOLE, most) };
  const tallies = judgedCodes().map(([code, how]) => tallyOf(code, counts[how]));
  const draw = drawsOf(seed, law, varied);
  const offsets = new Float64Array(varied.length);
  const kept = new Uint8Array(counts.whole).fill(1);
  const { build, put } = createPlacing(mechanism, varied, true);
  for (let k = 0; k < counts.quick; k++) {
    const said = (): Progress => ({ done: k, of: counts.quick });
    for (let j = 0; j < varied.length; j++) offsets[j] = draw(k, j);
    put(offsets);
    const travel = travelOf(build);
    const built = createStudy(definition, travel, columnsOf(travel));
    yield said();
    for (const tally of tallies) {
      if (!tally.wantsMore()) continue;
      if (JUDGING[tally.code] === 'whole') for (const _ of failureTable(travel).work('closing')) yield said();
      if (!tally.takes(RULES[tally.code](built)) && k < kept.length) kept[k] = 0;
      yield said();
    }
  }
  const rules: RuleYield[] = [];
  for (const tally of tallies) {
    rules.push(tally.answer(tally.hasFailed() && RULES[tally.code](study).some(isHeld)));
    yield { done: counts.quick, of: counts.quick };
  }
  return { rules: rules.sort((a, b) => b.failed / b.builds - a.failed / a.builds || b.errors - a.errors), kept };
}

/** Codes of rules that judge builds, in the order of the check. */
export function judgedCodes(): readonly (readonly [FindingCode, 'quick' | 'whole'])[] {
  return (Object.keys(RULES) as FindingCode[]).flatMap((code) => {
    const how = JUDGING[code];
    return typeof how === 'string' ? [[code, how] as const] : [];
  });
}

/** Whether a finding makes a build one that does not keep its rule. */
function isHeld({ severity }: Finding): boolean {
  return severity !== 'note';
}

interface Tally {
  readonly code: FindingCode;
  wantsMore(): boolean;
  /** Counts what one build has, and says whether it keeps the rule. */
  takes(findings: readonly Finding[]): boolean;
  hasFailed(): boolean;
  answer(isAsDrawn: boolean): RuleYield;
}

/** @param most builds at most */
function tallyOf(code: FindingCode, most: number): Tally {
  let [builds, failed, errors] = [0, 0, 0];
  let worst: Finding | undefined;
  const parts = new Map<string, number>();
  return {
    code,
    wantsMore: () => builds < most && !(builds === BUILDS_WHOLE && failed >= MANY),
    takes(findings) {
      builds++;
      const held = findings.filter(isHeld);
      if (held.length === 0) return true;
      failed++;
      if (held.some(({ severity }) => severity === 'error')) errors++;
      for (const name of new Set(held.map(({ part }) => part))) parts.set(name, (parts.get(name) ?? 0) + 1);
      for (const each of held) if (worst === undefined || isWorse(each, worst)) worst = each;
      return false;
    },
    hasFailed: () => failed > 0,
    answer: (isAsDrawn) => ({
      code,
      builds,
      failed,
      errors,
      kept: yieldOf(builds - failed, builds),
      parts: [...parts].map(([name, count]) => ({ name, builds: count })).sort((a, b) => b.builds - a.builds),
      worst,
      isAsDrawn,
    }),
  };
}

/** An error before a warning; then what is further off its limit. */
function isWorse(one: Finding, than: Finding): boolean {
  if (one.severity !== than.severity) return one.severity === 'error';
  return excess(one) > excess(than);
}

function excess({ worst, limit }: Finding): number {
  return worst === undefined || limit === undefined ? 0 : Math.abs(worst.value - limit.value);
}
