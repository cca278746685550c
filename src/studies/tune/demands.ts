/**
 * What an answer of the search must keep beside the curve, judged on a solved file.
 *
 * A demand is held against what is found in the file: it is kept where none of the findings that speak of it is there. How far it is from
 * being kept is the worst of them, in parts of its limit; of closing it is looked at by the figures too. What could not be checked is not kept.
 */
import { FIGURE_UNIT_SI } from '../../definition/dimensions.ts';
import type { LimitKey } from '../../definition/definition.ts';
import type { Kept, KeptWord } from '../../definition/tune.ts';
import type { Answered } from '../../findings/answered.ts';
import { withFollowing } from '../../findings/consequences.ts';
import type { FindingCode } from '../../findings/codes.ts';
import type { Finding } from '../../findings/finding.ts';
import { limitOf, tiltLimit, type Study } from '../../findings/study.ts';
import { isGiven } from '../../forces/friction/missing.ts';
import type { Comparison, RequirementAnswer } from '../../requirements/requirement.ts';
import { closesShort, marginShort, type ClosingShort } from './closingShort.ts';
import { whyUnchecked } from './unchecked.ts';

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
  /** Where it is kept: what was left out of it for want of figures. */
  readonly without?: string;
}

/** What the file names, else of every limit, full opening, clearance and closing what it gives anything to check by, and all of `require`. */
export function demandsOf(study: Study): readonly Demand[] {
  const { definition } = study;
  const { keep, span = { start: 0, end: 0 } } = definition.tune ?? {};
  if (keep !== undefined) return keep.map((kept) => ({ kept, name: kept.kind === 'requirement' ? kept.name : nameOf(kept) }));
  const limits = (Object.keys(OF_LIMIT) as LimitKey[]).map((key): Exclude<Kept, { kind: 'requirement' }> => ({ kind: 'limit', key, span }));
  const words = (Object.keys(OF_WORD) as KeptWord[])
    .filter((word) => word !== 'clearance' || definition.keepOuts.length > 0)
    .map((word): Exclude<Kept, { kind: 'requirement' }> => ({ kind: 'word', word, span }));
  return [
    ...[...limits, ...words]
      .filter((kept) => whyUnchecked(study, kept) === undefined)
      .map((kept): Demand => ({ kept, name: nameOf(kept) })),
    ...definition.requirements.map(({ name }): Demand => ({ kept: { kind: 'requirement', name, span }, name })),
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
  const { study } = answered;
  const found = withFollowing(answered.findings);
  return demands.map((demand): Judgement => {
    const { kept } = demand;
    if (study === undefined) return { demand, shortfall: NaN, words: 'the linkage cannot be solved' };
    const why = whyUnchecked(study, kept);
    if (why !== undefined) return { demand, shortfall: NaN, words: `not checked: ${why}` };
    switch (kept.kind) {
      case 'limit':
        return kept.key === 'closing_margin'
          ? shorter(ofFindings(demand, found, OF_LIMIT.closing_margin), marginShort(study))
          : ofFindings(
              demand,
              found.map((finding) => asDemanded(study, kept.key, finding)),
              OF_LIMIT[kept.key],
            );
      case 'word':
        return kept.word === 'closing_torque' ? ofClosing(demand, study, found) : ofFindings(demand, found, OF_WORD[kept.word]);
      case 'requirement':
        return ofRequirement(demand, answered, kept.name);
    }
  });
}

/**
 * Held against what is demanded of an angle, which is the limit of the warning: an error tells of the one of the error, beside which what is
 * worse would seem less short than a warning. Of shafts out of step the finding says itself which holds where.
 */
function asDemanded(study: Study, key: LimitKey, finding: Finding): Finding {
  if (key === 'step' || finding.limit === undefined) return finding;
  const joint = study.travel.mechanism.joints.find(({ name }) => name === finding.part);
  const ends = joint?.kind === 'rod' ? joint.source.ends : undefined;
  const { warning } = key === 'misalignment' && ends !== undefined ? tiltLimit(study, ends) : limitOf(study, key);
  return { ...finding, limit: { ...finding.limit, value: warning } };
}

/** With each spring off: by the torques, and against friction where the file gives any. */
function ofClosing(demand: Demand, study: Study, found: readonly Finding[]): Judgement {
  const judged = shorter(ofFindings(demand, found, OF_WORD.closing_torque), closesShort(study));
  return isGiven(study.travel.mechanism.friction) ? judged : { ...judged, without: 'without friction, of which the file gives none' };
}

function shorter(judged: Judgement, short: ClosingShort | undefined): Judgement {
  return short === undefined || short.by <= judged.shortfall ? judged : { ...judged, shortfall: short.by, words: short.words };
}

function ofFindings(demand: Demand, findings: readonly Finding[], codes: readonly FindingCode[]): Judgement {
  const own = findings.filter(({ code }) => codes.includes(code));
  const [worst] = own.map((finding) => ({ finding, by: partsOff(finding) })).sort((a, b) => b.by - a.by);
  return worst === undefined ? { demand, shortfall: 0, words: '' } : { demand, shortfall: worst.by, words: worst.finding.message };
}

/**
 * How far a finding is beyond its limit, in parts of it; a whole one where it has no figures. Where the limit is nothing at all, as of a gap
 * or a closing torque, it is a whole one too, and what is beyond in millimetres, N·mm or degrees comes on top.
 */
export function partsOff({ worst, limit }: Finding): number {
  if (worst === undefined || limit === undefined) return 1;
  const off = Math.abs(worst.value - limit.value);
  const by = limit.value === 0 ? 1 + off / FIGURE_UNIT_SI[worst.dimension] : off / Math.abs(limit.value);
  // What is found is never kept, however little it misses.
  return Number.isFinite(by) ? Math.max(by, LEAST) : 1;
}

const LEAST = 1e-9;

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
