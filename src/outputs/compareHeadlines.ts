/**
 * The figures of a comparison that a person must not have to look for: what closes each shaft with plates, what the foot feels, and how far
 * the plates open. One is told where it differs by more than 5 %: common practice, no source.
 */
import type { OutcomeChange, Verdict } from '../studies/compare/comparison.ts';
import { percentText } from './figure.ts';
import { pairText } from './figurePair.ts';
import { withMinus } from './minus.ts';

export interface Headline {
  readonly kind: 'closing' | 'effort' | 'opening';
  readonly part: string;
  readonly isFall: boolean;
  /** Whether by this the new file counts as worse. */
  readonly isWorse: boolean;
  /** E.g. `least closing torque 360 N·mm → 150 N·mm (−58.3 %), at 0 % → 20 %`. */
  readonly text: string;
}

/** Closing torque, effort, opening; within each what fell first. */
export function headlines(outcomes: readonly OutcomeChange[], { closesLess }: Pick<Verdict, 'closesLess'>): readonly Headline[] {
  const all = outcomes.flatMap((outcome): Headline[] => {
    const { part, was, is } = outcome;
    const kind = kindOf(outcome);
    if (kind === undefined || was?.figure === undefined || is?.figure === undefined) return [];
    const [before, after] = [was.figure.value, is.figure.value];
    if (!(Math.abs(after - before) > TOLD * Math.abs(before))) return [];
    const isWorse = outcome.key === 'closing-least' && closesLess.some((each) => each.part === part);
    const { was: old, is: now } = pairText(outcome);
    const share = before > 0 ? ` (${signedPercent((after - before) / before)})` : '';
    return [{ kind, part, isFall: after < before, isWorse, text: `${wordsOf(outcome)} ${old} → ${now}${share}${placeText(outcome)}` }];
  });
  const rank = ({ kind, isFall, isWorse }: Headline): number => KINDS.indexOf(kind) * 4 + (isWorse ? 0 : isFall ? 1 : 2);
  return all.sort((a, b) => rank(a) - rank(b));
}

const TOLD = 0.05;
const KINDS = ['closing', 'effort', 'opening'] as const;

function kindOf({ about, from, key }: OutcomeChange): Headline['kind'] | undefined {
  if (from === 'fact') {
    if (about === 'closing' && (key === 'closing-least' || key === 'closing-at-rest')) return 'closing';
    return about === 'effort' && (key === 'effort-greatest' || key === 'effort-at-rest') ? 'effort' : undefined;
  }
  return about === 'opening' && from === 'part' && (key === 'opens' || key === 'open area of one plate') ? 'opening' : undefined;
}

function wordsOf({ key, label }: OutcomeChange): string {
  return key === 'opens' ? 'full opening' : label;
}

function placeText({ was, is }: OutcomeChange): string {
  if (was?.travel === undefined || is?.travel === undefined) return '';
  const [before, after] = [percentText(was.travel), percentText(is.travel)];
  return before === after ? `, at ${after}` : `, at ${before} → ${after}`;
}

function signedPercent(share: number): string {
  const text = percentText(share);
  return withMinus(share > 0 ? `+${text}` : text);
}
