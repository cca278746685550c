/**
 * What one file of a comparison really has looked at: a finding, or a line about what was not checked, that stands in the other file alone
 * may be missing here because it is mended, or only because nothing is left that it could be told of. The second is no good news.
 */
import type { Finding, NotChecked } from '../../findings/finding.ts';
import { springsReaching } from '../../forces/springsReaching.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import type { FindingMark, PartName, UncheckedMark, Unjudged } from './comparison.ts';
import type { Renames } from './names.ts';
import { partsOf, type ComparedPart } from './partsOf.ts';
import { standsIn } from './paths.ts';
import type { Answered } from '../../findings/answered.ts';

/** One side, asked in the names of the second file. */
export interface Judge {
  /** How it stands to a finding of the other side. @param path of what the finding is marked at */
  finding(code: Finding['code'], part: string, path: string): NonNullable<FindingMark['elsewhere']>;
  unchecked(mark: Pick<NotChecked, 'part' | 'message'>): NonNullable<UncheckedMark['elsewhere']>;
  /** Of a shaft; undefined where the pedal moves no such shaft with plates. */
  closing(lever: string): Closing | undefined;
  /** Every shaft with plates that the pedal moves. */
  readonly shafts: readonly string[];
}

/** `known`: the springs that reach it bring a known torque; `none`: no spring of the file reaches it; `no-springs`: the file has none. */
export type Closing = 'known' | 'unknown' | 'none' | 'no-springs';

/**
 * @param renames undefined for the second file, whose names are the ones to ask in
 * @param others parts that stand in this file alone
 */
export function judgeOf(side: Answered, renames: Renames | undefined, others: readonly PartName[]): Judge {
  const about = (name: string): string => renames?.about(name) ?? name;
  const parts = new Map<string, ComparedPart[]>();
  for (const part of side.definition === undefined ? [] : partsOf(side.definition)) {
    for (const each of [part, ...part.inner]) {
      const name = about(each.name);
      parts.set(name, [...(parts.get(name) ?? []), each]);
    }
  }
  const known = new Set(side.facts.filter(({ figure }) => figure !== undefined).map(({ part, key }) => `${about(part)} ${key}`));
  const springs = new Set(
    side.parts
      .filter(({ kind, figures }) => kind === 'spring' && figures.some(({ figure }) => figure !== undefined))
      .map(({ name }) => about(name)),
  );
  const mechanism = side.study?.travel.mechanism;
  const levers = (mechanism?.levers ?? []).filter(({ plates, group }) => plates.length > 0 && group >= 0);
  const closingAt = (lever: LeverModel): Closing => {
    if (mechanism === undefined || (mechanism.attached.springs.length === 0 && !hasUnread(side, 'springs'))) return 'no-springs';
    if (known.has(`${about(lever.name)} closing-at-rest`)) return 'known';
    return springsReaching(mechanism, lever.index).length === 0 && !hasUnread(side, 'springs') ? 'none' : 'unknown';
  };
  const shafts = new Map(levers.map((lever) => [about(lever.name), closingAt(lever)]));
  const plates = new Map((side.definition?.plates ?? []).map(({ name, lever }) => [about(name), about(lever.name)]));
  const stands = standsIn(side.text);
  const isSettled = (state: Closing | undefined): boolean => state === 'known' || state === 'none';
  return {
    shafts: [...shafts.keys()],
    closing: (lever) => shafts.get(lever),
    finding(code, part, path) {
      if (side.study === undefined) return 'not-judged';
      const [block = '', marked = ''] = path.split('.');
      const there = parts.has(part) && (block !== 'plates' || parts.has(marked));
      const states = [...shafts.values()];
      if (code === 'single-return-spring') {
        // Springs are counted whatever their torque.
        const isCounted = states.length > 0 && !states.includes('no-springs') && !hasUnread(side, 'springs');
        return isCounted ? 'judged' : 'not-judged';
      }
      if (code.startsWith('spring-')) {
        if (states.length > 0 && states.every(isSettled)) return there ? 'judged' : 'no-part';
        return springs.has(part) ? 'judged' : 'not-judged';
      }
      if (code.startsWith('sensor-') || code.startsWith('signal-')) {
        if (known.has(`${part} signal-at-rest`)) return 'judged';
        return others.some(({ block: other }) => other === 'sensors') ? 'no-part' : 'not-judged';
      }
      if (OF_CLOSING.has(code)) return isSettled(shafts.get(part)) ? 'judged' : 'not-judged';
      if (block === 'plates' || OF_PLATES.has(code))
        return shafts.has(part) || (plates.has(part) && shafts.has(plates.get(part)!)) ? 'judged' : 'not-judged';
      return there ? 'judged' : 'no-part';
    },
    unchecked({ part, message }) {
      const own = parts.get(part);
      if (side.study === undefined || own === undefined || OF_WHAT_IS_THERE.test(message)) return 'not-looked-at';
      const blocks = own.map(({ block }) => block);
      const partly = /friction|snap-back/.test(message);
      const told = (isKnown: boolean): NonNullable<UncheckedMark['elsewhere']> =>
        isKnown ? (partly ? 'checked-in-part' : 'checked') : 'not-looked-at';
      if (blocks.includes('plates')) {
        const state = shafts.get(plates.get(part) ?? '');
        return told(message.includes('describes no springs') ? isSettled(state) : state === 'known');
      }
      if (blocks.includes('pedal')) return told(known.has('pedal effort-least') || known.has('pedal effort-at-rest'));
      if (blocks.includes('springs')) return told(springs.has(part));
      const want = /for want of `(\w+)`/.exec(message)?.[1];
      const isGiven = want === undefined || own.some(({ path }) => stands(`${path}.${want}`));
      if (blocks.includes('sensors')) return told(isGiven && known.has(`${part} signal-at-rest`));
      return told(want === undefined ? message.includes('its lead') : isGiven);
    },
  };
}

