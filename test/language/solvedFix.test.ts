/** Fixes that solve for a figure: each is worked out only when asked for, passes, and says what comes of it. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ruleNameOf, takeDocApart } from '../../scripts/ruleDocs.mjs';
import { applyEdits } from '../../src/definition/edit.ts';
import { FINDING_CODES, type FindingCode } from '../../src/findings/codes.ts';
import { boundsFor } from '../../src/language/fixBounds.ts';
import { offeredFixes } from '../../src/language/offeredFixes.ts';
import { solveFix } from '../../src/language/solvedFix.ts';
import { solve } from '../../src/solve.ts';
import { atCursor, checkSolvedFix, offeredAt, solvedAt } from '../support/checkFix.ts';
import { foundBy } from '../support/foundBy.ts';
import { BANK, parallel, wound } from '../support/fixFiles.ts';

const DEGREE = Math.PI / 180;

const example = (name: string): string => readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');
const FOUR = example('four-barrel');
const TWO = example('two-banks');

describe('rod length for rest', () => {
  const title = 'Solve for the length of link so that shaft closes';
  const result = 'Lengthen link to 100 mm: shaft closes';

  it('meets both closed stops', () => {
    // Two equal arms drawn alike: the rod is as long as the pivots are apart.
    checkSolvedFix(parallel(', length: 99.5$0 mm'), parallel(', length: 100 mm'), title, result);
  });

  it('keeps tolerance, comment, quotes, unit and CRLF', () => {
    const dressed = (length: string): string => `\ufeff${parallel(`, length: ${length}`)}`.replaceAll('\n', ' # rod\r\n');
    checkSolvedFix(dressed("'99.5$0 mm ± 0.2 mm'"), dressed("'100 mm ± 0.2 mm'"), title, result);
    // 100 mm to a ten-thousandth of an inch, finer than 0.01 mm; the shaft then stands open by less than 0.001°.
    const { answers, cursor } = atCursor(dressed('3.917$0 inch'));
    const [offer] = offeredFixes(answers, cursor);
    const solved = offer && solveFix(answers, offer);
    expect(solved).toMatchObject({
      kind: 'solved',
      title: expect.stringMatching(/^Lengthen link to 3\.937\d* inch: shaft closes$/) as string,
    });
  });

  it('offers the `let` that the length follows from', () => {
    const text = (half: string): string => parallel(', length: 2 * $0half', `let: {half: ${half}} # by eye\n`);
    checkSolvedFix(
      text('49.75 mm'),
      text('50 mm').replace('$0', ''),
      'Solve for `half` so that shaft closes',
      'Set `half` to 50 mm: shaft closes',
    );
  });

  it('offers nothing where the length follows from several', () => {
    expect(offeredAt(parallel(', length: one + $0other', 'let: {one: 49 mm, other: 50.5 mm}\n'))).toEqual([]);
  });
});

describe('full opening', () => {
  const short = FOUR.replace('crank_reach: 38 mm', 'crank_reach: 35 mm');
  const titles = [
    'Solve for `crank_reach` so that shaft opens fully',
    'Solve for `shaft_reach` so that shaft opens fully',
    'Solve for the length of link so that shaft opens fully',
    "Solve for the pedal's travel so that shaft opens fully",
  ];
  const at = short.replace('open: 82 deg', 'open: 82$0 deg');

  it('is offered by either arm, by the rod and by the pedal', () => {
    expect(offeredAt(at)).toEqual(titles);
  });

  it('lengthens the driving arm or shortens the driven one, and keeps the tolerance of the `let`', () => {
    for (const [title, name, before] of [
      [titles[0], 'crank_reach', '35 mm'],
      [titles[1], 'shaft_reach', '32 mm'],
    ] as const) {
      const solved = solvedAt(at, title ?? '');
      if (solved.kind !== 'solved') throw new Error(solved.reason);
      expect(solved.mends).toBe(true);
      const after = applyEdits(short, solved.edits);
      expect(after).toBe(short.replace(`${name}: ${before} ± 0.1 mm`, `${name}: ${written(solved.value)} mm ± 0.1 mm`));
      expect(solved.title).toBe(`Set \`${name}\` to ${written(solved.value)} mm: shaft opens ${opening(after)}`);
    }
  });

  it('says why a rod of another length is no cure: the cable would hold the linkage open', () => {
    const solved = solvedAt(at, titles[2] ?? '');
    expect(solved).toMatchObject({
      kind: 'unsolved',
      reason: expect.stringContaining('longer than drawn: the cable main is tight at rest') as string,
    });
  });

  it('gives the rod a length, written anew at the end of its block, where the cable has slack for it', () => {
    const text = FOUR.replace('crank_reach: 38 mm', 'crank_reach: 36.8 mm')
      .replace('slack: 1 mm', 'slack: 2 mm')
      .replace('travel: 27 deg', 'travel: 27.5 deg');
    const ends = 'ends: {kind: rod_end, misalignment: 12 deg, pin: 6 mm, friction: 0.1}\n';
    checkSolvedFix(
      text.replace('open: 82 deg', 'open: 82$0 deg'),
      text.replace(ends, `${ends}    length: 110.24 mm\n`),
      'Solve for the length of link so that shaft opens fully',
      'Lengthen link to 110.24 mm: shaft opens 82°',
    );
  });

  it('takes a smaller drum or more pull', () => {
    const stop = 'stops: {closed: 0 deg, open: 82$0 deg}';
    // 32.2 mm of pull after the slack, over 82° less half of the 0.1° that counts as full: 22.512 mm, rounded to the side that opens.
    checkSolvedFix(
      wound(stop, BANK),
      wound(stop.replace('$0', ''), BANK).replace('radius: 24 mm', 'radius: 22.51 mm'),
      'Solve for the radius of the drum shaft.wheel so that shaft opens fully',
      'Reduce the drum shaft.wheel to 22.51 mm: shaft opens 82°',
    );
    checkSolvedFix(
      wound(stop, BANK),
      wound(stop.replace('$0', ''), BANK).replace('pull: 33.2 mm', 'pull: 35.33 mm'),
      "Solve for the pedal's pull so that shaft opens fully",
      "Lengthen the pedal's pull to 35.33 mm: shaft opens 82°",
    );
  });

  it('ends at the length that a rod in its adjuster can have', () => {
    const { definition } = solve(FOUR);
    if (definition === undefined) throw new Error('it should be understood');
    expect(boundsFor(definition, 'rods.link.length', 'length', 0.11)).toEqual({ from: 0.104, to: 0.116 });
    const arm = boundsFor(definition, 'levers.shaft.arms.arm.radius', 'length', 0.01);
    expect(arm.from).toBe(1e-6);
    expect(arm.to).toBeCloseTo(0.03, 12);
    expect(boundsFor(definition, 'cables.main.slack', 'length', 0).from).toBe(0);
    expect(boundsFor(definition, 'let.crank_reach', 'length', 0.001).from).toBe(1e-6);
    expect(boundsFor(definition, 'sensors.position.at_closed', 'angle', 0)).toEqual({ from: -60 * DEGREE, to: 60 * DEGREE });
  });

  it('tells the nearest that can be reached where nothing reaches', () => {
    const text = example('binding-broken').replace('open: 82 deg', 'open: 82$0 deg');
    expect(solvedAt(text, 'Solve for the radius of shaft.arm so that shaft opens fully')).toEqual({
      kind: 'unsolved',
      // 30 mm, 20 mm up and down.
      reason: 'No value of the radius of shaft.arm between 10 mm and 50 mm does it; 50 mm comes nearest: shaft opens 78.2°',
    });
    const there = solve(text.replace('$0', '').replace('radius: 30 mm', 'radius: 50 mm'));
    expect(foundBy(there, 'opening-missed')[0]?.message).toContain('shaft opens 78.2° at most');
  });
});

describe('the stop for 90° of plate', () => {
  // 36 mm of pull, less 1 mm of slack, on 24 mm: 83.6°, past the 82.5° at which the plates stand square.
  const past = (open: string, bank = BANK, lets = ''): string =>
    wound(`stops: {closed: 0 deg, open: ${open}}`, bank).replace('pull: 33.2 mm', 'pull: 36 mm').replace('levers:', `${lets}levers:`);
  const title = 'Solve for the open stop of shaft so that the plates bank stand square at most';

  it('comes down to 90° less seat and idle', () => {
    const result = 'Set the open stop of shaft to 82.5 deg: the plates bank stand square at most';
    const { code } = checkSolvedFix(past('9$00 deg'), past('82.5 deg'), title, result);
    expect(code).toBe('plate-past-square');
  });

  it('comes down by the `let` that it follows from', () => {
    const { code } = checkSolvedFix(
      past('2 * h$0alf', BANK, 'let: {half: 45 deg}\n'),
      past('2 * half', BANK, 'let: {half: 41.25 deg}\n'),
      'Solve for `half` so that the plates bank stand square at most',
      'Set `half` to 41.25 deg: the plates bank stand square at most',
    );
    expect(code).toBe('plate-past-square');
  });

  it('rounds down where 90° less seat and idle is no round figure', () => {
    const solved = solvedAt(past('9$00 deg', BANK.replace('seat: 6 deg', 'seat: 6.0042 deg')), title);
    expect(solved).toMatchObject({ kind: 'solved', value: expect.closeTo(82.49 * DEGREE, 12) as number });
  });

  it('is offered too where a stop beyond 90° is not reached', () => {
    const other = title.replace('plates bank', 'plates on shaft');
    const missed = wound('stops: {closed: 0 deg, open: 8$04 deg}', BANK).replace('24 mm', '22 mm');
    expect(offeredAt(missed)).toContain(other);
    expect(solvedAt(missed, other)).toMatchObject({ kind: 'solved', value: 82.5 * DEGREE });
  });

  it('is not offered where the stop stands at 90° or before, nor where there are no plates', () => {
    for (const open of ['82.5', '82', '40'])
      expect(offeredAt(FOUR.replace('open: 82 deg', `open: ${open}$0 deg`)).join()).not.toContain('square');
    expect(offeredAt(wound('stops: {closed: 0 deg, open: 12$00 deg}'))).toEqual([]);
  });
});

describe('landing before the stop', () => {
  const early = (drum: string, pull: string): string =>
    wound('stops: {closed: 0 deg, open: 8$02 deg}', BANK)
      .replace('radius: 24 mm', `radius: ${drum}`)
      .replace('pull: 33.2 mm', `pull: ${pull}`);

  it('takes less pull or a larger drum, until no more is left than a cable may stretch', () => {
    // 1 mm of slack, 24 mm × 82° of drum, and 2 mm of stretch: 37.348 mm.
    expect(1 + 24 * 82 * DEGREE + 2).toBeCloseTo(37.348, 3);
    const goal = 'so that the pedal lands before it stretches or bends anything';
    const after = (drum: string, pull: string): string => early(drum, pull).replace('$0', '');
    const result = 'main stretches by 1.99 mm';
    expect(offeredAt(early('24 mm', '39 mm'))[0]).toBe(`Solve for the pedal's pull ${goal}`);
    const less = solvedAt(early('24 mm', '39 mm'), `Solve for the pedal's pull ${goal}`);
    expect(less).toMatchObject({ kind: 'solved', mends: true, title: `Shorten the pedal's pull to 37.34 mm: ${result}` });
    expect(less.kind === 'solved' && applyEdits(after('24 mm', '39 mm'), less.edits)).toBe(after('24 mm', '37.34 mm'));
    const larger = solvedAt(early('24 mm', '39 mm'), `Solve for the radius of the drum shaft.wheel ${goal}`);
    expect(larger).toMatchObject({ kind: 'solved', mends: true, title: `Enlarge the drum shaft.wheel to 25.16 mm: ${result}` });
    expect((39 - 3) / (82 * DEGREE)).toBeCloseTo(25.154, 3);
  });

  it('is not asked of a stretch that is only noted', () => {
    expect(offeredAt(early('24 mm', '36 mm'))).toEqual([]);
  });
});

describe('clocking', () => {
  it('keeps transmission and drive angle, rounded to the side that passes', () => {
    const text = (angle: string, drive: string, travel: string): string =>
      parallel('')
        .replace('arm: {radius: 40 mm, angle: 60 deg}', `arm: {radius: 40 mm, angle: ${angle}}`)
        .replace('out: {radius: 40 mm, angle: 60 deg}', `out: {radius: 40 mm, angle: ${drive}}`)
        .replace('travel: 78 deg', travel)
        .replace('rods:\n  link', 'rods:\n  li$0nk');
    const transmission = solvedAt(
      text('60 deg', '60 deg', 'travel: 90 deg'),
      'Solve for the angle of shaft.arm so that link keeps its transmission angle',
    );
    expect(transmission).toMatchObject({
      kind: 'solved',
      mends: true,
      title: expect.stringMatching(/^Clock shaft\.arm to .*: transmission angle of link 40/) as string,
    });
    const drive = solvedAt(
      text('90 deg', '30 deg', 'travel: 40 deg'),
      'Solve for the angle of pedal.out so that link keeps its drive angle',
    );
    expect(drive).toMatchObject({
      kind: 'solved',
      mends: true,
      title: expect.stringMatching(/^Clock pedal\.out to .*: drive angle of link 20/) as string,
    });
  });

  it('turns the `let` behind an angle', () => {
    const text = parallel('', 'let: {clocking: 30 deg}\n')
      .replace('arm: {radius: 40 mm, angle: 60 deg}', 'arm: {radius: 40 mm, angle: clocking * 2}')
      .replace('travel: 78 deg', 'travel: 90 deg')
      .replace('rods:\n  link', 'rods:\n  li$0nk');
    const solved = solvedAt(text, 'Solve for `clocking` so that link keeps its transmission angle');
    expect(solved).toMatchObject({
      kind: 'solved',
      mends: true,
      title: expect.stringMatching(/^Set `clocking` to 2\d\.\d+ deg: /) as string,
    });
  });
});

describe('sensor, spring and slack', () => {
  const sensor = (at: string): string =>
    wound(
      'opens: counterclockwise',
      `sensors:\n  tps: {lever: shaft, at_closed: ${at}, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], mechanical: [-5 deg, 115 deg]}\n`,
    );

  it('puts a sensor into its range', () => {
    // 32.2 mm on 24 mm are 76.87°; 110° less that and 0.01° of margin.
    checkSolvedFix(
      sensor('3$05 deg'),
      sensor('33.12 deg'),
      'Solve for `at_closed` of tps so that tps stays within its range',
      'Turn tps on its spindle to 33.12 deg: tps turns to 110° at most',
    );
    expect(76.87 + 33.12).toBeCloseTo(110 - 0.01, 2);
    checkSolvedFix(
      sensor('4$00 deg'),
      sensor('33.12 deg'),
      'Solve for `at_closed` of tps so that tps stays off its stops',
      'Turn tps on its spindle to 33.12 deg: tps turns to 110° at most',
    );
  });

  it('turns the `let` behind its place', () => {
    const text = (base: string): string => sensor('base$0 + 20 deg').replace('levers:', `let: {base: ${base}}\nlevers:`);
    const title = 'Solve for `base` so that tps stays within its range';
    checkSolvedFix(text('15 deg'), text('13.12 deg').replace('$0', ''), title, 'Set `base` to 13.12 deg: tps turns to 110° at most');
  });

  it('brings a signal out of what is taken for a fault, by the `let` behind the place too', () => {
    const text = (place: string): string =>
      sensor(place).replace('[0.5 V, 4.5 V]', '[0.2 V, 4.8 V]').replace('levers:', 'let: {base: 5 deg}\nlevers:');
    // 0.5 V stands 0.3 V of 4.6 V, so 7.174° of 110°, above the start.
    expect((0.3 / 4.6) * 110).toBeCloseTo(7.174, 3);
    const goal = 'so that the signal of tps is never taken for a fault';
    expect(solvedAt(text('$05 deg'), `Solve for \`at_closed\` of tps ${goal}`)).toMatchObject({
      title: 'Turn tps on its spindle to 7.18 deg: tps gives 0.5 V at rest',
    });
    // The end: 4.5 V stands as far below 110°, and the rotor turns by 76.87°; a hundredth of margin.
    expect(solvedAt(text('$030 deg'), `Solve for \`at_closed\` of tps ${goal}`)).toMatchObject({
      title: 'Turn tps on its spindle to 25.94 deg: tps gives 4.499 V at 100 % of pedal travel',
    });
    expect(110 - (0.3 / 4.6) * 110 - 32.2 / 24 / DEGREE - 0.01).toBeCloseTo(25.944, 3);
    expect(solvedAt(text('base $0+ 0 deg'), `Solve for \`base\` ${goal}`)).toMatchObject({
      title: 'Set `base` to 7.18 deg: tps gives 0.5 V at rest',
    });
  });

  it('winds a spring until the shaft closes everywhere, the one that is there or another', () => {
    const springs = (first: string, second: string): string =>
      wound(
        'opens: counterclockwise',
        `${BANK}springs:\n  first: {lever: shaft, rate: 2 N*mm/deg, preload: ${first}}\n  second: {lever: shaft, rate: 1 N*mm/deg${second}}\n`,
      ).replace('  shaft:\n', '  sha$0ft:\n');
    const before = springs('0 N*mm', '');
    expect(atCursor(before).answers.findings.map(({ code }) => code)).toContain('closing-lost');
    const offers = offeredAt(before).filter((title) => title.includes('preload'));
    expect(offers).toEqual([
      'Solve for the preload of first so that the springs close shaft',
      'Solve for the preload of second so that the springs close shaft',
    ]);
    // 3 N·mm/deg over 76.87° are 230.6 N·mm at full pedal, of which a tenth is 23.06.
    checkSolvedFix(
      before,
      springs('23 N*mm', '').replace('$0', ''),
      offers[0] ?? '',
      'Raise the preload of first to 23 N*mm: shaft closes with 23 N·mm or more (but then single-return-spring)',
    );
    checkSolvedFix(
      before,
      springs('0 N*mm', ', preload: 23 N*mm').replace('$0', ''),
      offers[1] ?? '',
      'Raise the preload of second to 23 N*mm: shaft closes with 23 N·mm or more (but then single-return-spring)',
    );
  });

  it('gives a tight cable slack, by the `let` behind it too', () => {
    // A stop at −4° lets a drum of 20 mm come back by 1.396 mm; with a hundredth to spare 1.406 mm.
    const tight = (slack: string, lets = ''): string =>
      `format: 1\n${lets}levers:\n  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20 mm, wraps: counterclockwise}}, stops: {closed: -4 deg, open: 60 deg}}\npedal: {cable: main, pull: 20 mm}\ncables:\n  main: {enters: [40, 20], to: shaft.wheel, slack: ${slack}}\n`;
    expect(20 * 4 * DEGREE).toBeCloseTo(1.396, 3);
    checkSolvedFix(
      tight('$01 mm'),
      tight('1.41 mm'),
      'Solve for the slack of main so that main is loose at rest',
      'Raise the slack of main to 1.41 mm: main is loose at rest',
    );
    checkSolvedFix(
      tight('gap $0/ 2', 'let: {gap: 1 mm}\n'),
      tight('gap / 2', 'let: {gap: 2.81 mm}\n'),
      'Solve for `gap` so that main is loose at rest',
      'Set `gap` to 2.81 mm: main is loose at rest',
    );
  });
});

describe('every rule whose finding carries a mend', () => {
  const examples = FINDING_CODES.map((code) => [code, exampleOf(code)] as const).filter(([code, text]) =>
    solve(text).findings.some((finding) => finding.code === code && finding.mend !== undefined),
  );

  it.each(examples)('%s: is gone by the fix', (code, text) => {
    const answers = solve(text);
    for (const finding of answers.findings.filter((each) => each.code === code && each.mend !== undefined)) {
      const offer = offeredFixes(answers, finding.span).find((each) => each.code === code && each.part === finding.part);
      expect(offer?.figure).toBe(finding.mend?.unknown);
      const solved = offer && solveFix(answers, offer);
      expect(solved).toMatchObject({ kind: 'solved', mends: true });
      const after = solved?.kind === 'solved' ? solve(applyEdits(text, solved.edits)) : answers;
      expect(
        after.findings.filter(({ code: left, part, severity }) => left === code && part === finding.part && severity !== 'note'),
      ).toEqual([]);
    }
  });
});

function exampleOf(code: FindingCode): string {
  return takeDocApart(readFileSync(new URL(`../../src/findings/rules/${ruleNameOf(code)}.ts`, import.meta.url), 'utf8')).example;
}

describe('two shafts', () => {
  it('rest in step again', () => {
    const text = TWO.replace('to: rear.arm\n', 'to: rear.arm\n    length: 92$0 mm\n');
    const solved = solvedAt(text, 'Solve for the length of rear_link so that front closes');
    expect(solved).toMatchObject({ kind: 'solved', mends: true });
  });
});

function written(si: number): string {
  return String(Number((si * 1000).toFixed(4)));
}

function opening(text: string): string {
  const { study, table } = solve(text);
  expect(study).toBeDefined();
  const values = table(
    Array.from({ length: 1001 }, (_, i) => i / 1000),
    ['shaft.opening'],
  ).columns[0]?.values;
  return `${String(Number(Math.max(...(values ?? []).filter((value) => value !== null)).toFixed(1)))}°`;
}
