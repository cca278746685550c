/** Failures of hand-made linkages, held against figures worked out by hand. */
import { describe, expect, it } from 'vitest';
import { failureTable, type FailureTable } from '../../src/failures/failureTable.ts';
import type { FailureRow, PlatesLeft } from '../../src/failures/failure.ts';
import { failuresVerdict, platesWords } from '../../src/outputs/failureWords.ts';
import { withFailures } from '../../src/outputs/withFailures.ts';
import { snapBack } from '../../src/forces/snapBack/snapBack.ts';
import { solve } from '../../src/solve.ts';
import { inSi, oneLeverText } from '../forces/snapBack/support/snap.ts';
import { CRANK, plates, rod, RUBS, SHAFT, shaft, textOf, torsion, type Parts } from './throttles.ts';

const N_MM = 1e-3;

function tableOf(text: string): FailureTable {
  const { study, problems } = solve(text);
  expect(problems).toEqual([]);
  if (study === undefined) throw new Error('nothing is solved');
  return failureTable(study.travel);
}

function row({ rows }: FailureTable, name: string): FailureRow {
  const found = rows.filter(({ failure }) => failure !== undefined && `${failure.kind} ${failure.part}` === name);
  if (found[0] === undefined || found.length > 1) throw new Error(`${found.length} rows ${name}`);
  return found[0];
}

/** The only plates of a row. */
function left({ plates: all }: FailureRow): PlatesLeft {
  expect(all).toHaveLength(1);
  return all[0]!;
}

/** A drag alone on the shaft, whose bearing does not rub, so that friction is known by hand; the cable does not either. */
const DRAG: Parts = {
  levers: { shaft: shaft('', RUBS(50, 0)) },
  cables: { main: '{enters: [40, 24], to: shaft.wheel, slack: 1 mm, bend: 0 deg, friction: 0}' },
};

describe('a shaft with two springs and a drag', () => {
  const table = tableOf(textOf(SHAFT, { ...DRAG, springs: { first: torsion('shaft', 300, 3), second: torsion('shaft', 120, 1) } }));

  it('has every single failure, springs first and seized cables last', () => {
    expect(table.notChecked).toBeUndefined();
    expect(table.rows.map(({ failure }) => `${failure?.kind} ${failure?.part}`)).toEqual([
      'spring-lost first',
      'spring-lost second',
      'cable-lost main',
      'cable-seized main',
    ]);
  });

  // By hand: preloads over drag at rest, where torsion springs bring least.
  it.each([
    ['whole', undefined, 420],
    ['with the first lost', 'spring-lost first', 120],
    ['with the second lost', 'spring-lost second', 300],
    ['with the cable cut', 'cable-lost main', 420],
  ])('%s is weakest at rest, by its preloads against its drag', (_, name, torque) => {
    const { outcome, weakest, butPedal } = left(name === undefined ? table.whole : row(table, name));
    // The pedal is given as a cable alone, whose own return no row can promise; cut, the cable leaves it out of the matter.
    const told = name === 'cable-lost main' ? { outcome: 'closes', butPedal: undefined } : { outcome: 'not-checked', butPedal: true };
    expect({ outcome, butPedal, lever: weakest?.lever }).toEqual({ ...told, lever: 'shaft' });
    expect(weakest?.torque).toBeCloseTo(torque * N_MM, 12);
    expect(weakest?.friction).toBeCloseTo(50 * N_MM, 12);
    expect(weakest?.margin).toBeCloseTo(torque / 50, 9);
    expect(weakest?.opening).toBeCloseTo(0, 9);
  });

  it('stays where the cable seizes, at up to what the cable has drawn', () => {
    const { outcome, heldAt, time } = left(row(table, 'cable-seized main'));
    expect({ outcome, time }).toEqual({ outcome: 'stays-open', time: undefined });
    // (34.5 − 1) mm on a drum of 24 mm, in radians.
    expect(heldAt).toBeCloseTo(33.5 / 24, 9);
  });

  it('lets the shaft go with the cable, onto its own stop', () => {
    expect(row(table, 'cable-lost main').freed).toEqual({ lever: 'shaft', falls: 'closed', springs: ['first', 'second'], stop: 'shaft' });
  });

  it('closes faster with both springs than with the weaker, and without a spring never', () => {
    const seconds = (of: FailureRow): number => left(of).time?.seconds ?? NaN;
    expect(seconds(table.whole)).toBeGreaterThan(0);
    expect(seconds(row(table, 'spring-lost first'))).toBeGreaterThan(seconds(row(table, 'spring-lost second')));
    expect(seconds(row(table, 'spring-lost second'))).toBeGreaterThan(seconds(table.whole));
    const single = tableOf(textOf(SHAFT, { springs: { second: undefined } }));
    expect(left(row(single, 'spring-lost first'))).toMatchObject({
      outcome: 'stays-open',
      why: 'nothing brings shaft back',
      time: undefined,
    });
  });
});

