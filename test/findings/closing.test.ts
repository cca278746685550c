/** What closes a shaft with plates: where it is lost, where it dips, what is told of it as facts, and what is left open. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/findings/finding.ts';
import { solve } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';
import { checkFindings } from '../support/checkFindings.ts';
import { markedAll, markedAt } from '../support/markedAt.ts';
import { bisect } from './handGeometry.ts';
import { FULL, leastOver, onShaft, STEADY, together, torqueAt, TWO, written, type Hung } from './hungSprings.ts';

const SHAFT = '  |shaft|: {pivot';
const ALONE = 'warning[single-return-spring]: is the only return spring that closes';

describe('closing torque that is lost', () => {
  it('is an error at rest where no spring has preload', () => {
    const text = onShaft(['one: {lever: shaft, rate: 3 N*mm/deg}', 'two: {lever: shaft, rate: 2 N*mm/deg}']);
    const { only } = checkFindings(
      markedAt(text, SHAFT, 'error[closing-lost]: Nothing closes shaft at 0 % of pedal travel: the springs bring 0 N·mm'),
    );
    expect(only('closing-lost').worst).toEqual({ value: 0, dimension: 'torque', travel: 0 });
    expect(only('closing-lost').related?.map(({ message }) => message)).toEqual(['one brings nothing there', 'two brings nothing there']);
    checkFindings(onShaft(['one', 'two'].map((name) => `${name}: {lever: shaft, rate: 3 N*mm/deg, preload: 1 N*mm}`)));
  });

  it('is mended by preload, to a tenth of the greatest', () => {
    const text = onShaft(['one: {lever: shaft, rate: 3 N*mm/deg, preload: 0 N*mm}', 'two: {lever: shaft, rate: 2 N*mm/deg}']);
    const mended = applyMend(text, 'closing-lost');
    expect(mended.mend.unknown).toBe('springs.one.preload');
    // The other spring brings nothing at rest still.
    expect(mended.left).toEqual(['single-return-spring one']);
    expect(mended.value).toBeCloseTo(0.1 * 5 * FULL * 1e-3, 6);
    expect(mended.mend.outcome).toEqual({ kind: 'itself' });
  });

  it('is mended by the preload of a spring on a lever that a coupling joins', () => {
    const text = (preload: number): string => `format: 1
levers:
  front: {pivot: [0, 0], stops: {open: 60 deg}}
  rear: {pivot: [100, 0]}
pedal: {lever: front, opens: counterclockwise, travel: 60 deg}
couplings: {on: {from: front, to: rear, ratio: 2}}
plates: {bank: {lever: front, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: rear, rate: 2 N*mm/deg, preload: ${preload} N*mm}
  two: {lever: rear, rate: 2 N*mm/deg}
`;
    const { only } = checkFindings(markedAt(text(0), '  |front|: {', 'error[closing-lost]: Nothing closes front at 0 %'));
    const { mend } = only('closing-lost');
    expect(mend).toMatchObject({ unknown: 'springs.one.preload', outcome: { kind: 'least', column: 'front.closing' } });
    // Twice over at front: 2 · 4 · 120 = 960 N·mm at the most.
    expect(mend?.target).toBeCloseTo(0.096, 9);
    const { answers } = checkFindings(markedAt(text(48), '  |one|: {', ALONE));
    expect(answers.table([0], ['front.closing']).columns[0]?.values[0]).toBeCloseTo(96, 9);
  });

  // The anchor stands straight above the pivot: beyond 30° of opening the spring opens.
  const over: Hung = { anchor: [100, 60], angle: 240, rate: 0.5, free: 40 };

  it('tells from where on a spring past its dead centre overcomes the others', () => {
    const springs = [
      'one: {lever: shaft, rate: 0.2 N*mm/deg, preload: 20 N*mm}',
      'two: {lever: shaft, rate: 0.2 N*mm/deg, preload: 20 N*mm}',
    ];
    const sum = (opening: number): number => 40 + 0.4 * opening + torqueAt(over, opening);
    const { only } = checkFindings(
      markedAll(onShaft([...springs, written('tail', over)]), [
        [SHAFT, 'error[closing-lost]: Nothing closes shaft from'],
        ['  |tail|: {', 'error[spring-dead-centre]'],
      ]),
    );
    const lost = only('closing-lost');
    expect(lost.ranges?.[0]?.from).toBeCloseTo(bisect(sum, 30, 60) / FULL, 5);
    expect(lost.worst?.value).toBeCloseTo(leastOver(sum) / 1000, 8);
    expect(lost.related?.map(({ message }) => message)).toEqual(['tail opens it there']);
    expect(lost.mend).toBeUndefined();
    checkFindings(markedAt(onShaft([...TWO, written('tail', over)]), '  |tail|: {', 'error[spring-dead-centre]'));
  });

  it('is told where the springs that reach the plates are slack', () => {
    const loose: Hung = { anchor: [40, 0], angle: 240, rate: 0.5, free: 55 };
    const { only } = checkFindings(
      markedAll(onShaft([written('one', loose), written('two', loose)]), [
        [SHAFT, 'error[closing-lost]: Nothing closes shaft from 0 % to'],
        ['two: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: |55 mm|', 'warning[spring-slack]: two is slack'],
        ['one: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: |55 mm|', 'warning[spring-slack]: one is slack'],
      ]),
    );
    expect(only('closing-lost').ranges?.[0]?.from).toBe(0);
    checkFindings(onShaft([written('one', { ...loose, free: 50 }), written('two', { ...loose, free: 50 })]));
  });

  it('takes no help from the pedal across a cable, nor a cable for a push while it is slack', () => {
    const text = (preload: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], drums: {wheel: {radius: 60, wraps: counterclockwise}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 24, wraps: clockwise}}, stops: {open: 60 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 24.95 deg}
cables: {main: {from: pedal.wheel, leaves: [80, 60], enters: [240, 24], to: shaft.wheel, slack: 1 mm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  foot: {lever: pedal, rate: 40 N*mm/deg, preload: 9000 N*mm}
  one: {lever: shaft, rate: 2 N*mm/deg, preload: ${preload} N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg}
`;
    checkFindings(markedAt(text(0), SHAFT, 'error[closing-lost]: Nothing closes shaft from 0 % to 3.8 %'));
    checkFindings(markedAt(text(50), '  |one|: {', ALONE));
  });

  it('is said once of shafts that close together', () => {
    const text = (preload: number): string =>
      together(`  one: {lever: rear, rate: 2 N*mm/deg, preload: ${preload} N*mm}
  two: {lever: front, rate: 2 N*mm/deg, preload: 20 N*mm}
`);
    checkFindings(
      markedAll(text(-50), [
        ['  |front|: {pivot', 'error[closing-lost]: Nothing closes front and rear from 0 % to 12.5 %'],
        ['  |one|: {', 'error[spring-opens]'],
        ['  |two|: {', ALONE],
      ]),
    );
    checkFindings(text(1));
  });

  it('can dip out of sight of every station', () => {
    // A stiff spring presses over less than a tenth of a degree about its near dead centre, and opens beyond it.
    const free = 40 + 5e-5;
    const text = (preload: number): string =>
      onShaft(
        [
          `one: {lever: shaft, rate: 0.00001 N*mm/deg, preload: ${preload} N*mm}`,
          'two: {lever: shaft, rate: 0.00001 N*mm/deg, preload: 0.01 N*mm}',
          `push: {from: [100, 60], to: shaft.tail, kind: compression, rate: 900000 N/mm, free_length: ${free} mm}`,
        ],
        { angle: 59.87 },
      );
    const push = [
      ['  |push|: {', 'error[spring-dead-centre]'],
      [`free_length: |${free} mm|`, 'warning[spring-slack]'],
    ] as const;
    const { only } = checkFindings(
      markedAll(text(0.5), [...push, [SHAFT, 'error[closing-lost]: Nothing closes shaft from 50.3 % to 50.4 %']]),
    );
    const [range] = only('closing-lost').ranges ?? [];
    expect((range?.to ?? 1) - (range?.from ?? 0)).toBeLessThan(1 / 200);
    checkFindings(markedAll(text(50), push));
  });
});

describe('closing torque that dips', () => {
  /** Two springs alike whose arm runs towards their far dead centre, which lies `beyond` degrees past full opening. */
  const falling = (beyond: number): Hung => ({ anchor: [100, 60], angle: 210 - beyond, rate: 0.05, free: 20, tension: 9 });
  const text = (hung: Hung): string => onShaft([written('one', hung), written('two', hung)], { angle: hung.angle });

  it.each([
    [15, 'warning'],
    [40, 'note'],
  ] as const)('is told of, ending %d° before the dead centre as a %s', (beyond, severity) => {
    const hung = falling(beyond);
    const least = leastOver((opening) => 2 * torqueAt(hung, opening));
    const share = least / (2 * torqueAt(hung, 0));
    expect(share).toBeLessThan(severity === 'warning' ? 0.5 : 0.8);
    const { only } = checkFindings(
      markedAt(
        text(hung),
        SHAFT,
        `${severity}[closing-dips]: The closing torque at shaft falls to ${Number((100 * share).toFixed(1))} % of that at rest`,
      ),
    );
    expect(only('closing-dips').worst?.value).toBeCloseTo(least / 1000, 8);
    expect(only('closing-dips').limit?.value).toBeCloseTo(((severity === 'warning' ? 0.5 : 0.8) * 2 * torqueAt(hung, 0)) / 1000, 9);
  });

  it('is none within a fifth of that at rest, nor where other springs make up for it', () => {
    checkFindings(text(falling(60)));
    checkFindings(
      onShaft(['three: {lever: shaft, rate: 6 N*mm/deg, preload: 500 N*mm}', written('one', falling(15)), written('two', falling(15))], {
        angle: 195,
      }),
    );
  });

  it('is not told besides the spring that causes it', () => {
    const over: Hung = { anchor: [100, 60], angle: 240, rate: 0.5, free: 40 };
    const answers = solve(onShaft([...TWO, written('tail', over)]));
    const closing = answers.table([0, 1], ['shaft.closing']).columns[0]?.values ?? [];
    expect(closing[1]).toBeGreaterThan(0);
    expect(answers.findings.map(({ code }) => code)).toEqual(['spring-dead-centre']);
  });
});

