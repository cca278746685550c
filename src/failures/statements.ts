/**
 * How a linkage stands to the figures of rules: meets one, does not, or was not checked. A statement about figures alone, on the dimensions
 * given: what a rule means, and whether a car may be driven by it, is for those who read it. What was not checked never counts as met.
 */
import { missingOf, NO_TORQUE } from '../forces/springLack.ts';
import { springPlaces, withPlaces } from '../forces/springPlaces.ts';
import { springTorques } from '../forces/springs.ts';
import { leversOf, springsReaching } from '../forces/springsReaching.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Travel } from '../travel/travel.ts';
import { fixed } from '../travel/words.ts';
import type { FailureKind, FailureRow, Outcome, PlatesLeft } from './failure.ts';
import type { FailureTable } from './failureTable.ts';
import { RETURN_TIMES, RULE_FIGURES, type FigureKey, type RuleFigure } from './figures.ts';
import { listed } from './words.ts';

export type Standing = 'meets' | 'does-not-meet' | 'not-checked';

export interface Statement {
  readonly figure: RuleFigure;
  readonly standing: Standing;
  /** What decides it, a clause; undefined where there is nothing to say besides. */
  readonly why: string | undefined;
}

/** In the order of the figures. */
export function statementsOf(travel: Travel, table: FailureTable): readonly Statement[] {
  return RULE_FIGURES.map((figure): Statement => ({ figure, ...standingOf(travel, table, figure.key) }));
}

type Decided = Omit<Statement, 'figure'>;

function standingOf(travel: Travel, table: FailureTable, key: FigureKey): Decided {
  if (table.notChecked !== undefined) return { standing: 'not-checked', why: table.notChecked };
  // How many springs there are can be told without knowing what rubs.
  if (key === 'springs-at-throttle-body') return enough(travel, table, 'on the shaft');
  const whole = closing([table.whole]);
  if (whole.standing === 'does-not-meet') return whole;
  // What is left open with every part is left open of each figure, unless one is not met whatever is left open.
  const rest = standingOfLost(travel, table, key);
  return whole.standing === 'meets' ? rest : worst([whole, rest]);
}

function standingOfLost(travel: Travel, table: FailureTable, key: Exclude<FigureKey, 'springs-at-throttle-body'>): Decided {
  switch (key) {
    case 'energy-sources':
      return worst([enough(travel, table, 'anywhere'), closing(lost(table, 'spring-lost'))]);
    case 'return-on-disconnection':
    case 'no-single-failure':
      return closing(lost(table));
    case 'return-times':
      return inTime([table.whole, ...lost(table)], table);
    case 'springs-alone':
      return worst([enough(travel, table, 'anywhere'), closing(lost(table, 'spring-lost'))]);
    case 'linkage-failure':
      return closing(lost(table, 'rod-lost', 'cable-lost', 'slot-lost', 'coupling-lost'));
  }
}

/** Rows of parts that are lost; of some kinds where any are named. */
function lost({ rows }: FailureTable, ...kinds: readonly FailureKind[]): readonly FailureRow[] {
  return rows.filter(({ failure }) => {
    if (failure === undefined || failure.kind === 'cable-seized') return false;
    return kinds.length === 0 || kinds.includes(failure.kind);
  });
}

/** Whether all plates of all rows close. */
function closing(rows: readonly FailureRow[]): Decided {
  const all = rows.flatMap(({ failure, plates }) => plates.map((left) => ({ failure, left })));
  const first = (outcome: Outcome): (typeof all)[number] | undefined => all.find(({ left }) => left.outcome === outcome);
  const open = first('stays-open');
  if (open !== undefined) return { standing: 'does-not-meet', why: told(open) };
  const unknown = first('not-checked');
  if (unknown !== undefined) return { standing: 'not-checked', why: told(unknown) };
  return { standing: 'meets', why: undefined };
}

function told({
  failure,
  left: { levers, outcome, why, butPedal },
}: {
  readonly failure: FailureRow['failure'];
  readonly left: PlatesLeft;
}): string {
  const when = failure === undefined ? '' : `without ${failure.part} `;
  if (butPedal) return `${when}${why ?? ''}`;
  const what =
    outcome === 'stays-open'
      ? `${when}${listed(levers)} ${levers.length === 1 ? 'does' : 'do'} not close`
      : `${when}whether ${listed(levers)} ${levers.length === 1 ? 'closes' : 'close'}`;
  return why === undefined ? what : `${what}: ${why}`;
}