// Closed form of ½ I ω² = M o; thrown back with half its speed, 0.5⁹ is the last above a thousandth, below which a bounce is none.
it('tells how plates come onto their stop, and how often they leave it', () => {
  const lever = { inertia: 100, preload: 300, rate: 1e-9, opening: 80 };
  const { inertia, preload, opening } = inSi(lever);
  const table = tableOf(oneLeverText(lever));
  const met = left(table.whole).time?.stop;
  expect(met?.bounces).toBe(9);
  expect(met!.speed / Math.sqrt((2 * preload * opening) / inertia)).toBeCloseTo(1, 6);
  expect(platesWords(left(table.whole)).at(-1)).toBe('onto the stop at 5244 deg/s, 9 bounces');
});

it('agrees with what is found of a margin with one spring off', () => {
  const { findings, failures } = solve(textOf(SHAFT, { ...DRAG, springs: { first: torsion('shaft', 80), second: torsion('shaft', 90) } }));
  const [margin] = findings.filter(({ code }) => code === 'closing-margin');
  const table = failures();
  expect(margin?.part).toBe('shaft');
  expect(table && left(row(table, 'spring-lost second')).weakest?.margin).toBe(margin?.worst?.value);
});

it('says that friction holds a shaft, and that a lever before it does', () => {
  const held = tableOf(textOf(SHAFT, { levers: { shaft: shaft('', RUBS(900)) } }));
  expect(left(held.whole)).toMatchObject({ outcome: 'stays-open', why: 'friction holds shaft' });
  const pedal = `{pivot: [-200, 0], arms: {pad: {radius: 200, angle: -70}, clevis: {radius: 60, angle: 100}}, ${RUBS(4000)}}`;
  const byPedal = tableOf(textOf(CRANK, { levers: { pedal } }));
  expect(left(byPedal.whole)).toMatchObject({ outcome: 'stays-open', why: 'friction holds pedal, which holds shaft open' });
  // Once the cable is cut the pedal holds nothing.
  expect(left(row(byPedal, 'cable-lost main')).outcome).toBe('closes');
});

describe('a rod that lets a lever go', () => {
  const withSprings = (springs: Parts[string], shaftMore = ''): FailureRow =>
    row(
      tableOf(
        textOf(CRANK, {
          levers: { shaft: `{pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}, stops: {open: 65 deg${shaftMore}}, ${RUBS()}}` },
          springs: springs as Readonly<Record<string, string>>,
        }),
      ),
      'rod-lost link',
    );

  it('leaves it to its own springs and its own stop', () => {
    expect(withSprings({}).freed).toEqual({ lever: 'shaft', falls: 'closed', springs: ['first', 'second'], stop: 'shaft' });
  });

  it('leaves it loose where all springs are before the rod', () => {
    const { freed, outcome } = withSprings({ first: torsion('crank'), second: torsion('crank') });
    expect(freed).toEqual({ lever: 'shaft', falls: 'none', springs: [], stop: undefined });
    expect(outcome).toBe('stays-open');
  });

  it('lets it turn open where a spring that opens is all that is left', () => {
    const { freed } = withSprings({ first: torsion('crank', 900), second: torsion('crank', 900), third: torsion('shaft', -200, 0.1) });
    expect(freed).toEqual({ lever: 'shaft', falls: 'open', springs: ['third'], stop: 'shaft' });
  });

  it('leaves it to what its place decides where the spring closes only far open', () => {
    // Closing from 20° on: −60 N·mm + 3 N·mm/deg.
    expect(withSprings({ first: torsion('crank', 900), second: torsion('crank', 900), third: torsion('shaft', -60, 3) }).freed?.falls).toBe(
      'either',
    );
  });
});

