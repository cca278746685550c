/**
 * What has changed between two throttle files, as plain data. `was` speaks of the first file, `is` of the second; what is
 * absent on one side does not stand there. Names and paths are those of the second file wherever the thing stands in it.
 * Mirrored: comparing the files the other way round gives the same with `was` and `is` exchanged.
 */
import type { Dimension } from '../../definition/dimensions.ts';
import type { ProblemCode } from '../../definition/codes.ts';
import type { Span } from '../../definition/span.ts';
import type { FindingCode } from '../../findings/codes.ts';
import type { Figure, FindingSeverity } from '../../findings/finding.ts';
import type { Comparison as RequirementComparison, RequirementOutcome } from '../../requirements/requirement.ts';

export interface Comparison {
  readonly was: SideState;
  readonly is: SideState;
  readonly file: FileChanges;
  /** Figures that differ noticeably, in load-path order within what they are about; empty where a side is not solved. */
  readonly outcomes: readonly OutcomeChange[];
  /** Columns that one side alone has, by name, where both are solved. */
  readonly columns: { readonly added: readonly string[]; readonly gone: readonly string[] };
  readonly findings: MarkChanges<FindingMark>;
  readonly problems: MarkChanges<ProblemMark>;
  readonly notChecked: { readonly added: readonly UncheckedMark[]; readonly gone: readonly UncheckedMark[] };
  readonly requirements: readonly RequirementChange[];
  /** Of the default columns those that differ noticeably; of columns asked for, all. Empty where neither side is solved. */
  readonly curves: readonly Curve[];
  readonly verdict: Verdict;
}

/** `unsolved`: the text is understood, but there is no table; `unusable`: nothing of the text is understood. */
export type SideState = 'solved' | 'unsolved' | 'unusable';

export interface Verdict {
  /**
   * Whether a new error, a requirement no longer passed, a linkage no longer solved, a fault or a shaft that can no longer be judged, or
   * a shaft that closes much less is among the changes.
   */
  readonly worse: boolean;
  /** Errors of text or linkage that are new, or were less than errors. */
  readonly newErrors: number;
  /** Requirements of both files that were passed and are not now. */
  readonly lostRequirements: number;
  /** Solved before, and not now. */
  readonly lostSolution: boolean;
  /** What was judged and cannot be any more, though the linkage is solved. */
  readonly unjudged: readonly Unjudged[];
  /** Shafts with plates whose least closing torque fell by more than half, or to nothing. */
  readonly closesLess: readonly ClosesLess[];
}

export interface Unjudged {
  readonly part: string;
  /** What it is, and why; a sentence without a full stop that follows `can no longer be judged: `. */
  readonly message: string;
}

export interface ClosesLess {
  readonly part: string;
  /** N·m. */
  readonly was: number;
  readonly is: number;
}

/** Of the text alone. All empty where a side is unusable: what cannot be read cannot be told from what is not there. */
export interface FileChanges {
  readonly values: readonly ValueChange[];
  /** References, choices, flags, formulas of `require` and the title. */
  readonly words: readonly WordChange[];
  readonly added: readonly PartName[];
  readonly gone: readonly PartName[];
  readonly renamed: readonly { readonly block: Block; readonly was: string; readonly is: string }[];
  /** Parts that stand in both files and are understood in one alone. */
  readonly unread: readonly (PartName & { readonly side: 'was' | 'is' })[];
  /** Figures of equal value in another unit. */
  readonly rewritten: readonly { readonly path: string; readonly was: ValueSide; readonly is: ValueSide }[];
}

export type Block =
  | 'file'
  | 'let'
  | 'points'
  | 'levers'
  | 'arms'
  | 'drums'
  | 'pedal'
  | 'cables'
  | 'rods'
  | 'slots'
  | 'couplings'
  | 'plates'
  | 'sensors'
  | 'springs'
  | 'keep_out'
  | 'movements'
  | 'limits'
  | 'require'
  | 'tune'
  | 'free'
  | 'measured'
  | 'runs';

export interface PartName {
  readonly block: Block;
  /** Of an arm or a drum `lever.name`; those of a lever that came or went with them are not named. */
  readonly name: string;
}

export interface ValueChange extends PartName {
  readonly path: string;
  readonly was?: ValueSide;
  readonly is?: ValueSide;
  /** Which of these changed; empty where one side is absent. */
  readonly changed: readonly ('value' | 'tolerance' | 'formula')[];
  /** Of a `let`: paths of the values that changed through it alone; rising. Empty otherwise. */
  readonly follows: readonly string[];
  /** The side on which it stands in the text and could not be read. */
  readonly unread?: 'was' | 'is';
}

