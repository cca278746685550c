/** Each finding about one part or one stop: a linkage that must raise it, its figure by hand, and a near neighbour that must not. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { checkFindings, marked } from '../support/checkFindings.ts';
import { foundBy } from '../support/foundBy.ts';
import { bisect, degrees, distance, fourBarAt, polar, radians, scan, type Point } from './handGeometry.ts';

describe('tilt of rod ends', () => {
  const file = (ends: string, offset = 10): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60, offset: ${offset}}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods:
  link: {from: pedal.out, to: shaft.arm, ends: ${ends}}
`;
  // Both bolts stand along z and the rod rises by the offset over 100 mm.
  const tilt = (offset: number): number => Math.atan2(offset, 100);

  it('holds each kind of end to its own limit', () => {
    checkFindings(file('{kind: rod_end}'));
    checkFindings(file('{kind: ball_stud}', 26));
    checkFindings(`${file('{kind: rod_end}', 26)}# ^^^^ warning[rod-end-tilt]: an end tilt of 14.6°`);
    const { only } = checkFindings(`${file('{kind: clevis}')}# ^^^^ warning[rod-end-tilt]: 5.71°`);
    expect(only('rod-end-tilt').worst?.value).toBeCloseTo(tilt(10), 12);
    expect(only('rod-end-tilt').limit?.value).toBeCloseTo(radians(1), 12);
  });

  it('takes what the file gives for the ends as what they bear', () => {
    checkFindings(file('{kind: clevis, misalignment: 6 deg}'));
    checkFindings(`${file('{kind: rod_end, misalignment: 5 deg}')}# ^^^^ error[rod-end-tilt]: over 5°`);
  });
});

describe('lead of a cable', () => {
  const file = (along: string): string => `format: 1
levers:
  shaft: {pivot: [100, 0], opens: counterclockwise, arms: {arm: {radius: 40, angle: 250}}}
pedal: {cable: main, pull: 30 mm}
cables:
  main: {enters: [250, -40], enters_along: ${along}, to: shaft.arm}
`;

  it('is the angle of the inner to the way its housing points', () => {
    const housing: Point = [250, -40];
    const drawn = distance(polar([100, 0], 40, 250), housing);
    // The pin comes nearer by the pull.
    const turned = bisect((angle) => drawn - distance(polar([100, 0], 40, 250 + angle), housing) - 30, 0, 80);
    const angleAt = (rotation: number): number => {
      const pin = polar([100, 0], 40, 250 + rotation);
      return Math.atan2(pin[1] - housing[1], -(pin[0] - housing[0]));
    };
    const { only } = checkFindings(`${file('[-1, 0.11]')}# ^^^^ warning[cable-lead]: a lead of`);
    const worst = scan((share) => Math.abs(angleAt(turned * share) - Math.atan(0.11)), -1);
    expect(only('cable-lead').worst?.value).toBeCloseTo(worst.value, 9);
    expect(only('cable-lead').limit?.value).toBeCloseTo(radians(5), 12);
    checkFindings(`${file('[-1, 0.2]')}# ^^^^ error[cable-lead]`);
  });

  it('is no more than half of what the inner sweeps where the housing is set midway', () => {
    checkFindings(file('[-1, 0]').replace('enters_along: [-1, 0], ', ''));
  });
});

describe('full opening', () => {
  const rigid = (travel: number, open: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 49}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 49}}, stops: {closed: 0 deg, open: ${open} deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel} deg}
rods:
  link: {from: pedal.out, to: shaft.arm}
plates:
  bank: {lever: shaft, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
`;
  it('says by how much it is missed', () => {
    const { only } = checkFindings(marked(rigid(80, 82), '82 deg', 'warning[opening-missed]: 2° short of its full 82°'));
    expect(only('opening-missed').worst?.value).toBeCloseTo(radians(80), 12);
    expect(only('opening-missed').limit?.value).toBeCloseTo(radians(82), 12);
  });

  it('says that the linkage takes the foot where no cable gives', () => {
    const { only, answers } = checkFindings(
      marked(rigid(82, 80), '80 deg', 'warning[opening-early]: at 97.6 % of pedal travel: with no cable'),
    );
    expect(only('opening-early').ranges?.[0]?.from).toBeCloseTo(80 / 82, 12);
    // The pedal stops there: nothing has a value beyond.
    for (const { name, values } of answers.table([0.97, 0.98]).columns) {
      expect(values[0], name).not.toBeNull();
      expect(values[1], name).toBe(name === 'pedal.travel' ? 98 : null);
    }
  });

  it('is content where pedal and stop meet together', () => {
    checkFindings(rigid(80, 80));
  });

  it('takes 90° less seat and idle for full where no stop is given', () => {
    const { only } = checkFindings(
      rigid(80, 82).replace(', open: 82 deg', '').replace('pedal: {lever', '# ^^^^^ warning[opening-missed]: full 82.5°\npedal: {lever'),
    );
    expect(only('opening-missed').limit?.value).toBeCloseTo(radians(90 - 6 - 1.5), 12);
  });

  const cabled = (pull: number, stops: string): string => `format: 1
levers:
  first: {pivot: [100, 0], drums: {in: {radius: 20, wraps: counterclockwise}, out: {radius: 25, wraps: counterclockwise}}${stops}}
  second: {pivot: [100, 200], drums: {in: {radius: 30, wraps: counterclockwise}}, stops: {open: 20 deg}}
pedal: {cable: main, pull: ${pull} mm}
cables:
  main: {enters: [40, 20], to: first.in, slack: 1 mm}
  far: {from: first.out, leaves: [40, 40], enters: [40, 190], to: second.in, slack: 2 mm}
`;

  it('says how much of the pedal stretches the cable, a warning from 2 mm on', () => {
    // second stops when its drum has taken 30 × 20°, so first at (2 + that) / 25, and main goes on.
    const met = 1 + (20 * (2 + 30 * radians(20))) / 25;
    const note = checkFindings(marked(cabled(met + 1.5, ''), '20 deg', 'note[opening-early]: far by 1.88 mm'));
    expect(note.only('opening-early').ranges?.[0]?.from).toBeCloseTo(met / (met + 1.5), 11);
    expect(note.only('opening-early').worst?.value).toBeCloseTo((1.5 * 25) / 20 / 1000, 12);
    const warned = checkFindings(marked(cabled(met + 1.7, ''), '20 deg', 'warning[opening-early]: far by 2.12 mm'));
    expect(warned.only('opening-early').worst?.value).toBeCloseTo((1.7 * 25) / 20 / 1000, 12);
    checkFindings(cabled(met, ''));
  });

  it('lets the far group stop first, then the near one, each cable with its own stretch', () => {
    const met = 1 + (20 * (2 + 30 * radians(20))) / 25;
    const stop = 60;
    const own = 1 + 20 * radians(stop);
    const text = cabled(own + 3, `, stops: {open: ${stop} deg}`);
    const answers = solve(text);
    expect(answers.findings.filter(({ code }) => code === 'opening-early').map(({ part }) => part)).toEqual(['first', 'second']);
    const at = (pull: number): readonly (number | null)[] =>
      answers
        .table([pull / (own + 3)], ['main.stretch', 'first.opening', 'far.stretch', 'second.opening'])
        .columns.map(({ values }) => values[0] ?? null);
    const close = (actual: readonly (number | null)[], wanted: readonly number[]): void =>
      wanted.forEach((value, i) => expect(actual[i]).toBeCloseTo(value, 10));
    close(at(met - 1), [0, degrees((met - 2) / 20), 0, degrees(((25 * (met - 2)) / 20 - 2) / 30)]);
    close(at(met + 2), [0, degrees((met + 1) / 20), (25 * 2) / 20, 20]);
    close(at(own + 3), [3, stop, 25 * radians(stop) - 2 - 30 * radians(20), 20]);
  });

  it('tells the stretch of a cable though a stop elsewhere holds the pedal before its end', () => {
    const answers = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}, drums: {wheel: {radius: 20, wraps: counterclockwise}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {open: 50}}
  other: {pivot: [0, 200], drums: {wheel: {radius: 20, wraps: counterclockwise}}, stops: {closed: 0, open: 30}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods:
  link: {from: pedal.out, to: shaft.arm}
cables:
  side: {from: pedal.wheel, leaves: [-50, 30], enters: [-50, 170], to: other.wheel}
`);
    const early = answers.findings.find(({ part }) => part === 'other');
    expect(early).toMatchObject({ code: 'opening-early', severity: 'warning' });
    expect(early?.worst?.value).toBeCloseTo((20 * radians(50 - 30)) / 1000, 12);
    expect(early?.worst?.travel).toBeCloseTo(50 / 60, 12);
  });
});

describe('at rest', () => {
  const twin = (lengths: readonly [string, string], plates: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], drums: {wheel: {radius: 40, wraps: counterclockwise}}}
  crank: {pivot: [200, 0], arms: {left: {radius: 40, angle: 120}, right: {radius: 40, angle: 60}}, drums: {wheel: {radius: 25, wraps: counterclockwise}}}
  one: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 120}}, stops: {closed: 0 deg}}
  two: {pivot: [300, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 20 deg}
cables:
  main: {from: pedal.wheel, leaves: [-60, 40], enters: [150, 26], to: crank.wheel, slack: 1 mm}
limits: {transmission: 1 deg, drive: 1 deg}
rods:
  a: {from: crank.left, to: one.arm${lengths[0]}}
  b: {from: crank.right, to: two.arm${lengths[1]}}
${plates}`;

  // Rod b half a millimetre long pushes two past its stop, unless the crank and with it one stay open.
  const byHand = (length: number): { readonly crank: number; readonly one: number } => {
    const b = { from: [200, 0] as Point, driving: 40, start: 60, to: [300, 0] as Point, driven: 40, end: 60, length };
    const crank = bisect((rotation) => fourBarAt(b, rotation)?.turned ?? NaN, -5, 5);
    const one = fourBarAt({ from: [200, 0], driving: 40, start: 120, to: [100, 0], driven: 40, end: 120 }, crank)?.turned ?? NaN;
    return { crank, one };
  };

  it('says which shaft is held open, by how much, and by the rod that is off its length', () => {
    const { one, crank } = byHand(100.5);
    expect(one).toBeGreaterThan(0.1);
    const { only, answers } = checkFindings(marked(twin(['', ', length: 100.5 mm'], ''), '100.5 mm', 'warning[held-open]: one is held'));
    const held = only('held-open');
    expect(held.part).toBe('one');
    expect(held.worst?.value).toBeCloseTo(radians(one), 11);
    expect(held.message).toContain('by the rod b');
    // As drawn between arms that stand alike, 100 mm apart.
    expect(held.mend).toEqual({ unknown: 'rods.b.length', outcome: { kind: 'itself' }, target: expect.closeTo(0.1, 12) as number });
    expect(held.cure).toBe('Set b to 100 mm, at which both closed stops meet together');
    const [rest] = answers.table([0], ['crank.opening']).columns[0]?.values ?? [];
    expect(rest).toBeCloseTo(crank, 9);
  });

  it('is an error where the shaft held open carries plates', () => {
    const text = twin(['', ', length: 100.5 mm'], 'plates: {bank: {lever: one, bore: 40 mm}}\n');
    const held = solve(text).findings.filter(({ code }) => code === 'held-open');
    expect(held).toMatchObject([{ severity: 'error', part: 'one' }]);
  });

  it('says nothing of a rod written at its drawn length', () => {
    checkFindings(twin(['', ', length: 100 mm'], ''));
  });

  it('lets no row of the table lie below rest, and shortens the slack by what the driven end moved', () => {
    const { crank } = byHand(100.5);
    const answers = solve(twin(['', ', length: 100.5 mm'], ''));
    // 40 mm drum on the pedal, 25 mm drum on the crank, 1 mm of slack and what the crank has moved.
    const moves = degrees((1 + 25 * radians(crank)) / 40) / 20;
    const opening = (travel: number): number => answers.table([travel], ['crank.opening']).columns[0]?.values[0] ?? NaN;
    expect(opening(moves * 0.999)).toBeCloseTo(crank, 9);
    expect(opening(moves + 0.1)).toBeCloseTo(crank + degrees((40 * radians(2)) / 25), 9);
  });

  it('says that a cable without slack left holds the throttle open', () => {
    const file = (closed: number): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20, wraps: counterclockwise}}, stops: {closed: ${closed} deg, open: 60 deg}}
pedal: {cable: main, pull: 20 mm}
cables:
  main: {enters: [40, 20], to: shaft.wheel, slack: 1 mm}
`;
    // The stop lets the drum turn back further than the slack.
    const { only } = checkFindings(marked(file(-4), '1 mm', 'error[slack-used-up]: holds shaft open'));
    expect(only('slack-used-up').worst?.value).toBeCloseTo((20 * radians(4) - 1) / 1000, 12);
    checkFindings(file(-2.8));
  });
});

describe('parts used beyond what they are made for', () => {
  it('says where a drum leaves its profile and its groove', () => {
    const file = (profile: string, groove: number): string => `format: 1
levers:
  shaft:
    pivot: [100, 0]
    drums:
      wheel: {profile: [${profile}], wraps: counterclockwise, groove: ${groove} deg}
pedal: {cable: main, pull: ${20 * radians(60)} mm}
cables:
  main: {enters: [40, 20], to: shaft.wheel}
`;
    // Of one radius throughout: it turns by 60°.
    checkFindings(file('[0 deg, 20], [61 deg, 20]', 60.1));
    const profiled = marked(
      file('[0 deg, 20], [50 deg, 20]', 55),
      '[[0 deg, 20], [50 deg, 20]]',
      'warning[profile-left]: by 10° (from 83.3 % to 100 %',
    );
    const text = marked(profiled, '55 deg', 'error[groove-left]: (from 91.7 % to 100 %');
    const found = checkFindings(text);
    expect(found.only('profile-left').worst?.value).toBeCloseTo(radians(60), 11);
    expect(found.only('profile-left').limit?.value).toBeCloseTo(radians(50), 12);
    expect(found.only('groove-left').worst?.value).toBeCloseTo(radians(60), 11);
    expect(found.only('groove-left').ranges?.[0]?.from).toBeCloseTo(55 / 60, 11);
  });

  it('tells a groove that two cables share once', () => {
    const found = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], drums: {d: {radius: 20, wraps: counterclockwise, groove: 40}}}
  a: {pivot: [100, 200], drums: {q: {radius: 20, wraps: counterclockwise}}}
  b: {pivot: [0, 200], drums: {q: {radius: 20, wraps: counterclockwise}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
cables:
  c: {from: pedal.d, leaves: [-50, 30], enters: [-50, 170], to: a.q}
  e: {from: pedal.d, leaves: [-50, 40], enters: [-50, 170], to: b.q}
`).findings;
    expect(found.map(({ code }) => code)).toEqual(['groove-left']);
  });

  it('says where a pin leaves its fork, at either end', () => {
    const file = (reach: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {tang: {radius: 30, angle: 150}}}
  fork: {pivot: [-10, 40]}
pedal: {lever: pedal, opens: clockwise, travel: 40}
slots:
  pair: {pin: pedal.tang, fork: fork, angle: ${degrees(Math.atan2(15 - 40, 30 * Math.cos(radians(150)) + 10))} deg, reach: [${reach}]}
`;
    const reach = (travel: number): number => distance(polar([0, 0], 30, 150 - 40 * travel), [-10, 40]);
    const [drawn, least] = [reach(0), Math.min(...Array.from({ length: 20_001 }, (_, i) => reach(i / 20_000)))];
    expect(solve(file(`${least - 0.01}, ${drawn + 0.01}`)).findings.filter(({ code }) => code === 'slot-run-out')).toEqual([]);
    const short = solve(file(`${least + 0.5}, 100`)).findings.find(({ code }) => code === 'slot-run-out');
    expect(short?.severity).toBe('error');
    expect(short?.worst?.value).toBeCloseTo(least / 1000, 10);
    expect(short?.limit?.value).toBeCloseTo((least + 0.5) / 1000, 12);
    const long = solve(file(`1, ${drawn - 0.5}`)).findings.find(({ code }) => code === 'slot-run-out');
    expect(long?.worst).toMatchObject({ travel: 0 });
    expect(long?.worst?.value).toBeCloseTo(drawn / 1000, 12);
  });

  it('says that a rod is outside its adjuster', () => {
    const file = (adjust: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods:
  link: {from: pedal.out, to: shaft.arm, length: 100 mm, adjust: ${adjust}}
`;
    checkFindings(file('{min: 100 mm, max: 105 mm}'));
    checkFindings(marked(file('{min: 101 mm, max: 105 mm}'), '100 mm', 'error[rod-out-of-adjustment]: ends at 101 mm'));
    const { only } = checkFindings(marked(file('{max: 99 mm}'), '100 mm', 'error[rod-out-of-adjustment]: ends at 99 mm'));
    expect(only('rod-out-of-adjustment').worst?.value).toBeCloseTo(0.1, 15);
    expect(only('rod-out-of-adjustment').limit?.value).toBeCloseTo(0.099, 15);
  });

  it('points at a place without its third figure on a lever off the plane', () => {
    const file = (at: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0, 8], arms: {out: {at: [20, 34.6, 8]}, spare: {at: ${at}}}}
  shaft: {pivot: [100, 0, 8], arms: {arm: {radius: 40, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods:
  link: {from: pedal.out, to: shaft.arm}
`;
    checkFindings(file('[5, 6, 0]'));
    checkFindings(marked(file('[5, 6]'), '[5, 6]', 'warning[off-plane]: third figure'));
  });
});

describe('movements of the engine', () => {
  const file = (movement: string, slack: number): string => `format: 1
levers:
  shaft: {pivot: [100, 0], opens: clockwise, arms: {arm: {radius: 40, angle: 90}}, stops: {closed: 0 deg}}
pedal: {cable: main, pull: ${24 + slack} mm}
cables:
  main: {enters: [250, 45], to: shaft.arm, slack: ${slack} mm}
plates:
  bank: {lever: shaft, bore: 40 mm, seat: 6 deg, idle: 30 deg}
limits: {lead: 20 deg}
movements:
  rock: ${movement}
`;
  const housing: Point = [250, 45];
  const drawn = distance(polar([100, 0], 40, 90), housing);
  /** Opening with the housing end moved and the cable shortened. */
  const opening = (at: Point, pull: number): number =>
    Math.max(
      0,
      bisect((angle) => distance(polar([100, 0], 40, 90 - angle), at) - drawn + pull, -20, 75),
    );

  it('finds what a housing end that moves alone does at rest and at full pedal', () => {
    const findings = solve(file('{moves: [main.enters], shift: [6, 0]}', 1)).findings.filter(({ code }) => code.startsWith('movement'));
    expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual(['error movement-at-rest', 'note movement-at-full']);
    const moved: Point = [256, 45];
    expect(findings[0]?.worst?.value).toBeCloseTo(radians(opening(moved, -1)), 9);
    expect(findings[1]?.worst?.value).toBeCloseTo(radians(opening(moved, 24) - opening(housing, 24)), 9);
  });

  it('says so where the moved linkage cannot follow the pedal to the floor', () => {
    const findings = solve(file('{moves: [main.enters], shift: [14, 0]}', 1)).findings;
    expect(findings.find(({ code }) => code === 'movement-at-full')).toMatchObject({ severity: 'error', part: 'rock' });
  });

  it('finds nothing where slack takes it and full pedal does not show it', () => {
    expect(solve(file('{moves: [main.enters], shift: [0.001, 0]}', 1)).findings.filter(({ code }) => code.startsWith('movement'))).toEqual(
      [],
    );
  });

  it('finds nothing where shaft and housing end turn together', () => {
    expect(
      solve(file('{moves: [main.enters, shaft], shift: [4, -7], turn: 11 deg, about: [30, 80]}', 1)).findings.filter(({ code }) =>
        code.startsWith('movement'),
      ),
    ).toEqual([]);
  });

  it('turns about a place before it shifts', () => {
    const findings = solve(file('{moves: [main.enters], shift: [3, 0], turn: 1 deg, about: [250, 245]}', 0.5)).findings;
    const at: Point = [250 + 200 * Math.sin(radians(1)) + 3, 245 - 200 * Math.cos(radians(1))];
    expect(findings.find(({ code }) => code === 'movement-at-rest')?.worst?.value).toBeCloseTo(radians(opening(at, -0.5)), 9);
  });

  it('compares where the pedal stops, and blames no movement for what the linkage does not do unmoved', () => {
    const rigid = (rest: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {closed: 0 deg${rest}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods: {link: {from: pedal.out, to: shaft.arm}}
plates: {bank: {lever: shaft, bore: 40 mm, idle: 2 deg}}
movements: {rock: {moves: [shaft], shift: [1, 0]}}
`;
    const full = (text: string): readonly string[] =>
      solve(text)
        .findings.filter(({ code }) => code === 'movement-at-full')
        .map(({ severity }) => severity);
    // Held by its stop either way, though the pedal gets there at another place.
    expect(full(rigid(', open: 55 deg'))).toEqual([]);
    expect(full(rigid(''))).toEqual(['note']);
    const bound = rigid('').replace('radius: 40, angle: 60}}}', 'radius: 80, angle: 60}}}').replace('travel: 60', 'travel: 170');
    expect(foundBy(solve(bound), 'not-assembled')).toHaveLength(1);
    expect(full(bound)).toEqual([]);
  });

  it('tells that a drum moved away from its housing end is pulled, and one moved with it or towards it is not', () => {
    const text = (moves: string): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20, wraps: counterclockwise}}}
pedal: {cable: main, pull: 20 mm}
cables:
  main: {enters: [40, 20], to: shaft.wheel}
plates: {bank: {lever: shaft, bore: 45, idle: 2}}
movements: {rock: {moves: [${moves}], shift: [6, 0]}}
`;
    const opened = (moves: string): number | undefined =>
      solve(text(moves)).findings.find(({ code }) => code === 'movement-at-rest')?.worst?.value;
    expect(opened('shaft')).toBeCloseTo(6 / 20, 10);
    expect(opened('main.enters')).toBeUndefined();
    expect(opened('shaft, main.enters')).toBeUndefined();
  });
});