describe('facts', () => {
  const facts = (text: string, part: string): readonly Fact[] => solve(text).facts.filter((fact) => fact.part === part);
  const told = (text: string, part: string, key: string): Fact => {
    const [fact, second] = facts(text, part).filter((each) => each.key === key);
    if (fact === undefined || second !== undefined) throw new Error(`not one ${key}`);
    return fact;
  };

  it('tell the closing torque at rest, least and greatest', () => {
    expect(told(onShaft(TWO), 'shaft', 'closing-at-rest').figure?.value).toBeCloseTo(0.6, 12);
    expect(told(onShaft(TWO), 'shaft', 'closing-least')).toMatchObject({ travel: 0 });
    expect(told(onShaft(TWO), 'shaft', 'closing-greatest').figure?.value).toBeCloseTo(0.6 + 0.004 * FULL, 9);
    expect(told(onShaft(TWO), 'shaft', 'closing-greatest').travel).toBe(1);
  });

  it('tell the pull that the pedal feels, and say that friction is left out', () => {
    const most = told(onShaft(TWO), 'pedal', 'effort-greatest');
    expect(most.figure?.value).toBeCloseTo((600 + 4 * FULL) / 24, 6);
    expect(most.label).toContain('friction left out');
    expect(told(onShaft(TWO), 'pedal', 'effort-at-rest').figure?.value).toBeCloseTo(600 / 24, 9);
  });

  it('say why there is none', () => {
    const unknown = onShaft([STEADY, 'two: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm}']);
    expect(told(unknown, 'shaft', 'closing-at-rest')).toMatchObject({ why: 'the torque of two is not known' });
    expect(told(unknown, 'pedal', 'effort-at-rest').why).toBe('the torque of two is not known');
    expect(facts(onShaft([]).replace('springs:\n', ''), 'shaft').some(({ key }) => key.startsWith('closing'))).toBe(false);
  });
});

