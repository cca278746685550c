/** What to turn on the built car, in words that text and the view share. Sentences without a full stop. */
import { FIGURE_UNIT_SI } from '../definition/dimensions.ts';
import type { Plan, Turn, Turning } from '../studies/fit/turn.ts';
import type { OffCurve } from '../studies/fit/turnTrial.ts';
import type { Unmet } from '../studies/fit/turnWeighed.ts';
import { decimal, figureText, listWords, percentText, travelText } from './figure.ts';
import { shortWords } from './tunedText.ts';

export interface TurningLine {
  readonly words: string;
  readonly sign: 'passed' | 'failed' | 'undecided' | 'note' | undefined;
}

/** Of the wanted curve, how far off as found and as turned; what to turn; what else the file demands; and what was not to be had. */
export function turningLines(turning: Turning): readonly TurningLine[] {
  if (turning.kind === 'not-checked') return [{ words: `not checked: ${turning.why}`, sign: 'undecided' }];
  const { wanted, turns, before, isOn, known, after, demands, unmet, nearer } = turning;
  const curve = wanted === 'tune' ? 'the curve of `tune`' : 'the drawing';
  const plainly = (words: string): TurningLine => ({ words, sign: undefined });
  return [
    ...before.flatMap(({ column, error, at }, i) => {
      const rest = turns.length === 0 ? '' : `, ${leftText(after[i]!, error)} once turned`;
      const { error: spread, isClose } = known[i]!;
      const told = `the readings tell ${column} only to ± ${offText(spread, column)}, one standard error at the worst place`;
      const off = plainly(`${column}: up to ${offText(error, column)} off ${curve}, ${travelText(at)}${rest}`);
      return isClose ? [off] : [off, { words: told, sign: 'note' as const }];
    }),
    ...turns.map((turn) => plainly(turnWords(turn))),
    ...(turns.length > 0 ? [] : [plainly(nothingWords(nearer, isOn))]),
    ...(demands === undefined || (turns.length === 0 && unmet.length === 0) ? [] : demandLines(demands, unmet, turns.length > 0)),
    ...(nearer === undefined ? [] : [{ words: nearerWords(nearer, turning.before), sign: 'note' as const }]),
  ];
}

function nothingWords(nearer: Plan | undefined, isOn: boolean): string {
  if (isOn) return 'that is as good as on it: nothing needs turning for the curve';
  return nearer === undefined
    ? 'nothing that can be turned brings it nearer to any purpose'
    : 'nothing that can be turned brings it nearer without giving up what else the file demands';
}

/** The same without signs. */
export function turningWords(turning: Turning): readonly string[] {
  return turningLines(turning).map(({ words }) => words);
}

/** What holds once turned, in one line; what does not, each in one; and what does not hold in the drawing either. */
function demandLines(demands: readonly string[], unmet: readonly Unmet[], isTurned: boolean): readonly TurningLine[] {
  const kept = isTurned ? demands.filter((name) => !unmet.some((each) => each.name === name)) : [];
  const never = isTurned ? unmet.filter(({ isDrawn }) => !isDrawn) : [];
  const standing = (wasMet: boolean): string =>
    !isTurned ? 'does not hold as found' : wasMet ? 'does not hold once turned' : 'holds neither as found nor once turned';
  return [
    ...(kept.length === 0 ? [] : [{ words: `once turned it keeps ${kept.join(', ')}`, sign: 'passed' as const }]),
    ...unmet
      .filter(({ isDrawn }) => isDrawn)
      .map((each): TurningLine => ({
        words: `${each.name} ${standing(each.wasMet)}: ${shortWords(each)}`,
        sign: each.words.startsWith('not checked') ? 'undecided' : 'failed',
      })),
    ...(never.length === 0
      ? []
      : [{ words: `not kept, in the drawing as on the car: ${never.map(({ name }) => name).join(', ')}`, sign: 'note' as const }]),
  ];
}

