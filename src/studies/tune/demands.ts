/**
 * What an answer of the search must keep beside the curve, judged on a solved file.
 *
 * A demand is held against what is found in the file: it is kept where none of the findings that speak of it is there. How far it is from
 * being kept is the worst of them, in parts of its limit. What could not be checked is not kept.
 */
import type { Definition, LimitKey } from '../../definition/definition.ts';
import type { Kept, KeptWord } from '../../definition/tune.ts';
import type { Answered } from '../../findings/answered.ts';
import { withFollowing } from '../../findings/consequences.ts';
import type { FindingCode } from '../../findings/codes.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Comparison, RequirementAnswer } from '../../requirements/requirement.ts';

export interface Demand {
  readonly kept: Kept;
  /** As the file names it. */
  readonly name: string;
}

export interface Judgement {
  readonly demand: Demand;
  /** 0 where it is kept; how far it is from that, in parts of its limit. NaN where it could not be checked. */
  readonly shortfall: number;
  /** What is in the way, or why it was not checked; empty where it is kept. */
  readonly words: string;
  /** Of a line of `require` that is not met: how it stands, with its figures. */
  readonly answer?: RequirementAnswer;
}

/** What the file names, else every limit, full opening, clearance and closing as far as the file has what they speak of, and all of `require`. */
export function demandsOf(definition: Definition): readonly Demand[] {
  const { keep } = definition.tune ?? {};
  if (keep !== undefined) return keep.map((kept) => ({ kept, name: kept.kind === 'requirement' ? kept.name : nameOf(kept) }));
  const { plates, springs, requirements, keepOuts } = definition;
  const span = definition.tune?.span ?? { start: 0, end: 0 };
  const words: readonly KeptWord[] = [
    ...(plates.length > 0 ? (['full_opening'] as const) : []),
    ...(keepOuts.length > 0 ? (['clearance'] as const) : []),
    ...(springs.length > 0 ? (['closing_torque'] as const) : []),
  ];
  const limits = (Object.keys(OF_LIMIT) as LimitKey[]).filter((key) => key !== 'closing_margin' || springs.length > 0);
  return [
    ...limits.map((key): Demand => ({ kept: { kind: 'limit', key, span }, name: key })),
    ...words.map((word): Demand => ({ kept: { kind: 'word', word, span }, name: word })),
    ...requirements.map(({ name }): Demand => ({ kept: { kind: 'requirement', name, span }, name })),
  ];
}

function nameOf(kept: Exclude<Kept, { kind: 'requirement' }>): string {
  return kept.kind === 'limit' ? kept.key : kept.word;
}

/** Findings that speak of a limit. Those of a dead centre are told instead of the angle that comes to it. */
const OF_LIMIT: Readonly<Record<LimitKey, readonly FindingCode[]>> = {
  transmission: ['transmission-angle', 'toggle-opening', 'change-point'],
  drive: ['drive-angle', 'toggle-returning', 'change-point'],
  misalignment: ['rod-end-tilt'],
  lead: ['cable-lead'],
  step: ['out-of-step'],
  closing_margin: ['closing-margin', 'friction-lock'],
};

const OF_WORD: Readonly<Record<KeptWord, readonly FindingCode[]>> = {
  full_opening: ['opening-missed'],
  clearance: ['touches-keep-out', 'parts-touch', 'keep-out-clearance'],
  closing_torque: ['no-return-spring', 'single-return-spring', 'closing-lost', 'friction-lock'],
};

/** One a demand, in their order; all of them short where nothing can be solved. */
export function judge(answered: Answered, demands: readonly Demand[]): readonly Judgement[] {
  const found = withFollowing(answered.findings);
  return demands.map((demand): Judgement => {
    const { kept } = demand;
    if (answered.study === undefined) return { demand, shortfall: NaN, words: 'the linkage cannot be solved' };
    switch (kept.kind) {
      case 'limit':
        return ofFindings(demand, found, OF_LIMIT[kept.key]);
      case 'word':
        return whyUnchecked(answered, demand, kept.word) ?? ofFindings(demand, found, OF_WORD[kept.word]);
      case 'requirement':
        return ofRequirement(demand, answered, kept.name);
    }
  });
}

function ofFindings(demand: Demand, findings: readonly Finding[], codes: readonly FindingCode[]): Judgement {
  const own = findings.filter(({ code }) => codes.includes(code));
  const [worst] = own.map((finding) => ({ finding, by: partsOff(finding) })).sort((a, b) => b.by - a.by);
  return worst === undefined ? { demand, shortfall: 0, words: '' } : { demand, shortfall: worst.by, words: worst.finding.message };
}

/** How far a finding is beyond its limit, in parts of it; a whole one where it has no figures. */
export function partsOff({ worst, limit }: Finding): number {
  if (worst === undefined || limit === undefined) return 1;
  const by = Math.abs(worst.value - limit.value) / (Math.abs(limit.value) || 1);
  // What is found is never kept, however little it misses.
  return Number.isFinite(by) ? Math.max(by, LEAST) : 1;
}

const LEAST = 1e-9;

function whyUnchecked({ study, definition, columns }: Answered, demand: Demand, word: KeptWord): Judgement | undefined {
  const unchecked = (words: string): Judgement => ({ demand, shortfall: NaN, words: `not checked: ${words}` });
  if (study === undefined || definition === undefined) return undefined;
  switch (word) {
    case 'full_opening':
      return definition.plates.length === 0 ? unchecked('the file has no plates') : undefined;
    case 'clearance':
      return definition.keepOuts.length === 0 &&
        definition.levers.every(({ width, outline }) => width === undefined && outline === undefined)
        ? unchecked('the file gives no keep-outs, widths or outlines')
        : undefined;
    case 'closing_torque': {
      const closing = columns.filter(({ key }) => key === 'closing');
      if (closing.length === 0) return unchecked('the file has no springs');
      const unknown = closing.find((column) => Number.isNaN(column.read(study.travel.build, study.travel.poseAt(0))));
      return unknown === undefined ? undefined : unchecked(`${unknown.name} is not known`);
    }
  }
}

function ofRequirement(demand: Demand, { requirements }: Answered, name: string): Judgement {
  const answer = requirements.find(({ requirement }) => requirement.name === name);
  if (answer === undefined) return { demand, shortfall: NaN, words: 'not checked: the file has no such requirement' };
  if (answer.outcome === 'passed') return { demand, shortfall: 0, words: '' };
  const words = answer.reason ?? answer.requirement.name;
  if (answer.outcome === 'undecided') return { demand, shortfall: NaN, words: `not checked: ${words}` };
  return { demand, shortfall: Math.max(LEAST, ...answer.comparisons.map(missedBy)), words, answer };
}

function missedBy({ margin, demanded, holds }: Comparison): number {
  if (holds !== false) return 0;
  if (margin === undefined) return 1;
  return Math.abs(margin.value) / (Math.abs(demanded?.value ?? 0) || 1);
}