export interface ValueSide {
  readonly path: string;
  readonly span: Span;
  /** As written. */
  readonly text: string;
  /** SI. */
  readonly nominal: number;
  readonly dimension: Dimension;
  /** As written; of a formula empty. */
  readonly unit: string;
  /** SI. */
  readonly tolerance?: { readonly plus: number; readonly minus: number };
  /** As written. */
  readonly formula?: string;
}

export interface WordChange extends PartName {
  readonly path: string;
  readonly was?: string;
  readonly is?: string;
  /** The side on which it stands in the text and could not be read. */
  readonly unread?: 'was' | 'is';
}

/**
 * What a figure is about, in the order of what matters: how far and how early the plates open, what closes them, the foot, the sensor,
 * columns of which a requirement of either file speaks, other angles, the rest.
 */
export const ABOUT = ['opening', 'closing', 'effort', 'signal', 'required', 'angle', 'rest'] as const;

/** One figure of the solved linkage that differs. */
export interface OutcomeChange {
  readonly about: (typeof ABOUT)[number];
  /** Where it was read: a fact, a part of the load path, or a column. */
  readonly from: 'fact' | 'part' | 'column';
  readonly part: string;
  /** Of a fact its key; of a column its key and which of its figures, e.g. `opening.least`; of a part the label. */
  readonly key: string;
  /** In words, without the part's name. */
  readonly label: string;
  /** A fraction that is shown in percent. */
  readonly percent: boolean;
  /** Absent where this side has no such figure. */
  readonly was?: OutcomeSide;
  readonly is?: OutcomeSide;
  /** `is` less `was`, SI, in the dimension of the figures; absent where a side has no figure. */
  readonly difference?: number;
}

export interface OutcomeSide {
  readonly figure?: Figure;
  /** A word instead of a figure, or why there is none. */
  readonly text?: string;
  /** Pedal travel where it holds, a fraction. */
  readonly travel?: number;
}

export interface MarkChanges<Mark> {
  readonly added: readonly Mark[];
  readonly gone: readonly Mark[];
  /** Of another severity, or with a worst value or a limit that differs noticeably. */
  readonly kept: readonly { readonly was: Mark; readonly is: Mark }[];
}

export interface FindingMark {
  readonly code: FindingCode;
  readonly severity: FindingSeverity;
  readonly part: string;
  /** Of what it is marked at. */
  readonly path: string;
  readonly span: Span;
  readonly message: string;
  readonly worst?: Figure & { readonly travel: number };
  readonly limit?: Figure;
  /**
   * Of one that a file alone has, how the other stands to it: whether it was looked for there, or could not be since what it needs is not
   * in that file (`no-part`: since its part is not, which by itself is no loss).
   */
  readonly elsewhere?: 'judged' | 'not-judged' | 'no-part';
}

export interface ProblemMark {
  readonly code: ProblemCode;
  readonly severity: 'error' | 'warning';
  readonly path: string;
  readonly span: Span;
  readonly message: string;
}

export interface UncheckedMark {
  readonly part: string;
  readonly span: Span;
  readonly message: string;
  /** Whether the other file has it really checked, or its part or what the check needs is not there. */
  readonly elsewhere?: 'checked' | 'checked-in-part' | 'not-looked-at';
}

/** A requirement that came, went, or stands otherwise: in outcome, reason, or noticeably in a figure. */
export interface RequirementChange {
  readonly name: string;
  readonly was?: RequirementSide;
  readonly is?: RequirementSide;
}

export interface RequirementSide {
  readonly outcome: RequirementOutcome;
  readonly span: Span;
  readonly reason?: string;
  readonly comparisons: readonly RequirementComparison[];
}

/** A column on common stations: 101 evenly spaced ones and the turning places of both linkages. */
export interface Curve {
  /** As in the second file; as in the first where the second has no such column. */
  readonly column: string;
  /** Of the values: `%`, `deg`, `mm` …; empty for a plain number. */
  readonly unit: string;
  /** Pedal travels, fractions, rising. */
  readonly stations: readonly number[];
  /** In `unit`; null where there is no value. */
  readonly was: readonly (number | null)[];
  readonly is: readonly (number | null)[];
  /** `is` less `was`. */
  readonly difference: readonly (number | null)[];
}
