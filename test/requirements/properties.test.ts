/** Requirements against a second calculator, and against whatever may be written. */
import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { decide, decideOfGeared, degrees } from '../support/checkRequirements.ts';

/** A linkage whose columns are no straight lines. */
const LINK = `format: 1
let: {reach: 38 mm, part: 0.3}
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 120}}}
  shaft: {pivot: [100, 10], arms: {arm: {radius: 45, angle: 100}}, opens: clockwise}
pedal: {lever: pedal, opens: clockwise, travel: 50}
rods: {link: {from: pedal.out, to: shaft.arm}}
`;

/** An expression in both languages; \`{column|position}\` stands for a value of the table. */
type Written = readonly string[];

const COLUMNS = { 'shaft.opening': 'deg', 'shaft.rotation': 'deg', 'link.transmission': 'deg', 'link.drive': 'deg' } as const;

const leaf = fc.oneof(
  fc.double({ min: -9, max: 9, noNaN: true }).map((value): Written => [`(${value.toFixed(3)})`]),
  fc.constant<Written>(['part']),
  fc
    .tuple(fc.constantFrom(...(Object.keys(COLUMNS) as (keyof typeof COLUMNS)[])), fc.nat({ max: 1000 }))
    .map(([column, place]): Written => [`{${column}|${place / 1000}}`]),
);

const expression = fc.letrec<{ tree: Written }>((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small', maxDepth: 4 },
    leaf,
    fc
      .tuple(tie('tree'), fc.constantFrom('+', '-', '*'), tie('tree'))
      .map(([a, operator, b]): Written => ['(', ...a, ` ${operator} `, ...b, ')']),
    fc.tuple(tie('tree'), tie('tree')).map(([a, b]): Written => ['(', ...a, ' / (1 + abs(', ...b, ')))']),
    fc
      .tuple(fc.constantFrom('min', 'max', 'hypot'), tie('tree'), tie('tree'))
      .map(([name, a, b]): Written => [`${name}(`, ...a, ', ', ...b, ')']),
    fc
      .tuple(fc.constantFrom('abs(', 'sqrt(abs(', '(-'), tie('tree'))
      .map(([name, a]): Written => [name, ...a, name === 'sqrt(abs(' ? '))' : ')']),
  ),
})).tree;

const PLACE = /^\{(.*)\|(.*)\}$/;

describe('arithmetic over places of the table', () => {
  const { table } = solve(LINK);

  it('is what mathjs makes of the values read off the table', () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.array(expression, { minLength: 1, maxLength: 8 }), (expressions) => {
        const asRequired = expressions.map((parts) =>
          parts.map((part) => part.replace(PLACE, (_, column: string, place: string) => `(at(${place}, ${column}) / 1 deg)`)).join(''),
        );
        const kept = expressions.filter((_, i) => (asRequired[i]?.length ?? 0) < 490);
        const texts = asRequired.filter((text) => text.length < 490);
        const answers = decide(texts.map((text, i) => `  r${i}: '${text} > 0'`).join('\n'), { file: LINK });
        kept.forEach((parts, i) => {
          const filled = parts
            .map((part) =>
              part.replace(
                PLACE,
                (_, column: string, place: string) => `(${table([Number(place)], [column]).columns[0]?.values[0] ?? NaN})`,
              ),
            )
            .join('');
          const wanted = Number(evaluate(filled, { part: 0.3 }));
          const [comparison] = answers[i]?.comparisons ?? [];
          const actual = comparison?.actual?.value ?? NaN;
          // Sums of large figures that cancel lose digits in both ways of computing.
          expect(Math.abs(actual - wanted), texts[i]).toBeLessThanOrEqual(1e-9 * Math.max(1e3, Math.abs(wanted)));
          if (Math.abs(wanted) > 1e-5) expect(answers[i]?.outcome, texts[i]).toBe(wanted > 0 ? 'passed' : 'failed');
          compared++;
        });
      }),
      { numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(300);
  });
});

