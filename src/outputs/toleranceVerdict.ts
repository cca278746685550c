/** How many builds keep what is judged, in words: each rule and requirement, what most builds do not keep, and the verdict in one line. */
import type { Yield } from '../studies/tolerance/distribution.ts';
import type { RequiredYield } from '../studies/tolerance/required.ts';
import type { RuleYield } from '../studies/tolerance/rules.ts';
import type { ToleranceStudy } from '../studies/tolerance/tolerance.ts';
import { countText, percentText } from './figure.ts';

/** With its uncertainty. */
export function yieldWords({ share, low, high }: Yield): string {
  // One build of a million is no whole.
  return `${percentText(share, share < 1 && share > 0.9999 ? 4 : 2)} of the builds (${percentText(low, 2)} to ${percentText(high, 2)}, as sure as 95 %)`;
}

/** How many builds meet a line of `require`. */
export function requiredWords({ name, kept, builds, undecided }: RequiredYield): string {
  const open = undecided === 0 ? '' : `; ${undecided} cannot be decided, and count as not met`;
  return `${name}: met by ${yieldWords(kept)}, of ${builds}${open}`;
}

/** Of a rule that some build does not keep. */
export function ruleWords({ code, builds, kept, errors, failed, parts, worst, isAsDrawn }: RuleYield): string {
  const at = parts.map(({ name, builds: count }) => (parts.length === 1 && count === failed ? name : `${name} in ${count}`));
  const severe = errors === 0 ? '' : errors === failed ? ', as an error' : `, ${errors} of ${failed} as an error`;
  const drawn = isAsDrawn ? '; the file as drawn does not keep it either' : '';
  const told = worst === undefined ? '' : `; the worst: ${worst.message}`;
  return `${code} at ${at.join(', ')}${severe}: kept by ${yieldWords(kept)}, of ${builds}${drawn}${told}`;
}

/** Of the rules that every build keeps; undefined where there are none. */
export function keptWords(rules: readonly RuleYield[]): string | undefined {
  const kept = rules.filter(({ failed }) => failed === 0);
  const counts = [...new Set(kept.map(({ builds }) => builds))].sort((a, b) => b - a);
  if (kept.length === 0) return undefined;
  const each = counts.map((builds) => {
    const of = kept.filter((rule) => rule.builds === builds);
    const which = of.length === 1 ? `of ${of[0]!.code}` : `of ${of.length} rules`;
    const { low } = of[0]!.kept;
    return `${which} in ${builds} builds (each kept by ${percentText(low, 2)} or more, as sure as 95 %)`;
  });
  return `no error and no warning ${each.join(', ')}`;
}

/** What not all builds keep, each with the share of them that does not, most first. */
export function lostShares({ rules, required, outcomes }: ToleranceStudy): readonly { readonly name: string; readonly share: number }[] {
  const lost = [
    ...rules.map(({ code, kept, isAsDrawn }) => ({ name: isAsDrawn ? `${code}, as drawn, too` : code, share: 1 - kept.share })),
    ...required.map(({ name, kept }) => ({ name, share: 1 - kept.share })),
  ].filter(({ share }) => share > 0);
  // Rules say the same of fewer builds, and more of each.
  const rare = outcomes.flatMap(({ outcome, distribution: { kept } }) =>
    kept === undefined || kept.share === 1 ? [] : [{ name: outcome.name, share: 1 - kept.share }],
  );
  return (lost.length > 0 ? lost : rare).sort((a, b) => b.share - a.share);
}

const MOST_LOST = 4;

/** Nothing has a tolerance: there are no builds, only what each free dimension does. */
export function isOfFreeAlone({ toleranced }: ToleranceStudy): boolean {
  return toleranced.length === 0;
}

export function verdictWords(study: ToleranceStudy): string {
  if (isOfFreeAlone(study)) {
    const free = study.outcomes[0]?.free.length ?? 0;
    return `no tolerance is given, so that nothing is known of how many builds keep what is checked; told is what ${countText(free, 'free dimension')} of \`tune\` ${free === 1 ? 'does' : 'do'}`;
  }
  const { kept, options, toleranced, together } = study;
  const law =
    options.law === 'normal'
      ? 'a tolerance is three standard deviations'
      : 'evenly over each tolerance (three standard deviations are then √3 times the root of the sum of squares)';
  const plays = toleranced.filter(({ play }) => play !== undefined).length;
  const played = plays === 0 ? '' : ` and the play of ${countText(plays, 'pin')}`;
  const of = `${options.builds} builds from ${countText(toleranced.length - plays, 'toleranced dimension')}${played}, ${law}`;
  const limits = kept === undefined ? '' : `; the limits of the figures above are kept by ${yieldWords(kept)}`;
  const sound = Math.round(together.kept.share * together.builds);
  const all = `; everything checked, rules and requirements too, is kept by ${sound} of the ${together.builds} builds that were gone through whole (${percentText(together.kept.low, 1)} to ${percentText(together.kept.high, 1)} of all, as sure as 95 %)`;
  const lost = lostShares(study);
  const more = lost.length > MOST_LOST ? ` and ${lost.length - MOST_LOST} more` : '';
  const most = lost.slice(0, MOST_LOST).map(({ name, share }) => `${name} (${percentText(share)})`);
  return `${of}${limits}${all}${most.length === 0 ? '' : `; not kept, by so many: ${most.join(', ')}${more}`}`;
}

/** Whether every build keeps everything that was looked at. */
export function isKeptByAll({ kept, together, rules, required }: ToleranceStudy): boolean {
  return [kept, together.kept, ...[...rules, ...required].map((each) => each.kept)].every((each) => each === undefined || each.share === 1);
}
