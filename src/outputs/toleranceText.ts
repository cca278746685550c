/**
 * What tolerances do, as text: first what not every build keeps; of each outcome its range and what it comes from; which dimension to hold
 * tighter; which rod, set after assembly, wins back how much; what was not checked; the caution, and in the last line how it stands.
 */
import type { Setting } from '../studies/tolerance/advice.ts';
import { stackOf } from '../studies/tolerance/stack.ts';
import type { Effect } from '../studies/tolerance/sensitivity.ts';
import type { OutcomeTolerance, ToleranceStudy } from '../studies/tolerance/tolerance.ts';
import type { Toleranced } from '../kinematics/toleranced.ts';
import { CAUTION } from './caution.ts';
import { figureAsWritten, figureWithin, percentText } from './figure.ts';
import { plain, printable, type Paint } from './paint.ts';
import { isOfFreeAlone, keptWords, requiredWords, ruleWords, verdictWords, yieldWords } from './toleranceVerdict.ts';
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
  const [aside, first] = [study.outcomes.filter(isToldAside), study.outcomes.filter((each) => !isToldAside(each))];
  const titled = (title: string, items: readonly string[]): readonly string[] =>
    items.length === 0 ? [] : [paint('strong', printable(title)), ...lines(items)];
  const sections = [
    [paint('strong', printable(file))],
    titled('Rules of the check', rulesWords(study)),
    titled('Requirements', byShare(study.required).map(requiredWords)),
    ...(isOfFreeAlone(study)
      ? study.outcomes.map((each) => titled(each.outcome.name, freeAloneWords(each)))
      : [...first.map((each) => titled(each.outcome.name, outcomeWords(each))), titled('Angles', aside.map(asideWords))]),
    titled('Rods set after assembly', chosen.map(settingWords)),
    titled('Not checked', notCheckedWords(study)),
    wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${verdictWords(study)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

const MOST_SETTINGS = 3;
const MOST_CAUSES = 5;
/** A fraction; a smaller share is not worth a line. */
const WORTHWHILE = 0.01;

/** SI; a figure that differs by less does not vary. */
const ROUNDING = 1e-9;

/** What not every build keeps, then how many builds keep the others. */
export function rulesWords({ rules }: ToleranceStudy): readonly string[] {
  const kept = keptWords(rules);
  return [...rules.filter(({ failed }) => failed > 0).map(ruleWords), ...(kept === undefined ? [] : [kept])];
}

/** Those that the fewest builds meet first. */
export function byShare<Each extends { readonly kept: { readonly share: number } }>(all: readonly Each[]): readonly Each[] {
  return [...all].sort((a, b) => a.kept.share - b.kept.share);
}

/** Of a file without tolerances: what an outcome is as drawn, and what a change of each free dimension does to it. */
export function freeAloneWords(each: OutcomeTolerance): readonly string[] {
  const figure = figureIn(each);
  const words = freeWords(each, figure);
  const still = isHeld(each) ? `${each.outcome.stop!.words} holds it there` : 'nothing that `tune` leaves free moves it';
  return [`${figure(each.middle)} as drawn`, ...(words.length === 0 ? [still] : words)];
}

/** What the study leaves out, without full stops. */
export function notCheckedWords(study: ToleranceStudy): readonly string[] {
  const { unchecked, still } = study;
  return [
    ...(isOfFreeAlone(study)
      ? [
          'how many builds keep limits, rules and requirements: the file gives no tolerance; write one behind a figure, such as `32 mm ± 0.1 mm`',
        ]
      : []),
    ...(still.length === 0 ? [] : [`what the tolerance of ${still.join(', ')} does: it stands as the file has it`]),
    ...unchecked.map(({ part, message }) => `${part}: ${message.replace(/^Not checked: /, '')} (nor by \`check\`)`),
    '`lost` of a rod and `lag` of a coupling as something that varies: they stand as the file has them',
    'how fast a build returns: `pedal-to-plate return` tells it for the file as drawn',
    'what a rod without `length` adds: it is taken to be made to fit each build as drawn; give it a `length` where it is cut beforehand',
  ];
}

/** Whether one line is enough for an outcome. */
export function isToldAside({ outcome, distribution: { kept, missing } }: OutcomeTolerance): boolean {
  return outcome.isAside === true && kept?.share === 1 && missing === 0;
}

function asideWords(each: OutcomeTolerance): string {
  const { outcome, middle, distribution } = each;
  const figure = figureIn(each);
  const { percentiles, kept } = distribution;
  const range = varies(each) ? `, 99.73 % of builds ${figure(percentiles[0]!)} to ${figure(percentiles.at(-1)!)}` : ', in every build';
  return `${outcome.name}: ${figure(middle)}${range}; ${outcome.limit ?? 'its limit'}: kept by ${kept === undefined ? 'none' : yieldWords(kept)}`;
}

/** Figures of one outcome, all with as many digits as its spread is worth. */
export function figureIn({
  outcome: { dimension },
  middle,
  stack,
  distribution: { percentiles },
}: OutcomeTolerance): (value: number) => string {
  const off = [stack.lowest, stack.highest, ...percentiles.map((value) => value - middle)].map(Math.abs).filter(Number.isFinite);
  return figureWithin(dimension, Math.max(0, ...off));
}

function outcomeWords(each: OutcomeTolerance): readonly string[] {
  const { outcome, middle, stack, corners, distribution, advice, effects } = each;
  const figure = figureIn(each);
  const { percentiles, missing, kept } = distribution;
  const [least, , median, , most] = percentiles;
  const judged = kept === undefined ? [] : [`${outcome.limit ?? 'its limit'}: kept by ${yieldWords(kept)}`];
  if (!varies(each) && missing === 0) return [`${figure(middle)}: ${stillWords(each)}`, ...judged, ...freeWords(each, figure)];
  const exactly =
    corners === undefined || corners.least > corners.most ? '' : `, ${figure(corners.least)} to ${figure(corners.most)} exactly`;
  const hasEffects = Number.isFinite(stack.rootSumSquare);
  const linear = `all against it ${figure(middle + stack.lowest)} to ${figure(middle + stack.highest)}, linear`;
  return [
    `${figure(middle)} with every dimension in its middle; ${hasEffects ? linear : 'beside it there are builds without a value'}${exactly}`,
    ...(hasEffects
      ? [
          stack.kinked
            ? 'a stop or a cable is just met: a root of the sum of squares would mean little here'
            : isStillAtMiddle(each)
              ? 'nothing moves it next to its middle: a root of the sum of squares would mean nothing here'
              : `± ${figure(stack.rootSumSquare)} by the root of the sum of squares`,
        ]
      : []),
    `random builds: ${figure(median!)} in the middle, 99.73 % of them from ${figure(least!)} to ${figure(most!)}`,
    ...playWords(each, figure),
    ...(missing > 0 ? [`${missing} builds have no value here, as where they cannot be assembled; they count as not kept`] : []),
    ...judged,
    ...advice
      .filter(({ share }) => share > WORTHWHILE)
      .slice(0, MOST_CAUSES)
      .map(
        ({ of, share, wonByHalf }) =>
          `${effectWords(
            effects.find((effect) => effect.of === of)!,
            figure,
          )}; ${percentText(share)} of the variance; half of it narrows the spread by ${percentText(wonByHalf)}`,
      ),
    ...freeWords(each, figure),
  ];
}

/** Whether what varies it lies all beyond a stop or a slack that is not met in the middle: effects know nothing of that. */
export function isStillAtMiddle(each: OutcomeTolerance): boolean {
  return varies(each) && each.stack.rootSumSquare === 0;
}

/** Whether its stop does, with every dimension in its middle. */
function isHeld({ outcome: { stop }, stoppedAt, middle }: OutcomeTolerance): boolean {
  return stop !== undefined && Math.abs(middle - stoppedAt) <= ROUNDING;
}

/** Why an outcome is the same in every build. */
export function stillWords(each: OutcomeTolerance): string {
  const stop = isHeld(each) ? each.outcome.stop : undefined;
  if (each.corners !== undefined) return stop === undefined ? 'no tolerance moves it' : `${stop.words} holds it there in every build`;
  const why = stop === undefined ? 'it is the same' : `${stop.words} holds it there`;
  return `${why} in every random build; too many dimensions vary for every corner to be tried`;
}

/** What half of a tolerance's width does, with its sign: e.g. `cables.main.slack + 0.4 mm: −1.62°`; both ways where they are not alike. */
export function effectWords({ of, swing, growing, shrinking, kinked }: Effect, figure: (value: number) => string): string {
  const signed = (value: number): string => `${value > 0 ? '+' : ''}${figure(value)}`;
  const by = figureAsWritten({ value: of.half, dimension: of.dimension }, of.unit);
  if (!Number.isFinite(swing)) return `${figureName(of)} ± ${by}: a build without a value is among them`;
  if (!kinked) return `${figureName(of)} + ${by}: ${signed(swing)}`;
  return `${figureName(of)} + ${by}: ${signed(growing * of.half)}, − ${by}: ${signed(-shrinking * of.half)}`;
}

/** What a unit of each dimension does that `tune` leaves free; of those that do anything. */
function freeWords({ free }: OutcomeTolerance, figure: (value: number) => string): readonly string[] {
  return free.filter(({ swing }) => swing !== 0).map((effect) => `free: ${effectWords(effect, figure)}`);
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

/** Whether an outcome does, by more than rounding. */
export function varies({ effects, corners, distribution: { percentiles } }: OutcomeTolerance): boolean {
  // At rest a stop may hold a lever in the middle, and a corner of the tolerances leave it open.
  const isCornered = corners !== undefined && !(corners.most - corners.least <= ROUNDING);
  return isCornered || effects.some(({ swing }) => swing !== 0) || !(percentiles.at(-1)! - percentiles[0]! <= ROUNDING);
}

export function isWorthwhile({ spreads }: Setting): boolean {
  return spreads.some(({ won, kinked }) => won > WORTHWHILE && !kinked);
}

export function settingWords({ rod, adjustable, by, takes, unit, beyondRange, spreads }: Setting): string {
  const told = spreads
    .filter(({ won, kinked }) => !kinked && Math.abs(won) > WORTHWHILE)
    .map(({ outcome, won }) => `${outcome.name} ${won > 0 ? `narrower by ${percentText(won)}` : `wider by ${percentText(-won)}`}`);
  const range = beyondRange === true ? ', which is more than it can be turned' : '';
  const way = adjustable ? `${rod} set` : `${rod} made adjustable and set`;
  return `${way} by the ${by.name}, ± ${figureAsWritten({ value: takes, dimension: 'length' }, unit)} of length${range}: ${told.join(', ')}`;
}
