/**
 * What tolerances do, as text: of each outcome its range and what it comes from; which dimension to hold tighter; which rod, set after
 * assembly, wins back how much; what was not checked; the caution, and in the last line how it stands.
 */
import type { Setting } from '../studies/tolerance/advice.ts';
import type { Yield } from '../studies/tolerance/distribution.ts';
import type { RequiredYield } from '../studies/tolerance/required.ts';
import { stackOf } from '../studies/tolerance/stack.ts';
import type { OutcomeTolerance, ToleranceStudy } from '../studies/tolerance/tolerance.ts';
import type { Toleranced } from '../kinematics/toleranced.ts';
import { CAUTION } from './caution.ts';
import { countText, figureText, percentText } from './figure.ts';
import { plain, printable, type Paint } from './paint.ts';
import { wrap } from './width.ts';

export interface ToleranceTextOptions {
  /** As the person gave it. */
  readonly file: string;
  readonly paint?: Paint;
  /** Columns of the terminal. */
  readonly width?: number;
}

/** With a line ending. */
export function toleranceText(study: ToleranceStudy, { file, paint = plain, width = 110 }: ToleranceTextOptions): string {
  const lines = (items: readonly string[]): string[] =>
    items.flatMap((item) => wrap(printable(item), width - 4).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`)));
  const chosen = study.settings.filter(isWorthwhile).slice(0, MOST_SETTINGS);
  const sections = [
    [paint('strong', printable(file))],
    ...study.outcomes.map((each) => [paint('strong', printable(each.outcome.name)), ...lines(outcomeWords(each))]),
    study.required.length === 0 ? [] : [paint('strong', 'Requirements'), ...lines(study.required.map(requiredWords))],
    chosen.length === 0 ? [] : [paint('strong', 'Rods set after assembly'), ...lines(chosen.map(settingWords))],
    [paint('strong', 'Not checked'), ...lines(NOT_CHECKED)],
    wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${verdictWords(study)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

const MOST_SETTINGS = 3;
const MOST_CAUSES = 3;
/** A fraction; a smaller share is not worth a line. */
const WORTHWHILE = 0.01;

/** SI; a figure that differs by less does not vary. */
const ROUNDING = 1e-9;

/** What the study leaves out, without full stops. */
export const NOT_CHECKED: readonly string[] = [
  '`lost` of a rod and `lag` of a coupling as something that varies: they stand as the file has them',
  'limits other than those of transmission, step at rest and full opening; nor whether a lever is held open at rest',
  'what a rod without `length` adds: it is taken to be made to fit each build as drawn; give it a `length` where it is cut beforehand',
];

function outcomeWords(each: OutcomeTolerance): readonly string[] {
  const { outcome, middle, stack, corners, distribution, advice } = each;
  const figure = (value: number): string => figureText({ value, dimension: outcome.dimension }, 1);
  const { percentiles, missing, kept } = distribution;
  const [least, , median, , most] = percentiles;
  const judged = kept === undefined ? [] : [`${outcome.limit ?? 'its limit'}: kept by ${yieldWords(kept)}`];
  if (!varies(each) && missing === 0) return [`${figure(middle)}, whatever the tolerances`, ...judged];
  return [
    `${figure(middle)} with every dimension in its middle; all against it ${figure(middle + stack.lowest)} to ${figure(middle + stack.highest)}, linear` +
      (corners === undefined ? '' : `, ${figure(corners.least)} to ${figure(corners.most)} exactly`),
    stack.kinked
      ? 'a stop or a cable is just met: a root of the sum of squares would mean little here'
      : `± ${figure(stack.rootSumSquare)} by the root of the sum of squares`,
    `random builds: ${figure(median!)} in the middle, 99.73 % of them from ${figure(least!)} to ${figure(most!)}`,
    ...playWords(each, figure),
    ...(missing > 0 ? [`${missing} builds have no value here`] : []),
    ...judged,
    ...advice
      .filter(({ share }) => share > WORTHWHILE)
      .slice(0, MOST_CAUSES)
      .map(
        ({ of, share, wonByHalf }) =>
          `${figureName(of)}: ${percentText(share)} of the variance; half of it narrows the spread by ${percentText(wonByHalf)}`,
      ),
  ];
}

/** A figure that varies, in words: its path, or whose play it is. */
export function figureName({ path, play }: Toleranced): string {
  return play === undefined ? path : `play at ${play.pin} of ${play.joint.name}`;
}

/** What the play of pins does by itself; empty where it does nothing. */
function playWords({ effects }: OutcomeTolerance, figure: (value: number) => string): readonly string[] {
  const plays = effects.filter(({ of }) => of.play !== undefined);
  if (plays.every(({ swing }) => swing === 0)) return [];
  const { lowest, highest, rootSumSquare } = stackOf(plays);
  return [
    `of this, play of pins by itself: ${figure(lowest)} to ${figure(highest)} with all against it, ± ${figure(rootSumSquare)} by the root of the sum of squares`,
  ];
}

/** How many builds meet a line of `require`. */
export function requiredWords({ name, kept, builds, undecided }: RequiredYield): string {
  const open = undecided === 0 ? '' : `; ${undecided} cannot be decided, and count as not met`;
  return `${name}: met by ${yieldWords(kept)}, of ${builds}${open}`;
}

/** Whether an outcome does, by more than rounding. */
export function varies({ effects, distribution: { percentiles } }: OutcomeTolerance): boolean {
  return effects.some(({ swing }) => swing !== 0) || !(percentiles.at(-1)! - percentiles[0]! <= ROUNDING);
}

/** With its uncertainty. */
export function yieldWords({ share, low, high }: Yield): string {
  return `${percentText(share, 2)} of the builds (${percentText(low, 2)} to ${percentText(high, 2)}, as sure as 95 %)`;
}

export function isWorthwhile({ spreads }: Setting): boolean {
  return spreads.some(({ won, kinked }) => won > WORTHWHILE && !kinked);
}

export function settingWords({ rod, adjustable, by, takes, beyondRange, spreads }: Setting): string {
  const told = spreads
    .filter(({ won, kinked }) => !kinked && Math.abs(won) > WORTHWHILE)
    .map(({ outcome, won }) => `${outcome.name} ${won > 0 ? `narrower by ${percentText(won)}` : `wider by ${percentText(-won)}`}`);
  const range = beyondRange === true ? ', which is more than it can be turned' : '';
  const way = adjustable ? `${rod} set` : `${rod} made adjustable and set`;
  return `${way} by the ${by.name}, ± ${figureText({ value: takes, dimension: 'length' }, 1)} of length${range}: ${told.join(', ')}`;
}

export function verdictWords({ kept, options, toleranced, required }: ToleranceStudy): string {
  const law =
    options.law === 'normal'
      ? 'a tolerance is three standard deviations'
      : 'evenly over each tolerance (three standard deviations are then √3 times the root of the sum of squares)';
  const plays = toleranced.filter(({ play }) => play !== undefined).length;
  const played = plays === 0 ? '' : ` and the play of ${countText(plays, 'pin')}`;
  const of = `${options.builds} builds from ${countText(toleranced.length - plays, 'toleranced dimension')}${played}, ${law}`;
  const lost = required.filter((each) => each.kept.share !== 1).length;
  const demanded = lost === 0 ? '' : `; of ${countText(required.length, 'requirement')} ${lost} not met by every build`;
  if (kept !== undefined)
    return `${of}; ${demanded === '' ? 'everything checked' : 'every limit'} is kept by ${yieldWords(kept)}${demanded}`;
  if (required.length === 0) return `${of}; nothing judges them: not checked`;
  return `${of}; no limit judges them${demanded === '' ? '; every requirement is met by every build gone through' : demanded}`;
}
