/** Single failures in words, for every kind of output alike. */
import type { FailureKind, FailureRow, FreedLever, Outcome, PlatesLeft, StopMet } from '../failures/failure.ts';
import type { Standing, Statement } from '../failures/statements.ts';
import type { Failures } from '../findings/failures.ts';
import { countText, figureText } from './figure.ts';

/** E.g. `rod link`, `cable main seized`. */
export function failureName({ failure }: FailureRow): string {
  if (failure === undefined) return 'nothing';
  return `${KINDS[failure.kind]} ${failure.part}${failure.kind === 'cable-seized' ? ' seized' : ''}`;
}

const KINDS: Readonly<Record<FailureKind, string>> = {
  'spring-lost': 'spring',
  'rod-lost': 'rod',
  'cable-lost': 'cable',
  'slot-lost': 'slot pin',
  'coupling-lost': 'coupling',
  'cable-seized': 'cable',
};

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  closes: 'closes',
  'stays-open': 'stays open',
  'not-checked': 'not checked',
};

/** What is known of plates that are left, each a clause: the weakest place, why, the time, and how they meet their stop. */
export function platesWords({ levers, why, weakest, heldAt, time }: PlatesLeft): readonly string[] {
  const words: string[] = [];
  if (weakest !== undefined) {
    const { lever, torque, friction, margin, opening } = weakest;
    // What rounding leaves of a closed plate is no opening.
    const at = `at ${figureText({ value: Math.abs(opening) < CLOSED ? 0 : opening, dimension: 'angle' })} of opening`;
    const of = levers.includes(lever) ? '' : ` of ${lever}`;
    const brought = figureText({ value: torque, dimension: 'torque' });
    if (margin === undefined || friction === undefined) words.push(`closing torque ${brought}${of} ${at}`);
    else if (margin === Infinity) words.push(`closing torque ${brought}${of} ${at}, where nothing rubs`);
    else if (!Number.isFinite(friction)) words.push(`a joint jams${of} ${at}`);
    else
      words.push(
        `${figureText({ value: margin, dimension: 'number' })} × friction${of} ${at}: ${brought} against ${figureText({ value: friction, dimension: 'torque' })}`,
      );
  }
  if (heldAt !== undefined) words.push(`held at up to ${figureText({ value: heldAt, dimension: 'angle' })}`);
  if (why !== undefined) words.push(why);
  if (time?.seconds !== undefined)
    words.push(`closed in ${secondsText(time.seconds)}${time.leftOut === undefined ? '' : `, but for ${time.leftOut}`}`);
  if (time?.why !== undefined) words.push(`time not known: ${time.why}`);
  if (time?.stop !== undefined) words.push(stopWords(time.stop));
  return words;
}

/** E.g. `onto the stop at 1240 deg/s, 2 bounces`. */
export function stopWords({ speed, bounces }: StopMet): string {
  return `onto the stop at ${figureText({ value: speed, dimension: 'angular-speed' })}, ${countText(bounces, 'bounce')}`;
}

/** rad. */
const CLOSED = 1e-9;

/** E.g. `0.085 s`. */
export function secondsText(seconds: number): string {
  return `${Number(seconds.toPrecision(3)).toString()} s`;
}

/** Which way a lever goes that nothing drives any more. */
export function freedWords({ lever, falls, springs, stop }: FreedLever): string {
  const by = springs.length === 0 ? '' : ` by ${listed(springs)}`;
  const onto = stop === undefined ? ', and no stop catches it' : `, onto the stop of ${stop}`;
  switch (falls) {
    case 'closed':
      return `${lever} is let go and turns closed${by}${onto}`;
    case 'open':
      return `${lever} is let go and turns open${by}${onto}`;
    case 'either':
      return `${lever} is let go and turns closed or open${by}, as it stands`;
    case 'none':
      return `${lever} is let go, and no spring turns it`;
    case 'unknown':
      return `${lever} is let go; which way it turns is not known`;
  }
}

export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  meets: 'meets the figure of',
  'does-not-meet': 'does not meet the figure of',
  'not-checked': 'not checked:',
};

/** E.g. `meets the figure of 49 CFR 571.124 S5.3 (from memory): …`. */
export function statementWords({ figure: { source, status, readIn, asks }, standing, why }: Statement): string {
  const known = readIn === undefined ? status : `${status} in ${readIn}`;
  return `${STANDING_WORDS[standing]} ${source} (${known}): ${asks}${why === undefined ? '' : `; ${why}`}`;
}

/** E.g. `every plate closes with each of 5 parts lost in turn`, after what is wrong with every part. Cables that seize are told beside. */
export function failuresVerdict({ whole, rows, notChecked }: Failures): string {
  if (notChecked !== undefined) return `not checked: ${notChecked}`;
  const lost = rows.filter(({ failure }) => failure?.kind !== 'cable-seized');
  const count = (outcome: Outcome): number => lost.filter((row) => row.outcome === outcome).length;
  const [open, unknown] = [count('stays-open'), count('not-checked')];
  const seized =
    rows.length - lost.length === 0 ? '' : `; ${countText(rows.filter(isSeizedOpen).length, 'cable')} would hold plates open where seized`;
  if (lost.length === 0) return `${isButPedal(whole) ? BUT_PEDAL : WITH_EVERY_PART[whole.outcome]}, and there is no part to lose${seized}`;
  const butPedal = [whole, ...lost].some(isButPedal) && [whole, ...lost].every((row) => row.outcome === 'closes' || isButPedal(row));
  if (butPedal)
    return `every plate closes with each of ${countText(lost.length, 'part')} lost in turn, the pedal’s return not checked${seized}`;
  const first = whole.outcome === 'closes' ? '' : `${isButPedal(whole) ? BUT_PEDAL : WITH_EVERY_PART[whole.outcome]}; `;
  if (open + unknown === 0) return `${first}every plate closes with each of ${countText(lost.length, 'part')} lost in turn${seized}`;
  const stays = open === 0 ? 'no part' : countText(open, 'part');
  const left = unknown === 0 ? '' : `, ${countText(unknown, 'part')} not checked`;
  return `${first}of ${countText(lost.length, 'part')} lost in turn, ${stays} would leave plates open${left}${seized}`;
}

const WITH_EVERY_PART: Readonly<Record<Outcome, string>> = {
  closes: 'every plate closes with every part',
  'stays-open': 'plates stay open with every part',
  'not-checked': 'not checked whether plates close with every part',
};

/** Whether plates close as far as the file describes what closes them, and the pedal alone is left open. */
function isButPedal({ outcome, plates }: FailureRow): boolean {
  return outcome === 'not-checked' && plates.every((left) => left.outcome === 'closes' || left.butPedal === true);
}

const BUT_PEDAL = 'every plate closes with every part, the pedal’s return not checked';

function isSeizedOpen({ failure, outcome }: FailureRow): boolean {
  return failure?.kind === 'cable-seized' && outcome === 'stays-open';
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