describe('what is not known', () => {
  const left = (text: string): readonly string[] => solve(text).notChecked.map(({ part, message }) => `${part}: ${message}`);
  const said = (text: string, part: string, words: string): void =>
    expect(
      left(text).filter((line) => line.startsWith(`${part}: Not checked: `) && line.includes(words)),
      left(text).join('\n'),
    ).toHaveLength(1);

  it('of springs is named with what is missing, and nothing is passed on the strength of the others', () => {
    const endless = onShaft([STEADY, 'tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm}']);
    checkFindings(endless);
    said(endless, 'tail', 'its torque, for want of `free_length`');
    said(endless, 'bank', 'the closing torque of its shaft, since the torque of tail is not known');
    said(endless, 'pedal', 'pedal effort, since the torque of tail is not known');
  });

  it('of a file without springs is what closes it', () => {
    const bare = onShaft([]).replace('springs:\n', '');
    checkFindings(bare);
    said(bare, 'bank', 'what closes its shaft, since the file describes no springs');
    said(bare, 'pedal', 'pedal effort, since the file describes no springs');
  });

  it('of a spring that cannot be read leaves closing undecided instead of counting the others', () => {
    const broken = onShaft([STEADY, 'two: {lever: shaft, rate: soft, preload: 300 N*mm}']);
    const answers = solve(broken);
    expect(answers.problems.length).toBeGreaterThan(0);
    expect(answers.findings).toEqual([]);
    said(broken, 'bank', 'since a spring of the file is not understood');
    const [requirement] = solve(`${broken}require: {closes: min(shaft.closing) > 0 N*mm}\n`).requirements;
    expect(requirement?.outcome).toBe('undecided');
    const all = solve(onShaft([]).replace('springs:\n', 'springs: soft\n'));
    expect(all.findings).toEqual([]);
    expect(all.notChecked.some(({ message }) => message.includes('a spring of the file is not understood'))).toBe(true);
  });

  it('of parts on a lever that the pedal does not move', () => {
    const loose = onShaft([...TWO, 'three: {lever: loose, rate: 1 N*mm/deg}'])
      .replace('levers:\n', 'levers:\n  loose: {pivot: [300, 0]}\n')
      .replace('plates: {', 'plates: {other: {lever: loose, bore: 40}, ')
      .concat('sensors: {tps: {lever: loose, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}\n');
    said(loose, 'three', 'whether it closes the throttle, since the pedal does not move loose');
    said(loose, 'other', 'open area, closing torque and step, since the pedal does not move loose');
    said(loose, 'tps', 'signal and range, since the pedal does not move loose');
    const { findings, problems } = solve(loose);
    expect(findings).toEqual([]);
    expect(problems.map(({ code, severity }) => `${severity} ${code}`)).toEqual(['error not-driven']);
  });

  it('of sensors, plates, pedal and movements', () => {
    const text = onShaft(TWO, { plates: 'plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg, vacuum: 60 kPa}}\n' })
      .concat(`  tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: 30 mm}
sensors: {tps: {lever: shaft, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.2 V, 3 V], supply: 3.3 V}}
movements: {rock: {moves: [tail.from], shift: [0, 2, 0]}}
`);
    expect(solve(text).findings).toEqual([]);
    said(text, 'tps', 'whether it is turned past its own stops, for want of `mechanical`');
    said(text, 'tps', 'whether its signal is taken for a fault');
    said(text, 'bank', 'what `vacuum` adds to the closing torque');
    said(
      text,
      'shaft',
      'friction of its drag and its bearing, on which the vacuum presses the plates, for want of `friction` and `bearing`',
    );
    said(text, 'main', 'friction of its housing, for want of `bend` and `friction`');
    said(text, 'pedal', 'how fast it snaps back');
    said(text, 'tail', 'what the movement rock does to its torque');
  });

  it('of a pedal without a pad is its effort', () => {
    const text = (pad: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 200, angle: -90}}, stops: {open: 60 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg${pad}}
plates: {bank: {lever: pedal, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: pedal, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: pedal, rate: 2 N*mm/deg, preload: 300 N*mm}
`;
    said(text(''), 'pedal', 'pedal effort, for want of `pad`');
    expect(left(text(', pad: pad')).filter((line) => line.includes('pedal effort'))).toEqual([]);
  });

  it('of forces behind a cable that stretches without a stiffness is told with its stretch of the pedal', () => {
    const text = (stiffness: string): string => `format: 1
levers:
  near: {pivot: [100, 0], drums: {in: {radius: 24, wraps: counterclockwise}, out: {radius: 24, wraps: counterclockwise}}, stops: {open: 60 deg}}
  far: {pivot: [300, 0], drums: {in: {radius: 24, wraps: counterclockwise}}, stops: {open: 50 deg}}
pedal: {cable: main, pull: 25.13 mm}
cables:
  main: {enters: [40, 24], to: near.in, stiffness: 50 N/mm}
  on: {from: near.out, leaves: [160, 24], enters: [240, 24], to: far.in${stiffness}}
plates: {bank: {lever: near, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: far, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: near, rate: 2 N*mm/deg, preload: 300 N*mm}
`;
    said(text(''), 'bank', 'the closing torque of its shaft from 83.3 % to 100 % of pedal travel');
    said(text(''), 'pedal', 'pedal effort from 83.3 % to 100 %');
    expect(left(text(', stiffness: 50 N/mm')).filter((line) => line.includes('83.3 %'))).toEqual([]);
  });
});