describe('a piecewise course', () => {
  /** Corners at unequal places, so that none but the ends is a station. */
  const course = fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 3, maxLength: 7 }).map((heights) => {
    const places = heights.map((_, i) => (i === 0 ? 0 : i === heights.length - 1 ? 1 : (i + Math.SQRT1_2 / 2) / heights.length));
    return (travel: number): number => {
      const k = Math.max(
        0,
        places.findLastIndex((place, i) => place <= travel && i < places.length - 1),
      );
      const [from = 0, to = 1] = [places[k], places[k + 1]];
      return degrees((heights[k] ?? 0) + (((heights[k + 1] ?? 0) - (heights[k] ?? 0)) * (travel - from)) / (to - from));
    };
  });
  const many = Array.from({ length: 20_001 }, (_, i) => i / 20_000);

  it('has the extremes and first positions that 20 001 stations show', () => {
    fc.assert(
      fc.property(course, fc.integer({ min: -50, max: 50 }), (figure, level) => {
        const figures = { 'shaft.opening': figure };
        const lines = `  a: max(shaft.opening) >= ${level} deg\n  b: min(shaft.opening) >= ${level} deg\n  c: where(shaft.opening > ${level}.5 deg) >= 0`;
        const [most, least, where] = decide(lines, { figures });
        const values = many.map(figure);
        const close = (answer: typeof most, wanted: number): void => {
          expect(Math.abs((answer?.comparisons[0]?.actual?.value ?? NaN) - wanted)).toBeLessThan(degrees(0.05));
          expect(answer?.comparisons[0]?.actual?.value).toBeCloseTo(figure(answer?.comparisons[0]?.travel ?? NaN), 12);
        };
        close(most, Math.max(...values));
        close(least, Math.min(...values));
        expect(most?.comparisons[0]?.actual?.value).toBeGreaterThanOrEqual(Math.max(...values) - 1e-9);
        const first = many.find((_, i) => (values[i] ?? NaN) > degrees(level > 0 ? level + 0.5 : level - 0.5));
        const found = where?.comparisons[0]?.actual?.value;
        if (found === undefined) expect(Math.max(...values)).toBeLessThan(degrees(level > 0 ? level + 0.6 : level - 0.4));
        else expect(Math.abs(found - (first ?? NaN))).toBeLessThan(1 / 19_999);
      }),
      { numRuns: 60 },
    );
  });
});

describe('whatever is written', () => {
  const word = fc.constantFrom(
    ...[
      'at(',
      'where(',
      'min(',
      'max(',
      'abs(',
      'sqrt(',
      ')',
      ')',
      ', ',
      ' > ',
      ' <= ',
      ' == ',
      ' and ',
      ' or ',
      'not ',
      ' + ',
      ' * ',
      ' / ',
    ],
    ...['50%', '0', '3 deg', '1 mm', 'reach', 'share', 'shaft.opening', 'pedal.travel', 'pedal.effort', 'stray.opening', 'shaft.ratio'],
  );

  it('is answered, with figures that are numbers and a reason where there are none', () => {
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 14 }), (words) => {
        const answers = decideOfGeared(`require: {it: ${JSON.stringify(words.join(''))}}\n`);
        for (const { outcome, reason, comparisons } of answers) {
          if (outcome === 'undecided') expect(reason).toBeTruthy();
          for (const { actual, demanded, margin, travel, holds, reason: why } of comparisons) {
            for (const figure of [actual, demanded, margin]) if (figure) expect(Number.isFinite(figure.value)).toBe(true);
            if (travel !== undefined) expect(travel >= 0 && travel <= 1).toBe(true);
            if (holds === undefined || margin === undefined) expect(why).toBeTruthy();
          }
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('is answered for every sensible nesting', () => {
    const value = fc.letrec<{ value: string; condition: string }>((tie) => ({
      value: fc.oneof(
        { maxDepth: 5 },
        fc.constantFrom('shaft.opening', '3 deg', 'pedal.rotation', 'max(shaft.opening)', 'min(pedal.rotation)', 'half'),
        fc.tuple(tie('condition'), tie('value')).map(([c, v]) => `at(where(${c}), ${v})`),
        fc.tuple(tie('value'), tie('value')).map(([a, b]) => `at(abs(${a}) / 2 rad, ${b})`),
        fc.tuple(tie('value'), tie('value')).map(([a, b]) => `max(${a}, ${b})`),
        fc.tuple(tie('value'), tie('value')).map(([a, b]) => `(${a} - ${b})`),
      ),
      condition: fc.oneof(
        { maxDepth: 5 },
        fc.tuple(tie('value'), fc.constantFrom('<', '>=', '==', '!='), tie('value')).map(([a, operator, b]) => `${a} ${operator} ${b}`),
        fc.tuple(tie('condition'), fc.constantFrom('and', 'or'), tie('condition')).map(([a, operator, b]) => `(${a} ${operator} ${b})`),
        tie('condition').map((c) => `not (${c})`),
        fc.tuple(tie('value'), tie('condition')).map(([v, c]) => `at(abs(${v}) / 3 rad, ${c})`),
      ),
    })).condition;
    const outcomes = new Map<string, number>();
    fc.assert(
      fc.property(value, (condition) => {
        const text = `require: {it: '${condition}'}\n`;
        fc.pre(condition.length <= 500);
        const [answer] = decideOfGeared(text);
        expect(answer, text).toBeDefined();
        const { outcome = '', reason, comparisons = [] } = answer ?? {};
        outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
        if (outcome === 'undecided') expect(reason, text).toBeTruthy();
        expect(reason, text).not.toBe('It has no value');
        for (const comparison of comparisons) expect(comparison.reason, text).not.toBe('It has no value');
      }),
      { numRuns: 400 },
    );
    for (const outcome of ['passed', 'failed', 'undecided']) expect(outcomes.get(outcome) ?? 0, outcome).toBeGreaterThan(20);
  });
});
