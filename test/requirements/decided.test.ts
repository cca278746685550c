/** What requirements say of the travel, and with which figures. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { checkRequirements, compareOne, decideOne, degrees, GEARED } from '../support/checkRequirements.ts';

const TRIANGLE = (travel: number): number => degrees(80 - 100 * Math.abs(travel - 0.4));

describe('a requirement on the travel', () => {
  it('takes `max` and `min` over it, and says where', () => {
    checkRequirements(
      `
      a: max(shaft.opening) >= 75 deg
      # passed: 80° ≥ 75° (5° to spare, at 40 %)
      b: min(shaft.opening) >= 75 deg
      # failed: 20°, not ≥ 75° (55° short, at 100 %)
      c: min(shaft.opening) < max(shaft.opening)
      # passed: 20° < 80° (60° to spare, at 100 %)
    `,
      { figures: { 'shaft.opening': TRIANGLE } },
    );
  });

  it('takes `at` at its position, and an expression there as a whole', () => {
    checkRequirements(`
      a: at(30%, shaft.opening) == 24 deg
      # passed: 24° = 24° (at 30 %)
      b: at(30%, 2 * pedal.rotation + lead) <= 33 deg
      # failed: 34°, not ≤ 33° (1° too much, at 30 %)
      c: at(share, at(3 * share, shaft.opening)) == 60 deg
      # passed: 60° = 60° (at 75 %)
      d: at(share, at(3 * pedal.travel, shaft.opening)) == 60 deg
      # passed: 60° = 60° (at 75 %)
      e: at(25%, shaft.opening) + at(50%, shaft.opening) == 60 deg
      # passed: 60° = 60°
      f: at(50%, max(shaft.opening)) == 80 deg
      # passed: 80° = 80° (at 100 %)
      g: at(30%, shaft.opening > 20 deg and pedal.rotation < 11 deg)
      # failed: 24° > 20° (4° to spare, at 30 %); 12°, not < 11° (1° too much, at 30 %)
    `);
  });

  it('takes `min` and `max` of several arguments at the position where they stand', () => {
    checkRequirements(`
      a: at(30%, max(shaft.opening, 30 deg)) == 30 deg
      # passed: 30° = 30° (at 30 %)
      b: at(30%, min(shaft.opening, 30 deg, pedal.rotation)) == 12 deg
      # passed: 12° = 12° (at 30 %)
      c: where(max(shaft.opening, 3 * pedal.rotation) >= 60 deg) == 50%
      # passed: 50 % = 50 %
      d: max(at(20%, shaft.opening), max(shaft.opening)) == 80 deg
      # passed: 80° = 80°
    `);
  });

  it('may use values of `let`, also those with a formula', () => {
    checkRequirements(`
      a: at(share, shaft.opening) == 4 * half
      # passed: 20° = 20° (at 25 %)
      b: reach * sin(at(37.5%, shaft.opening)) == 19 mm
      # passed: 19 mm = 19 mm (at 37.5 %)
      c: reach < 1.5 inch
      # passed: 38 mm < 1.5 inch = 38.1 mm (0.1 mm to spare)
    `);
  });

  it('has percent columns as fractions, and shows them in percent', () => {
    const figures = { 'pedal.travel': (travel: number) => travel };
    checkRequirements(
      `
      a: at(30%, pedal.travel) == 0.3
      # passed: 30 % = 30 % (at 30 %)
      b: at(30%, pedal.travel) >= 40 %
      # failed: 30 %, not ≥ 40 % (10 % short, at 30 %)
      c: at(30%, shaft.opening) / max(shaft.opening) <= 25 %
      # failed: 30 %, not ≤ 25 % (5 % too much)
      d: at(30%, shaft.opening) / at(30%, pedal.rotation) >= 1.5
      # passed: 2 ≥ 1.5 (0.5 to spare, at 30 %)
      e: max(0, at(30%, pedal.travel)) - share <= 0.1
      # passed: 5 % ≤ 10 % (5 % to spare, at 30 %)
      f: where(shaft.opening >= 40 deg) <= 0.6
      # passed: 50 % ≤ 60 % (10 % to spare)
      g: -at(30%, pedal.travel) <= 0
      # passed: -30 % ≤ 0 % (30 % to spare, at 30 %)
      h: abs(at(30%, pedal.travel)) <= 0.3001
      # passed: 30 % ≤ 30.01 % (0.01 % to spare, at 30 %)
    `,
      { figures },
    );
  });

  it('shows kinds of quantity that no place of the file has', () => {
    checkRequirements(`
      a: max(shaft.opening) * reach * 3 N >= 0.1 J
      # passed: 0.1592 J ≥ 0.1 J (0.05917 J to spare, at 100 %)
      b: reach^3 < 60000 mm^3
      # passed: 0.00005487 m³ < 0.00006 m³ (0.000005128 m³ to spare)
      c: at(0, shaft.opening) >= 0
      # passed: 0° ≥ 0° (nothing to spare, at 0 %)
      d: 0 <= at(100%, shaft.opening)
      # passed: 80° ≥ 0° (80° to spare, at 100 %)
      e: 2 kg > 1 kg
      # passed: 2 kg > 1 kg (1 kg to spare)
    `);
  });

  it('may hold several comparisons, each told with its own figures', () => {
    const { comparisons, outcome } = decideOne('10 deg < at(25%, shaft.opening) <= 19 deg or max(shaft.opening) != 80 deg');
    expect(outcome).toBe('failed');
    expect(comparisons.map(({ text, operator, holds }) => [text, operator, holds])).toEqual([
      ['10 deg < at(25%, shaft.opening)', '>', true],
      ['at(25%, shaft.opening) <= 19 deg', '<=', false],
      ['max(shaft.opening) != 80 deg', '!=', false],
    ]);
  });

  it('has the places of its comparisons in the text', () => {
    const text = `${GEARED}require:\n  "it": 'at(25%, shaft.opening) > 3 deg and reach > 3 mm'\n`;
    const [answer] = solve(text).requirements;
    expect(answer?.comparisons.map(({ span }) => text.slice(span.start, span.end))).toEqual([
      'at(25%, shaft.opening) > 3 deg',
      'reach > 3 mm',
    ]);
  });
});

describe('between stations', () => {
  const LINK = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 150}}}
  shaft: {pivot: [120, 0], arms: {arm: {radius: 60, angle: 110}}, opens: clockwise}
pedal: {lever: pedal, opens: counterclockwise, travel: 70}
rods: {link: {from: pedal.out, to: shaft.arm}}
`;

  it('a dip of a built-in angle is not missed', () => {
    // The driving arm passes its dead centre, where its angle with the rod is 0 at one place and grows to both sides.
    const stations = Array.from({ length: 1001 }, (_, i) => i / 1000);
    const values = solve(LINK).table(stations, ['link.drive']).columns[0]?.values ?? [];
    const seen = Math.min(...values.map((value) => value ?? NaN));
    expect(seen).toBeGreaterThan(1e-3);
    const { actual, travel } = compareOne('min(link.drive) < 0.0001 deg', { file: LINK });
    expect(actual?.value).toBeLessThan(1e-13);
    const at = solve(LINK).table([travel ?? NaN], ['link.drive']).columns[0]?.values[0];
    expect(at).toBeLessThan(1e-11);
    expect(decideOne('min(link.drive) > 0.0001 deg', { file: LINK }).outcome).toBe('failed');
  });

  it('one of 1 001 stations sees what happens on less than a hundredth of the travel', () => {
    const [from, to] = [0.3015, 0.3035];
    const dip = (travel: number): number => (travel > from && travel < to ? -Math.min(travel - from, to - travel) : 1);
    const figures = { 'shaft.opening': dip };
    const { actual, travel } = compareOne('min(shaft.opening) < 0 deg', { figures });
    expect(actual?.value).toBeCloseTo(-0.001, 9);
    expect(travel).toBeCloseTo(0.3025, 7);
    expect(compareOne('where(shaft.opening < 0 deg) > 0', { figures }).actual?.value).toBeCloseTo(from, 11);
  });

  it('a smooth extreme is refined', () => {
    const top = 0.333_333_7;
    const figures = {
      'shaft.opening': (travel: number) => 1 - (travel - top) ** 2,
      'pedal.rotation': (travel: number) => (travel - top) ** 2,
    };
    const most = compareOne('max(shaft.opening) > 0 deg', { figures });
    expect(most.actual?.value).toBeCloseTo(1, 14);
    expect(most.travel).toBeCloseTo(top, 6);
    const least = compareOne('min(pedal.rotation) < 1 deg', { figures });
    expect(least.actual?.value).toBeLessThan(1e-14);
    // Its neighbours among the stations are far above.
    expect((0.333 - top) ** 2).toBeGreaterThan(1e-8);
  });
});

describe('`where`', () => {
  const whereOf = (condition: string, figures?: Record<string, (travel: number) => number>): number =>
    compareOne(`where(${condition}) >= 0`, figures && { figures }).actual?.value ?? NaN;

  it('finds the first position, refined far beyond the stations', () => {
    for (const operator of ['>', '>=', '==']) {
      expect(Math.abs(whereOf(`shaft.opening ${operator} 12.34567 deg`) - 12.34567 / 80), operator).toBeLessThan(1e-12);
    }
    expect(Math.abs(whereOf('12 deg < shaft.opening') - 0.15)).toBeLessThan(1e-12);
    const wave = { 'shaft.opening': (travel: number) => Math.sin(10 * travel) };
    expect(whereOf('shaft.opening < -0.5 rad', wave)).toBeCloseTo((7 * Math.PI) / 60, 12);
    // A step has no tolerance about it.
    const step = { 'shaft.opening': (travel: number) => (travel >= 0.123_456_789_012 ? 1 : 0) };
    expect(Math.abs(whereOf('shaft.opening > 3 deg', step) - 0.123_456_789_012)).toBeLessThan(1e-12);
  });

  it('is the first station where the condition holds from the start, and one that depends on nothing holds there', () => {
    expect(whereOf('shaft.opening < 12 deg')).toBe(0);
    expect(whereOf('reach > 3 mm')).toBe(0);
  });

  it('finds where two sides are equal though no station has it', () => {
    expect(whereOf('shaft.opening == 12.34567 deg')).toBeCloseTo(12.34567 / 80, 12);
    expect(whereOf('not (shaft.opening != 12.34567 deg)')).toBeCloseTo(12.34567 / 80, 8);
    expect(whereOf('shaft.opening - pedal.rotation == lead')).toBeCloseTo(10 / 40, 8);
  });

  it('finds a window narrower than a step', () => {
    expect(whereOf('shaft.opening > 12.341 deg and shaft.opening < 12.342 deg')).toBeCloseTo(12.341 / 80, 8);
    expect(whereOf('not (shaft.opening < 12.341 deg or shaft.opening > 12.342 deg)')).toBeCloseTo(12.341 / 80, 8);
    expect(decideOne('where(shaft.opening > 12.342 deg and shaft.opening < 12.341 deg) < 1').reason).toContain('is never reached');
  });

  it('gives a position that `at` takes', () => {
    checkRequirements(`
      a: at(where(shaft.opening >= 40 deg), pedal.rotation) == 20 deg
      # passed: 20° = 20° (at 50 %)
      b: at(where(shaft.opening >= 40 deg) + share, shaft.opening) == 60 deg
      # passed: 60° = 60° (at 75 %)
      c: where(shaft.opening >= at(50%, shaft.opening)) == 50 %
      # passed: 50 % = 50 %
      d: where(at(pedal.travel / 2, shaft.opening) >= 20 deg) == 50 %
      # passed: 50 % = 50 %
      e: where(shaft.opening >= 40 deg) - where(shaft.opening >= 20 deg) <= 20 %
      # failed: 25 %, not ≤ 20 % (5 % too much)
    `);
  });

  it('that never holds fails what it stands in, however it is turned', () => {
    const never = 'where(shaft.opening > 90 deg)';
    const reason = '`shaft.opening > 90 deg` is never reached';
    for (const expression of [
      `${never} > 50%`,
      `${never} < 50%`,
      `${never} != 50%`,
      `not (${never} < 50%)`,
      `not (not (${never} < 50%))`,
      `at(${never}, shaft.opening) > 3 deg`,
      `at(${never}, shaft.opening > 3 deg)`,
      `not at(${never}, shaft.opening > 3 deg)`,
      `max(${never}, 50%) > 3 %`,
      `${never} > 50% and max(shaft.opening) > 3 deg`,
      `max(shaft.opening) < 3 deg or 2 * ${never} > 50%`,
      `${never} < shaft.opening / 1 deg`,
    ]) {
      expect(decideOne(expression), expression).toMatchObject({ outcome: 'failed', reason });
    }
    expect(decideOne(`${never} > 50% or max(shaft.opening) > 3 deg`)).toMatchObject({ outcome: 'passed' });
    expect(decideOne(`${never} > 50% or shaft.opening > 3 deg`).outcome).toBe('undecided');
    expect(decideOne(`where(at(${never}, shaft.opening) > 3 deg) < 50%`).reason).toContain(
      'at(where(shaft.opening > 90 deg), shaft.opening) > 3 deg',
    );
  });
});

describe('at equality', () => {
  it('a figure passes that is written with ten digits, and not with eight', () => {
    const actual = compareOne('at(where(pedal.rotation > 7 rad / 100), shaft.opening) > 0').actual?.value ?? NaN;
    const inDegrees = (digits: number): string => ((actual * 180) / Math.PI).toPrecision(digits);
    expect(Number(inDegrees(8))).not.toBe(Number(inDegrees(10)));
    const of = (digits: number, operator: string): string =>
      decideOne(`at(where(pedal.rotation > 7 rad / 100), shaft.opening) ${operator} ${inDegrees(digits)} deg`).outcome;
    for (const operator of ['==', '<=', '>=']) expect(of(11, operator), operator).toBe('passed');
    for (const operator of ['!=', '<', '>']) expect(of(11, operator), operator).toBe('failed');
    expect(of(7, '==')).toBe('failed');
  });

  it.each([
    ['1e-9 of the greater side', 0, 80, 7e-8, 9e-8],
    ['a floor for its kind of quantity', 0, 0, 4e-8, 7e-8],
  ])('%s is forgiven and no more', (_, __, demanded, little, much) => {
    const of = (excess: number, operator: string): string =>
      decideOne(`at(0, shaft.opening) ${operator} ${demanded} deg`, { figures: { 'shaft.opening': () => degrees(demanded + excess) } })
        .outcome;
    expect(of(little, '<=')).toBe('passed');
    expect(of(much, '<=')).toBe('failed');
    expect(of(little, '==')).toBe('passed');
    expect(of(much, '==')).toBe('failed');
    expect(of(little, '>')).toBe('failed');
    expect(of(much, '>')).toBe('passed');
  });
});

describe('the margin', () => {
  const at = (operator: string, actual: number, demanded = 40): number => {
    const { margin } = compareOne(`at(0, shaft.opening) ${operator} ${demanded} deg`, {
      figures: { 'shaft.opening': () => degrees(actual) },
    });
    return ((margin?.value ?? NaN) * 180) / Math.PI;
  };

  it.each([
    ['>=', 43, 3],
    ['>=', 38, -2],
    ['>', 43, 3],
    ['>', 38, -2],
    ['<=', 43, -3],
    ['<=', 38, 2],
    ['<', 43, -3],
    ['<', 38, 2],
    ['==', 43, -3],
    ['==', 38, -2],
    ['!=', 43, 3],
    ['!=', 38, 2],
  ])('of %s with %d° against 40° is %d°', (operator, actual, margin) => {
    expect(at(operator, actual)).toBeCloseTo(margin, 6);
  });

  it('is 0 at equality, and for `==` and `!=` the difference that is still forgiven', () => {
    for (const operator of ['>=', '>', '<=', '<']) expect(at(operator, 80 + 3e-8, 80), operator).toBe(0);
    expect(at('==', 80, 80) / 8e-8).toBeCloseTo(1, 6);
    expect(at('==', 80 + 3e-8, 80) / 5e-8).toBeCloseTo(1, 5);
    expect(at('!=', 80 + 3e-8, 80) / -5e-8).toBeCloseTo(1, 5);
    // 1e-9 of 40° is less than the floor of 1e-9 rad.
    expect((at('==', 40) * Math.PI) / 180 / 1e-9).toBeCloseTo(1, 6);
  });

  it('is the same whichever side the travel stands on, and turned under `not`', () => {
    for (const expression of [
      'at(50%, shaft.opening) <= 43 deg',
      '43 deg >= at(50%, shaft.opening)',
      'not (at(50%, shaft.opening) > 43 deg)',
      'not (43 deg < at(50%, shaft.opening))',
    ]) {
      const { operator, actual, demanded, margin, holds } = compareOne(expression);
      expect({ operator, holds }, expression).toEqual({ operator: '<=', holds: true });
      expect(actual?.value).toBeCloseTo(degrees(40), 12);
      expect(demanded?.value).toBeCloseTo(degrees(43), 12);
      expect(margin?.value).toBeCloseTo(degrees(3), 12);
    }
    const turned = { '<': '>', '>': '<', '==': '==', '!=': '!=', '>=': '<=' };
    for (const [written, told] of Object.entries(turned))
      expect(compareOne(`43 deg ${written} at(50%, shaft.opening)`).operator).toBe(told);
    const opposite = { '<': '>=', '>': '<=', '==': '!=', '!=': '==', '>=': '<', '<=': '>' };
    for (const [written, told] of Object.entries(opposite)) {
      expect(compareOne(`not (at(50%, shaft.opening) ${written} 43 deg)`).operator).toBe(told);
      const plain = decideOne(`at(50%, shaft.opening) ${written} 43 deg`).outcome;
      expect(decideOne(`not (at(50%, shaft.opening) ${written} 43 deg)`).outcome).toBe(plain === 'passed' ? 'failed' : 'passed');
    }
  });

  it('has the left side for actual where both sides speak of the travel, or neither', () => {
    expect(compareOne('at(25%, shaft.opening) < at(50%, shaft.opening)').actual?.value).toBeCloseTo(degrees(20), 12);
    expect(compareOne('reach > 3 mm').actual?.value).toBeCloseTo(0.038, 12);
    expect(compareOne('50% > where(reach > 3 mm)')).toMatchObject({ operator: '<', actual: { value: 0 }, demanded: { value: 0.5 } });
    expect(compareOne('3 mm < reach').actual?.value).toBeCloseTo(0.003, 12);
  });
});