/** Another plan in one line: what it turns, how near it comes, and what it gives up. */
function nearerWords({ turns, after, unmet }: Plan, before: readonly OffCurve[]): string {
  const turned = turns.map((turn) => `${partWords(turn)} ${sizeWords(turn)}`).join(', ');
  const near = after.map((each, i) => `${each.column} up to ${leftText(each, before[i]!.error)} off`).join(', ');
  const told = (of: readonly Unmet[]): string => listWords(of.map((each) => `${each.name} (${shortWords(each)})`));
  // Of what holds neither on the car nor in the drawing there is nothing to give up.
  const lost = unmet.filter(({ isLess, wasMet, isDrawn }) => isLess && (wasMet || isDrawn));
  const shorter = unmet.filter(({ isLess, wasMet, isDrawn }) => isLess && !wasMet && !isDrawn);
  const open = unmet.filter(({ isLess, isDrawn }) => !isLess && isDrawn);
  const costs = [
    ...(lost.length > 0 ? [`it gives up ${told(lost)}`] : []),
    ...(shorter.length > 0 ? [`it falls further short than the car does of ${told(shorter)}`] : []),
    ...(lost.length + shorter.length === 0 ? [`it does not restore ${told(open)}`] : []),
  ];
  return `nearer to the curve, but not to be turned so: ${turned}; ${near}, and ${costs.join('; ')}`;
}

function leftText({ column, error }: OffCurve, before: number): string {
  return offText(error > before * HARDLY ? error : 0, column);
}

/** Of what it was: what is left is rounding. */
const HARDLY = 1e-4;

function offText(error: number, column: string): string {
  const isAngle = column.endsWith('.opening');
  const isForce = column.startsWith('pedal.');
  if (column.endsWith('.fraction')) return percentText(error, 2);
  return figureText({ value: error, dimension: isAngle ? 'angle' : isForce ? 'force' : 'area' }, 1);
}

export function turnWords(turn: Turn): string {
  const { kind, change, turns, atEnd } = turn;
  const end = atEnd ? ', as far as it goes' : '';
  switch (kind) {
    case 'rod':
      return turns === undefined
        ? `${partWords(turn)}: ${sizeWords(turn)}${end}; the file gives no pitch, so not in turns`
        : `${partWords(turn)}: ${sizeWords(turn)} (${lengthText(turn)})${end}`;
    case 'cable': {
      const least = atEnd && change < 0 ? ', down to the slack that the file has and no further' : end;
      return `${partWords(turn)}: ${sizeWords(turn)}${least}; the file does not speak of its adjuster: in mm, its thread is not known`;
    }
    case 'closed-stop':
    case 'open-stop':
      return `${partWords(turn)}: ${sizeWords(turn)}${end}; in degrees, its thread is not known`;
  }
}

function partWords({ kind, part }: Turn): string {
  return kind === 'closed-stop' ? `closed stop of ${part}` : kind === 'open-stop' ? `open stop of ${part}` : part;
}

/** By how much, and which way, e.g. `1.6 turns shorter`. */
function sizeWords(turn: Turn): string {
  const { kind, change, turns } = turn;
  const close = errorText(turn);
  switch (kind) {
    case 'rod':
      return `${turns === undefined ? `${lengthText(turn)}${close}` : `${decimal(Math.abs(turns), 2)}${close} turns`} ${change > 0 ? 'longer' : 'shorter'}`;
    case 'cable':
      return `${lengthText(turn)}${close} ${change > 0 ? 'more' : 'less'} slack`;
    case 'closed-stop':
    case 'open-stop':
      return `${figureText({ value: Math.abs(change), dimension: 'angle' }, 1)}${close} further ${change > 0 ? 'open' : 'closed'}`;
  }
}

/** One standard error; a hundredth of a turn, of a millimetre or of a degree at least. */
function errorText({ kind, error, pitch }: Turn): string {
  if (error === undefined) return '';
  if (kind === 'rod' && pitch !== undefined) return ` ± ${decimal(Math.max(error / pitch, HUNDREDTH), 2)}`;
  const dimension = kind === 'rod' || kind === 'cable' ? 'length' : 'angle';
  return ` ± ${figureText({ value: Math.max(error, HUNDREDTH * FIGURE_UNIT_SI[dimension]), dimension }, 1)}`;
}

const HUNDREDTH = 0.01;

function lengthText({ change }: Turn): string {
  return figureText({ value: Math.abs(change), dimension: 'length' }, 1);
}
