/** Everything that keeps a requirement from being decided, each with its reason; and what does not. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { checkRequirements, decideOne, degrees, GEARED } from '../support/checkRequirements.ts';

/** A shaft whose rod cannot follow the pedal to the end. */
const SHORT = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 25, angle: 60}}, opens: counterclockwise}
pedal: {lever: pedal, opens: counterclockwise, travel: 120}
rods: {link: {from: pedal.out, to: shaft.arm}}
`;

describe('a requirement cannot be decided where', () => {
  it('a column stands at no pedal position', () => {
    checkRequirements(`
      a: shaft.opening > 3 deg
      # not decidable: \`shaft.opening\` has a value at every pedal position; write \`at(…, shaft.opening)\`, \`min(shaft.opening)\` or \`max(shaft.opening)\`
      b: max(shaft.opening, 3 deg) > 3 deg
      # not decidable: \`shaft.opening\` has a value at every pedal position; write \`at(…, shaft.opening)\`, \`min(shaft.opening)\` or \`max(shaft.opening)\`
      c: at(pedal.travel, shaft.opening) > 3 deg
      # not decidable: \`pedal.travel\` has a value at every pedal position; write \`at(…, pedal.travel)\`, \`min(pedal.travel)\` or \`max(pedal.travel)\`
    `);
  });

  it('a position lies beyond the travel', () => {
    checkRequirements(`
      a: at(share * 4.8, shaft.opening) > 3 deg
      # not decidable: \`at\` asks for 120 %, beyond the pedal travel, which ends at 100 %
      b: at(share - 30%, shaft.opening) < 3 deg
      # not decidable: \`at\` asks for -5 %, before the pedal travel begins
      c: at(share * 8, shaft.opening > 3 deg)
      # not decidable: \`at\` asks for 200 %, beyond the pedal travel, which ends at 100 %
      d: at(4 * share, shaft.opening) > 3 deg
      # passed: 80° > 3° (77° to spare, at 100 %)
      e: at(4.000000001 * share, shaft.opening) > 3 deg
      # passed: 80° > 3° (77° to spare, at 100 %)
      f: at(4.000000012 * share, shaft.opening) > 3 deg
      # not decidable: \`at\` asks for 100.0000003 %, beyond the pedal travel, which ends at 100 %
      g: at(-0.000000001 * share, shaft.opening) < 3 deg
      # passed: 0° < 3° (3° to spare, at 0 %)
    `);
  });

  it('a column is not solved', () => {
    checkRequirements(
      `
      a: max(pedal.rotation) < 3 deg
      # not decidable: pedal.rotation is not computed by this version
      b: at(0, pedal.rotation) < 3 deg
      # not decidable: pedal.rotation is not computed by this version
      c: where(pedal.rotation > 0) < 30 %
      # not decidable: pedal.rotation is not computed by this version
      d: max(stray.opening) < 3 deg
      # not decidable: stray.opening is not known: nothing that is understood moves \`stray\`
    `,
      { figures: { 'pedal.rotation': null } },
    );
  });

  it('the file lacks what a force is computed from', () => {
    const sprung = `${GEARED}springs: {one: {lever: shaft, rate: 1 N*mm/deg}}\n`;
    checkRequirements(`
      a: min(shaft.closing) > 0 N*mm
      # not decidable: shaft.closing is not known: the file describes no springs
      b: max(pedal.effort) < 30 N
      # not decidable: pedal.effort is not known: the file describes no springs
    `);
    const effort = decideOne('max(pedal.effort) < 30 N', { file: sprung });
    expect(effort.reason).toBe('pedal.effort is not known: the pedal has no `pad`');
    expect(decideOne('min(shaft.closing) >= 0 N*mm', { file: sprung }).outcome).toBe('passed');
  });

  it('a column of the drive is not solved, whatever lever is called pedal', () => {
    const file = GEARED.replace('lever: pedal', 'lever: foot').replace('from: pedal', 'from: foot').replace('stray:', 'foot:');
    expect(decideOne('max(pedal.release) < 3 N', { file }).reason).toBe('pedal.release is not known: the file describes no springs');
    expect(decideOne('max(pedal.opening) < 3 deg', { file }).reason).toBe(
      'pedal.opening is not known: nothing that is understood moves `pedal`',
    );
  });

  it('it is not understood, which is told once, as a problem', () => {
    const file = `${GEARED}require:\n  a: max(shaft.opning) > 3 deg\n  b: 80 deg\n`;
    const answers = solve(file);
    expect(answers.requirements.map(({ outcome, reason, comparisons }) => ({ outcome, reason, comparisons }))).toEqual(
      [1, 2].map(() => ({ outcome: 'undecided', reason: 'It is not understood; see the problem with its text', comparisons: [] })),
    );
    expect(answers.problems.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual([
      'unknown-name',
      'formula-dimension',
    ]);
  });

  it('it uses a value that is not understood', () => {
    const file = GEARED.replace('reach: 38 mm', 'reach: 38 mmm');
    expect(decideOne('max(shaft.opening) > reach / 1 m * 1 deg', { file })).toMatchObject({
      outcome: 'undecided',
      reason: 'It uses a value or a part that is not understood',
    });
  });

  it('its part is not understood', () => {
    const file = GEARED.replace('opens: counterclockwise}\n  stray', 'opens: counterclockwise, stops: {open: 70 degg}}\n  stray');
    expect(decideOne('max(shaft.opening) >= 80 deg', { file })).toMatchObject({
      outcome: 'undecided',
      reason: 'shaft.opening is not known: `couplings.gear` is not understood',
    });
  });

  it('a value on which it rests is not understood and the part was solved without it', () => {
    const friction = GEARED.replace('[0, 0]', '[0, 0], friction: 3 Nm');
    expect(decideOne('max(shaft.opening) >= 80 deg', { file: friction }).outcome).toBe('passed');
    expect(decideOne('max(shaft.closing) >= 0', { file: friction }).reason).toBe(
      'shaft.closing is not known: `levers.pedal.friction` is not understood',
    );
    const idle = `${GEARED}plates: {bank: {lever: shaft, bore: 40, idle: 2 degg}}\n`;
    expect(decideOne('max(shaft.opening) >= 80 deg', { file: idle }).outcome).toBe('passed');
    expect(decideOne('max(bank.fraction) >= 1 %', { file: idle }).reason).toBe(
      'bank.fraction is not known: `plates.bank.idle` is not understood',
    );
    const ends = SHORT.replace('travel: 120', 'travel: 20').replace('shaft.arm}', 'shaft.arm, ends: {kind: rod_emd}}');
    expect(decideOne('max(link.transmission) >= 1 deg', { file: ends }).outcome).toBe('passed');
    expect(decideOne('max(link.misalignment) >= 0 deg', { file: ends }).reason).toBe(
      'link.misalignment is not known: `rods.link.ends` is not understood',
    );
    const spring = `${GEARED}springs: {back: {lever: shaft, rate: 2, counts_as_return: perhaps}}\n`;
    expect(decideOne('max(shaft.opening) >= 80 deg', { file: spring }).outcome).toBe('passed');
    expect(decideOne('min(shaft.closing) > 3 N*mm', { file: spring }).reason).toBe(
      'shaft.closing is not known: `springs.back.counts_as_return` is not understood',
    );
  });

  it('nothing could be solved; what speaks of no column is decided all the same', () => {
    const file = GEARED.replace(/pedal: \{lever.*\n/, '');
    checkRequirements(
      `
      a: max(shaft.opening) > 3 deg
      # not decidable: shaft.opening is not known: the linkage could not be solved
      b: where(shaft.opening > 3 deg) > 3 %
      # not decidable: shaft.opening is not known: the linkage could not be solved
      c: reach > 37 mm
      # passed: 38 mm > 37 mm (1 mm to spare)
      d: where(reach > 37 mm) < 3 %
      # passed: 0 % < 3 % (3 % to spare)
    `,
      { file },
    );
  });

  it('a formula has no real value', () => {
    checkRequirements(`
      a: sqrt(at(0, shaft.opening) - 3 deg) > sqrt(3 deg)
      # not decidable: \`sqrt(at(0, shaft.opening) - 3 deg)\` has no real value
      b: 3 deg > 1 deg / (at(0, shaft.opening) / 1 deg)
      # not decidable: \`1 deg / (at(0, shaft.opening) / 1 deg)\` has no real value
      c: max(shaft.opening) * 10^200 * 10^200 > 3 deg
      # not decidable: \`max(shaft.opening) * 10^200 * 10^200\` has no real value
    `);
  });

  it('the linkage does not go that far', () => {
    const answers = solve(`${SHORT}require: {x: 'reach > 3 mm'}\n`);
    const values = answers.table([0, 0.2, 1], ['shaft.opening']).columns[0]?.values;
    expect(values?.[1]).toBeTypeOf('number');
    expect(values?.[2]).toBeNull();
    const { reason = '', outcome } = decideOne('max(shaft.opening) > 3 deg', { file: SHORT });
    expect(outcome).toBe('undecided');
    const [, from = ''] = /^shaft\.opening has no value from ([\d.]+) % to 100 % of pedal travel$/.exec(reason) ?? [reason];
    // The table lacks a value from there, and not before.
    const [before, after] = solve(SHORT).table([Number(from) / 100 - 0.001, Number(from) / 100 + 0.001], ['shaft.opening']).columns[0]
      ?.values ?? [null, null];
    expect(before).not.toBeNull();
    expect(after).toBeNull();
    expect(decideOne('at(100%, shaft.opening) > 3 deg', { file: SHORT }).reason).toBe(reason);
    expect(decideOne('at(20%, shaft.opening) < 300 deg', { file: SHORT }).outcome).toBe('passed');
  });

  it('the pedal has stopped', () => {
    const file = GEARED.replace('opens: counterclockwise}\n  stray', 'opens: counterclockwise, stops: {open: 50 deg}}\n  stray');
    checkRequirements(
      `
      a: max(shaft.opening) > 3 deg
      # not decidable: shaft.opening has no value from 62.5 % to 100 % of pedal travel
      b: at(62.5%, shaft.opening) >= 50 deg
      # passed: 50° ≥ 50° (nothing to spare, at 62.5 %)
      c: at(62.6%, shaft.opening) > 3 deg
      # not decidable: shaft.opening has no value from 62.5 % to 100 % of pedal travel
      d: where(shaft.opening >= 50 deg) <= 63 %
      # passed: 62.5 % ≤ 63 % (0.5 % to spare)
      e: where(shaft.opening >= 51 deg) <= 63 %
      # not decidable: shaft.opening has no value from 62.5 % to 100 % of pedal travel
    `,
      { file },
    );
  });
});

describe('a stretch without a value', () => {
  const gap = (from: number, to: number) => (travel: number) => (travel > from && travel < to ? NaN : degrees(80 * travel));
  const figures = { 'shaft.opening': gap(0.2004, 0.3006) };

  it('matters where it is asked for', () => {
    checkRequirements(
      `
      a: min(shaft.opening) > 3 deg
      # not decidable: shaft.opening has no value from 20 % to 30.1 % of pedal travel
      b: at(25%, shaft.opening) > 3 deg
      # not decidable: shaft.opening has no value from 20 % to 30.1 % of pedal travel
      c: at(20%, shaft.opening) > 3 deg
      # passed: 16° > 3° (13° to spare, at 20 %)
      d: at(30.1%, shaft.opening) > 3 deg
      # passed: 24.1° > 3° (21.1° to spare, at 30.1 %)
    `,
      { figures },
    );
  });

  it('is told in full, though the whole travel was looked at for another column before', () => {
    checkRequirements(
      `
      a: max(pedal.rotation) > 3 deg
      # passed: 40° > 3° (37° to spare, at 100 %)
      b: at(25%, shaft.opening) > 3 deg
      # not decidable: shaft.opening has no value from 20 % to 30.1 % of pedal travel
    `,
      { figures },
    );
  });

  it('matters to `where` before the place where it holds, not after it', () => {
    checkRequirements(
      `
      a: where(shaft.opening > 12 deg) < 20 %
      # passed: 15 % < 20 % (5 % to spare)
      b: where(shaft.opening > 40 deg) < 80 %
      # not decidable: shaft.opening has no value from 20 % to 30.1 % of pedal travel
    `,
      { figures },
    );
  });

  it('within one step is met where a place is searched for', () => {
    const narrow = { 'shaft.opening': gap(0.2004, 0.2006) };
    expect(decideOne('where(shaft.opening >= 16.072 deg) > 0', { figures: narrow })).toMatchObject({
      outcome: 'undecided',
      reason: expect.stringMatching(/^shaft\.opening has no value at 20(\.1)? % of pedal travel$/) as string,
    });
    expect(decideOne('where(shaft.opening >= 15.99 deg) > 0', { figures: narrow }).outcome).toBe('passed');
    const within = (angle: number): string =>
      decideOne(`where(at(pedal.travel, shaft.opening >= ${angle} deg)) > 0`, { figures: narrow }).outcome;
    expect([within(15.99), within(16.072)]).toEqual(['passed', 'undecided']);
  });

  it('at the very end is one too, and several are told', () => {
    checkRequirements(
      `
      a: max(shaft.opening) > 3 deg
      # not decidable: shaft.opening has no value at 0 % and from 50 % to 60 % of pedal travel and at 100 % of pedal travel
      b: max(pedal.rotation) > 3 deg
      # passed: 40° > 3° (37° to spare, at 100 %)
    `.replace('60 % of pedal travel and', '60 % and'),
      { figures: { 'shaft.opening': (travel) => (travel === 0 || travel === 1 || (travel > 0.5 && travel < 0.6) ? NaN : 1) } },
    );
  });

  it('is told alone, where the position lies in one of several', () => {
    const two = (travel: number): number => (Math.abs(travel - 0.15) < 0.05 || Math.abs(travel - 0.55) < 0.05 ? NaN : 1);
    const reasons = [15, 55].map(
      (place) => decideOne(`at(${place}%, shaft.opening) > 3 deg`, { figures: { 'shaft.opening': two } }).reason,
    );
    expect(reasons).toEqual([
      'shaft.opening has no value from 10 % to 20 % of pedal travel',
      'shaft.opening has no value from 50 % to 60 % of pedal travel',
    ]);
  });

  it('that is infinite has no value', () => {
    expect(decideOne('max(shaft.opening) > 3 deg', { figures: { 'shaft.opening': (t) => (t > 0.9 ? Infinity : 1) } })).toMatchObject({
      outcome: 'undecided',
      reason: 'shaft.opening has no value from 90 % to 100 % of pedal travel',
    });
  });
});

describe('what is joined', () => {
  const figures = { 'pedal.rotation': null };
  const open = 'max(pedal.rotation) > 3 deg';
  const yes = 'max(shaft.opening) > 3 deg';
  const no = 'max(shaft.opening) < 3 deg';

  it.each([
    [`${yes} and ${open}`, 'undecided'],
    [`${open} and ${yes}`, 'undecided'],
    [`${no} and ${open}`, 'failed'],
    [`${open} and ${no}`, 'failed'],
    [`${yes} or ${open}`, 'passed'],
    [`${open} or ${yes}`, 'passed'],
    [`${no} or ${open}`, 'undecided'],
    [`${open} or ${no}`, 'undecided'],
    [`not (${open})`, 'undecided'],
    [`not (${yes} and ${open})`, 'undecided'],
    [`not (${no} and ${open})`, 'passed'],
    [`not (${yes} or ${open})`, 'failed'],
    [`not (${no} or ${open})`, 'undecided'],
    [`not (not (${yes}))`, 'passed'],
    [`not (${yes})`, 'failed'],
    [`not (${no})`, 'passed'],
    [`${yes} and ${no}`, 'failed'],
    [`${yes} or ${no}`, 'passed'],
    [`${yes} and ${yes}`, 'passed'],
    [`${no} or ${no}`, 'failed'],
  ])('%s is %s', (expression, outcome) => {
    const answer = decideOne(expression, { figures });
    expect(answer.outcome).toBe(outcome);
    expect(answer.reason).toBe(outcome === 'undecided' ? 'pedal.rotation is not computed by this version' : undefined);
  });

  it('tells of the part that cannot be decided, also where it does not matter', () => {
    const { comparisons } = decideOne(`${yes} or ${open}`, { figures });
    expect(comparisons.map(({ holds, reason }) => [holds, reason])).toEqual([
      [true, undefined],
      [undefined, 'pedal.rotation is not computed by this version'],
    ]);
  });

  it('is decided in `where` by the part that settles it', () => {
    const stretch = { 'pedal.rotation': (travel: number) => (travel < 0.5 ? NaN : 1), 'shaft.opening': (t: number) => degrees(80 * t) };
    expect(decideOne('where(pedal.rotation > 0 or shaft.opening > 20 deg) < 26 %', { figures: stretch }).outcome).toBe('undecided');
    expect(decideOne('where(pedal.rotation > 0 and shaft.opening > 44 deg) > 54.9 %', { figures: stretch }).outcome).toBe('passed');
  });
});