/**
 * What was judged of the first file and cannot be of the second: a fault that is gone with what it was told of, and what closes a shaft.
 * Empty where the second is not solved, which says more.
 */
export function unjudgedNow(was: Judge, is: Judge, isSolved: boolean, gone: readonly FindingMark[], renames: Renames): readonly Unjudged[] {
  if (!isSolved) return [];
  const lost = gone.filter(({ elsewhere }) => elsewhere === 'not-judged');
  const faults = (['error', 'warning'] as const).flatMap((wanted) => lost.filter(({ severity }) => severity === wanted));
  return [
    ...was.shafts.flatMap((part): Unjudged[] => {
      const before = was.closing(part);
      if (before !== 'known' && before !== 'unknown') return [];
      const why = closingLost(is.closing(part), before, is.shafts.length);
      return why === undefined ? [] : [{ part, message: `what closes ${part}, ${why}` }];
    }),
    ...faults.map(({ part, code, message }): Unjudged => ({ part: renames.about(part), message: `was [${code}] ${message}` })),
  ];
}

function closingLost(now: Closing | undefined, before: Closing, shafts: number): string | undefined {
  switch (now) {
    case 'known':
      return undefined;
    case 'no-springs':
      return 'since the file describes no springs any more';
    case 'none':
      return 'since no spring reaches it any more';
    case 'unknown':
      return before === 'known' ? 'since its closing torque is not known any more' : undefined;
    case undefined:
      // Of several shafts one may go; where none is left there is nothing that the file could be checked for.
      return shafts === 0 ? 'since the pedal moves no plates any more' : undefined;
  }
}

function hasUnread({ definition }: Answered, block: string): boolean {
  return (definition?.unread ?? []).some(({ path }) => path === block || path.startsWith(`${block}.`));
}

const OF_CLOSING: ReadonlySet<string> = new Set(['no-return-spring', 'closing-lost', 'closing-dips', 'friction-lock', 'closing-margin']);
const OF_PLATES: ReadonlySet<string> = new Set(['opening-missed', 'held-open', 'plate-below-seat', 'out-of-step']);
/** Lines that are told because something is in the file: they go with it, and nothing has been checked thereby. */
const OF_WHAT_IS_THERE = /`vacuum`|tolerances|the play of|the movement|clearance|uses this limit/;