it('closes the shaft that is still driven, and tells the other apart', () => {
  const table = tableOf(
    textOf(SHAFT, {
      levers: {
        shaft: `{pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}, drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 65 deg}, ${RUBS()}}`,
        rear: `{pivot: [250, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}, stops: {open: 65 deg}, ${RUBS()}}`,
      },
      pedal: '{cable: main, pull: 28.2 mm}',
      rods: { bridge: rod('shaft.arm', 'rear.arm') },
      plates: { bank: plates('shaft'), back: plates('rear') },
    }),
  );
  // As far as the plates: whether the pedal comes back, of which the file gives the cable alone, is left open of what it still drives.
  const told = ({ plates: all }: FailureRow) => all.map(({ levers, outcome, butPedal = false }) => [levers, outcome, butPedal]);
  expect(told(table.whole)).toEqual([[['shaft', 'rear'], 'not-checked', true]]);
  expect(told(row(table, 'rod-lost bridge'))).toEqual([
    [['shaft'], 'not-checked', true],
    [['rear'], 'stays-open', false],
  ]);
});

it('does not depend on the order of the parts, nor on where the drawing lies', () => {
  const one = tableOf(textOf(CRANK));
  const other = tableOf(textOf({ ...CRANK, springs: { second: torsion('shaft', 450), first: torsion('shaft', 450) } }));
  const figures = ({ whole, rows }: FailureTable): unknown =>
    [whole, ...rows]
      .map((each) => [`${each.failure?.kind} ${each.failure?.part}`, each.outcome, left(each).weakest?.margin?.toPrecision(9)])
      .sort();
  expect(figures(other)).toEqual(figures(one));
  const mirrored = tableOf(
    textOf(CRANK)
      .replaceAll(/pivot: \[(-?\d+), 0\]/g, (_, x: string) => `pivot: [${-Number(x)}, 0]`)
      .replaceAll(/(enters|leaves): \[(-?\d+), /g, (_, key: string, x: string) => `${key}: [${-Number(x)}, `)
      .replaceAll(/angle: (-?\d+)/g, (_, angle: string) => `angle: ${180 - Number(angle)}`)
      .replaceAll('counterclockwise', 'clockwise'),
  );
  const margins = (table: FailureTable): readonly number[] => [table.whole, ...table.rows].map((each) => left(each).weakest?.margin ?? 0);
  margins(mirrored).forEach((margin, i) => expect(margin).toBeCloseTo(margins(one)[i]!, 6));
});

describe('from less than full pedal', () => {
  it('is as snap-back has it, of the slowest of three releases, after each failure that leaves plates closing', () => {
    const text = textOf(CRANK);
    const table = tableOf(text);
    const { build } = solve(text).study!.travel;
    const rows = [table.whole, ...table.rows].filter(({ plates: all }) => all.some(({ time }) => time?.seconds !== undefined));
    expect(table.fromPart.map(({ failure }) => failure?.part)).toEqual(rows.map(({ failure }) => failure?.part));
    for (const { failure, seconds } of table.fromPart) {
      const times = [0.75, 0.5, 0.25].map((from) => {
        const found = snapBack(build, { from, without: failure === undefined ? [] : [failure.part] });
        return found.method === undefined ? NaN : found.time!;
      });
      // Followed less finely, as it is told to a thousandth of a second.
      expect(Math.abs(seconds! / Math.max(...times) - 1), failure?.part).toBeLessThan(2e-4);
    }
    const line = table.assumptions.find((each) => each.startsWith('Times are from full pedal'))!;
    expect(line).toMatch(
      /^Times are from full pedal; released at 75 %, 50 % or 25 % of it, with every part it is closed in \S+ s at most; with one part lost closed in \S+ s at most, without \w+$/,
    );
    const slowest = table.fromPart.slice(1).reduce((worst, each) => (each.seconds! > worst.seconds! ? each : worst));
    expect(line).toContain(`without ${slowest.failure!.part}`);
  });

  it('counts for the times of a rule', () => {
    // A weight on a spring that pulls evenly: it needs least time from least opening, so that full pedal decides.
    const standing = solve(textOf(CRANK))
      .failures()!
      .statements.find(({ figure }) => figure.key === 'return-times')!;
    expect(standing.standing).toBe('meets');
    const table = tableOf(textOf(CRANK));
    const most = Math.max(
      ...[table.whole, ...table.rows].flatMap(({ plates: all }) => all.map(({ time }) => time?.seconds ?? 0)),
      ...table.fromPart.map(({ seconds }) => seconds ?? Infinity),
    );
    expect(standing.why).toContain(`${most.toFixed(3).replace(/0+$/, '')} s at most`);
  });
});

it('says of a linkage that leaves its plane that its times go by one way alone', () => {
  const told = (text: string): boolean => tableOf(text).assumptions.some((line) => line.startsWith('The linkage leaves its plane'));
  expect(told(textOf(CRANK))).toBe(false);
  expect(told(textOf(CRANK).replace('crank: {pivot', 'crank: {axis: [0, 0.05, 1], pivot'))).toBe(true);
});

describe('a pedal given as a cable alone', () => {
  const text = textOf(SHAFT);

  it('never lets a row read that it closes, and says that the plates do', () => {
    const table = tableOf(text);
    for (const each of [table.whole, row(table, 'spring-lost first'), row(table, 'spring-lost second')]) {
      expect(each.outcome).toBe('not-checked');
      expect(left(each)).toMatchObject({
        butPedal: true,
        why: 'plates close; the pedal’s return is not checked, since the file gives of it the cable alone',
      });
      expect(left(each).time?.seconds).toBeGreaterThan(0);
    }
    expect(row(table, 'cable-lost main').outcome).toBe('closes');
    const failures = solve(text).failures()!;
    expect(failuresVerdict(failures)).toBe(
      'every plate closes with each of 3 parts lost in turn, the pedal’s return not checked; 1 cable would hold plates open where seized',
    );
    expect(
      new Set(failures.statements.filter(({ figure }) => figure.key !== 'springs-at-throttle-body').map(({ standing }) => standing)),
    ).toEqual(new Set(['not-checked']));
    expect(failures.findings).toEqual([]);
  });

  it('hides nothing that is worse: what stays open does, and what is not known says why', () => {
    const one = tableOf(textOf(SHAFT, { springs: { second: undefined } }));
    expect(row(one, 'spring-lost first').outcome).toBe('stays-open');
    expect(left(tableOf(textOf(SHAFT, { springs: undefined })).whole).why).toBe('the file describes no springs');
    expect(left(tableOf(textOf(SHAFT, { levers: { shaft: shaft('', RUBS(900)) } })).whole).outcome).toBe('stays-open');
  });

  it('is told as a pedal in the list of what is not checked', () => {
    const lines = withFailures(solve(text)).notChecked.map(({ message }) => message);
    expect(lines).toContain(
      'Not checked: the pedal’s return with every part and with each of first and second lost, since the file gives of it the cable alone; shaft closes',
    );
  });

  it('reads that it closes as soon as the file gives the pedal with its springs and friction', () => {
    expect(new Set([tableOf(textOf(CRANK)).whole, ...tableOf(textOf(CRANK)).rows.slice(0, 2)].map(({ outcome }) => outcome))).toEqual(
      new Set(['closes']),
    );
  });
});

describe('what cannot be known', () => {
  const outcomes = (text: string): readonly string[] => {
    const { whole, rows } = tableOf(text);
    return [whole, ...rows.filter(({ failure }) => failure?.kind !== 'cable-seized')].map(({ outcome }) => outcome);
  };

  it('is not checked: no plates, no springs, a spring of unknown stiffness, no friction', () => {
    expect(tableOf(textOf(SHAFT, { plates: undefined })).notChecked).toBe('the file describes no plates');
    expect(left(tableOf(textOf(SHAFT, { springs: undefined })).whole)).toMatchObject({
      outcome: 'not-checked',
      why: 'the file describes no springs',
    });
    const unknown = { springs: { second: '{from: [48, 30], to: shaft.tail, rate: 1 N/mm}' } };
    expect(left(tableOf(textOf(SHAFT, unknown)).whole).why).toBe('the torque of second is not known');
    const bare = textOf(SHAFT).replace(`, ${RUBS()}`, '').replace(', bend: 90 deg, friction: 0.1', '');
    expect(left(tableOf(bare).whole)).toMatchObject({ outcome: 'not-checked', why: 'the file gives no friction; without any, it closes' });
  });

  it('is not checked where a spring of the file is not understood', () => {
    const { study } = solve(textOf(SHAFT, { springs: { second: '{lever: shaft, rate: nonsense}' } }));
    expect(study && failureTable(study.travel)).toMatchObject({ rows: [] });
    expect(study && failureTable(study.travel).notChecked).toMatch(/springs\.second.* is not understood/);
  });

  it('never reads better for a figure of friction that is left out', () => {
    expect(new Set(outcomes(textOf(CRANK)))).toEqual(new Set(['closes']));
    for (const figure of [
      'friction: 40 N*mm, ',
      ', bearing: {diameter: 10 mm, friction: 0.15}',
      ', bend: 90 deg',
      ', pin: 6 mm',
      ' friction: 0.1, stiffness: 40 N/mm',
    ]) {
      const text = textOf(CRANK).replace(figure, '').replace(',}', '}');
      expect(text).not.toBe(textOf(CRANK));
      expect(outcomes(text)[0], figure).toBe('not-checked');
    }
  });
});
