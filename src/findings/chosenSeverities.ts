/** Findings as severe as a person wants them to be, where that is not their own severity. */
import { FINDING_CODES, type FindingCode } from './codes.ts';
import type { Finding, FindingSeverity } from './finding.ts';

/** `off` is no finding at all. */
export type ChosenSeverity = FindingSeverity | 'off';

/** By code; a code that is not there keeps its own severity. */
export type ChosenSeverities = ReadonlyMap<string, ChosenSeverity>;

/** The worst first. */
export const CHOSEN_SEVERITIES: readonly ChosenSeverity[] = ['error', 'warning', 'note', 'off'];

/**
 * The findings in their order with the severities chosen for their codes, and without those that are switched off. What only follows from
 * one that is switched off stands in its place, and what is worse than one that was made milder behind it: it was told with it, and is not
 * meant by that.
 */
export function withSeverities(findings: readonly Finding[], chosen: ChosenSeverities): readonly Finding[] {
  if (chosen.size === 0) return findings;
  return findings.flatMap((finding): readonly Finding[] => {
    const severity = chosen.get(finding.code) ?? finding.severity;
    const following = withSeverities(finding.following ?? [], chosen);
    if (severity === 'off') return following;
    const worse = following.filter((each) => CHOSEN_SEVERITIES.indexOf(each.severity) < CHOSEN_SEVERITIES.indexOf(severity));
    return [severity === finding.severity ? finding : { ...finding, severity }, ...worse];
  });
}

export function isFindingCode(word: string): word is FindingCode {
  return (FINDING_CODES as readonly string[]).includes(word);
}

export function isChosenSeverity(word: unknown): word is ChosenSeverity {
  return CHOSEN_SEVERITIES.some((each) => each === word);
}