/**
 * Whether two return springs or more close every shaft, each over the whole travel by what it brings itself.
 * @param where whether they must work on a lever with plates
 */
function enough(travel: Travel, { whole }: FailureTable, where: 'anywhere' | 'on the shaft'): Decided {
  const { attached, levers } = travel.mechanism;
  for (const { levers: names } of whole.plates) {
    const shafts = levers.filter(({ name }) => names.includes(name)).map(({ index }) => index);
    const reaching = shafts.flatMap((shaft) => springsReaching(travel.mechanism, shaft));
    const counting = attached.springs.filter((spring) => {
      if (!spring.source.countsAsReturn) return false;
      return where === 'anywhere' ? reaching.includes(spring) : leversOf(spring).some((lever) => shafts.includes(lever));
    });
    const known = counting.filter((spring) => missingOf(spring) === undefined);
    const sure = known.filter((spring) => closesAllTheWay(travel, spring));
    if (sure.length >= LEAST_SPRINGS) continue;
    const unknown = counting.filter((spring) => !known.includes(spring)).map(({ name }) => name);
    if (sure.length + unknown.length >= LEAST_SPRINGS)
      return { standing: 'not-checked', why: `what ${listed(unknown)} brings is not known` };
    const only = sure.length === 0 ? 'no return spring' : `only ${listed(sure.map(({ name }) => name))}`;
    return {
      standing: 'does-not-meet',
      why: `${only} ${where === 'anywhere' ? 'closes' : 'works on'} ${listed(names)} over the whole travel`,
    };
  }
  return { standing: 'meets', why: undefined };
}

/** Where its lever cannot be assembled it is not asked. */
function closesAllTheWay(travel: Travel, spring: SpringModel): boolean {
  const { build, samples, poseAt } = travel;
  const places = springPlaces(travel, spring);
  return (places === undefined ? samples : withPlaces(samples, places)).every((at) =>
    springTorques(build, poseAt(at), spring).some(({ closing: torque }) => !(torque <= NO_TORQUE)),
  );
}

/** 49 CFR 571.124 S5.1, IC.3.3.2 and CV1.5.2 alike. */
const LEAST_SPRINGS = 2;

/** Whether the plates of all rows are closed within the shortest of the times. What a time leaves out would only make it longer. */
function inTime(rows: readonly FailureRow[], table: FailureTable): Decided {
  const closed = closing(rows);
  if (closed.standing === 'does-not-meet') return closed;
  let slowest = { seconds: 0, after: '' };
  let unknown: string | undefined;
  let estimated = '';
  for (const { failure, plates } of rows) {
    const after = failure === undefined ? '' : ` without ${failure.part}`;
    for (const { levers, time } of plates) {
      if (time?.seconds === undefined) unknown ??= `time of ${listed(levers)}${after}: ${time?.why ?? 'not computed'}`;
      else if (time.seconds > slowest.seconds) slowest = { seconds: time.seconds, after };
      if (time?.estimated === true) estimated = ', with inertias estimated that the file does not give';
      if (time?.leftOut !== undefined) unknown ??= `the time leaves out ${time.leftOut}`;
    }
  }
  for (const { failure, seconds } of table.fromPart) {
    if (failure?.kind === 'cable-seized') continue;
    const after = failure === undefined ? '' : ` without ${failure.part}`;
    if (seconds === undefined) unknown ??= `time from less than full pedal${after}: it was not seen to close`;
    else if (seconds > slowest.seconds) slowest = { seconds, after: `${after} from less than full pedal` };
  }
  const [shortest] = RETURN_TIMES;
  const isSlow = shortest !== undefined && slowest.seconds > shortest.seconds;
  if (!isSlow && closed.standing === 'not-checked') return closed;
  if (unknown !== undefined && !isSlow) return { standing: 'not-checked', why: unknown };
  const took = `${fixed(slowest.seconds, 3)} s at most${slowest.after}${estimated}`;
  if (!isSlow) return { standing: 'meets', why: took };
  const within = unknown === undefined ? RETURN_TIMES.find(({ seconds }) => slowest.seconds <= seconds) : undefined;
  return { standing: 'does-not-meet', why: within === undefined ? took : `${took}, within the ${within.seconds} s of ${within.of}` };
}

/** The first of the worse standing: what is not met before what was not checked. */
function worst(all: readonly Decided[]): Decided {
  const first = (standing: Standing): Decided | undefined => all.find((each) => each.standing === standing);
  return first('does-not-meet') ?? first('not-checked') ?? { standing: 'meets', why: undefined };
}
