import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { checkProblems } from '../support/checkProblems.ts';
import { LEVERS, LINKED } from '../support/linkage.ts';
import { cpuTime } from '../support/cpuTime.ts';

/** The text after the edits of its one problem. */
function mended(text: string): string {
  const { problems } = readDefinition(text);
  expect(problems.map(({ code }) => code)).toHaveLength(1);
  return applyEdits(text, problems[0]?.replacements ?? []);
}

/** A pedal and nothing that it moves. */
const ALONE = `format: 1
levers: {pedal: {pivot: [0, 0]}}
pedal: {lever: pedal, opens: clockwise, travel: 20}
`;

describe('a key without its colon', () => {
  it('before a bracket is given one, and all is read as if it stood there', () => {
    const text = ALONE.replace('pedal: {lever', 'pedal {lever');
    expect(mended(text)).toBe(ALONE);
    expect(readDefinition(text).definition?.pedal).toBeDefined();
    expect(readDefinition(ALONE).problems).toEqual([]);
    expect(mended(ALONE.replace('pedal: {lever', 'pedal{lever'))).toBe(ALONE.replace('pedal: {lever', 'pedal:{lever'));
  });

  it('above lines that stand farther in is given one, and nothing else is told', () => {
    const text = `format: 1
levers:
  pedal
# ^^^^^ error[yaml-syntax]: Write \`pedal:\`
    pivot: [0, 0]
    arms:
      pad: {radius: 240, angle: -70 deg}
  shaft: {pivot: [1, 2]}
couplings: {gears: {from: pedal, to: shaft}}
pedal: {lever: pedal, opens: clockwise, travel: 20, pad: pad}
`;
    checkProblems(text);
    const { definition } = readDefinition(text);
    expect(definition?.levers.map(({ name }) => name)).toEqual(['pedal', 'shaft']);
    expect(definition?.levers[0]?.nameSpan).toMatchObject({ start: text.indexOf('pedal\n'), end: text.indexOf('pedal\n') + 5 });
    checkProblems(text.replace('  pedal\n', '  pedal # what the foot presses\n'));
    expect(mended(text.replace('  pedal\n', '  pedal  # what the foot presses\n'))).toContain('  pedal:  # what');
  });

  it('with its value behind it is given one, and nothing is said to be missing', () => {
    for (const name of ['tune-a-bellcrank', 'two-banks', 'firm-pedal', 'as-built']) {
      const whole = readFileSync(`examples/${name}.throttle.yaml`, 'utf8');
      // What stands behind `title` may be any words, of which none tells that it is a value.
      const told = [...whole.matchAll(/^ *(?!title)[a-z_]{2,}:(?= |$)/gm)].filter(({ 0: found, index }) => {
        const colon = index + found.length - 1;
        const text = whole.slice(0, colon) + whole.slice(colon + 1);
        const { problems } = readDefinition(text);
        return problems.length !== 1 || applyEdits(text, problems[0]?.replacements ?? []) !== whole;
      });
      expect(told.map(([key]) => key.trim())).toEqual([]);
    }
  });

  it('is one that is being typed where nothing stands under it', () => {
    checkProblems(`format: 1
levers:
  pedal: {pivot: [0, 0]}
  sha
# ^^^ error[yaml-syntax]: has no value
pedal: {lever: pedal, opens: clockwise, travel: 20}
`);
  });
});

it('a bracket that was typed twice is told once', () => {
  checkProblems(`format: 1
levers:
  a: {pivot: [[0, 0], drums: {q: {radius: 26 mm, wraps: clockwise}}}
  #          ^ error[yaml-syntax]: Remove one of the two
pedal: {lever: a, opens: clockwise, travel: 20}
`);
  checkProblems(`format: 1
levers:
  a:
    pivot: [[0, 0]
    #      ^ error[yaml-syntax]: Remove one of the two
pedal: {lever: a, opens: clockwise, travel: 20}
`);
  expect(
    mended(`format: 1
levers:
  a:
    pivot: [[0, 0]
pedal: {lever: a, opens: clockwise, travel: 20}
`),
  ).toContain('pivot: [0, 0]');
});

describe('one mistake is one problem', () => {
  it('where a key is misspelt that must be there', () => {
    checkProblems(`format: 1
levers:
  a:
    pivots: [0, 0]
#   ^^^^^^ error[unknown-key]: Did you mean \`pivot\`?
    arms:
      b: {raduis: 3, angle: 4}
      #   ^^^^^^ error[unknown-key]: Did you mean \`radius\`?
      c: {at: [1, 2]}
pedal: {lever: a, opens: clockwise, travel: 20}
`);
    checkProblems('Format: 1\n#^^^^^ error[unknown-key]: Did you mean `format`?\n');
    checkProblems(
      LINKED.replace('pedal: {lever', 'pedals: {lever').replace('\nrods', '\n#^^^^^ error[unknown-key]: Did you mean `pedal`?\nrods'),
    );
  });

  it('where the space after a colon is missing', () => {
    checkProblems(`format: 1
levers:
  a: {pivot: [0, 0], drums: {q: {radius:26 mm, wraps: clockwise}}}
  #                              ^^^^^^^^^^^^ error[unknown-key]: Write \`radius: 26 mm\`
pedal: {lever: a, opens: clockwise, travel: 20}
`);
    checkProblems(`format: 1
levers:
  a:
    pivot: [0, 0]
    friction:3 N*mm
#   ^^^^^^^^^^^^^^^ error[yaml-syntax]: Write \`friction: 3 N*mm\`
    inertia: 3
pedal: {lever: a, opens: clockwise, travel: 20}
`);
  });

  it('where a comma is missing between two keys', () => {
    const text = LINKED.replace('radius: 26, wraps', 'radius: 26 wraps');
    expect(mended(text)).toBe(LINKED);
  });

  it('where several keys are missing', () => {
    checkProblems(`${LINKED}sensors:
  s: {range: [0, 110]}
# ^ error[missing-key]: has no \`lever\`, \`at_closed\` and \`signal\`
`);
  });

  it('where a name of `let` is a word of formulas', () => {
    checkProblems(`${LINKED}let:
  at: 3 mm
# ^^ error[reserved-name]
  deg: 3 mm
# ^^^ error[reserved-name]
  pi: 3 mm
# ^^ error[reserved-name]
  twice: 2 * pi
require:
  opens: at(100%, shaft.opening) >= 80 deg
`);
  });

  it('where a name is used twice, of which one has columns', () => {
    checkProblems(`format: 1
let:
  shaft: 3 mm
${LINKED.replace('format: 1\n', '').replace('\npedal:', '\n# ^^^^^ error[duplicate-name]\npedal:')}require:
  opens: at(100%, shaft.opening) >= 80 deg
`);
  });

  it('where both ends of a rod are on one lever', () => {
    checkProblems(`${LEVERS}rods:
  link: {from: pedal.clevis, to: pedal.pad}
  #                              ^^^^^^^^^ error[wrong-value]: both ends on \`pedal\`
`);
  });

  it('where the one key that says what a spring works on is misspelt', () => {
    checkProblems(`${ALONE}springs:
  one: {levr: pedal, rate: 3, preload: 4}
  #     ^^^^ error[unknown-key]: Did you mean \`lever\`?
  two: {rate: 3}
# ^^^ error[missing-key]: does not say on what it works
`);
  });

  it('where a part is merged from another, for what it lacks', () => {
    checkProblems(`${ALONE}springs:
  one:
    <<: {lever: pedal}
#   ^^ error[unknown-key]: Merge keys
    rate: 3
`);
  });

  it('where a block merges another', () => {
    checkProblems(`format: 1
points:
  <<: {a: 1}
# ^^ error[unknown-key]: Merge keys
`);
  });

  it('where lines are indented by tabs', () => {
    checkProblems('levers:\n\ta: {pivot: [0, 0]}\n#< error[yaml-syntax]: tabs\n');
    checkProblems('format: 1\nlevers:\n  a:\n\tpivot: [0, 0]\n#< error[yaml-syntax]: tabs\n');
    checkProblems('format: 1\nlevers: {\n\ta: {pivot: [0, 0]}\n#< error[yaml-syntax]: tabs\n}\n');
  });

  it('where a comment sticks to a value', () => {
    expect(mended('format: 1\npoints:\n  a: [1, 2]# why\n')).toBe('format: 1\npoints:\n  a: [1, 2] # why\n');
  });

  it('where brackets within each other stay open, as at a closing one in a comment', () => {
    checkProblems(`format: 1
points: {
  a: [1, 2],
  b: [3, 4 # ]}
#    ^ error[yaml-syntax]: Close it with \`]}\`
`);
  });

  it('where a tolerance has decimal commas', () => {
    const arm = (radius: string): string => LINKED.replace('radius: 30,', `radius: ${radius},`);
    expect(mended(arm('3 mm ± 0,1 mm'))).toBe(arm('3 mm ± 0.1 mm'));
    expect(mended(arm('1,5 mm +0,2/-0,1 mm'))).toBe(arm('1.5 mm +0.2/-0.1 mm'));
    // A thousand and a half, or one and a half: not for the program to say.
    expect(mended(arm('1,500 mm'))).toBe(arm('1,500 mm'));
  });

  it('where a formula that wants quotes runs over lines', () => {
    const arm = (radius: string): string => LINKED.replace('radius: 30,', `radius: ${radius},`);
    expect(mended(arm('max(1 mm,\n    2 mm)'))).toBe(arm('"max(1 mm, 2 mm)"'));
    expect(mended(arm('max(1 mm, # why\n    2 mm)'))).toBe(arm('max(1 mm, # why\n    2 mm)'));
  });

  it('where a sign stands apart from its figure', () => {
    expect(mended('format: 1\nlet:\n  a: - 38 mm\n')).toBe('format: 1\nlet:\n  a: -38 mm\n');
  });
});

describe('places', () => {
  const place = (line: string): string | undefined => {
    const text = `format: 1\nlet:\n  a: ${line}\n`;
    const span = readDefinition(text).problems[0]?.span;
    return span === undefined ? undefined : text.slice(span.start, span.end);
  };

  it('are exact behind escapes and doubled quotes', () => {
    expect(place('"1 +\\u0020zz"')).toBe('zz');
    expect(place('"1 +\\x20zz + 2"')).toBe('zz');
    expect(place('"1\\t+ zz"')).toBe('zz');
    expect(place('"\\U00000031 + zz"')).toBe('zz');
    expect(place("'it''s'")).toBe("''");
    expect(place('"x \\u00b1 3"')).toBe('\\u00b1');
  });

  it('are the same where a lone CR ends the lines', () => {
    const text = 'format: 1\rpoints:\r  a: [1, 2]\r  b: [1, zz]\r';
    const { definition, problems } = readDefinition(text);
    expect(problems.map(({ span }) => text.slice(span.start, span.end))).toEqual(['zz']);
    expect(definition?.points.map(({ name }) => name)).toEqual(['a']);
  });

  it('say which format is not one at all', () => {
    const cure = (format: string): string | undefined => readDefinition(`format: ${format}\n`).problems[0]?.cure;
    expect(cure('2')).toBe('A newer program may read it');
    expect(cure('0')).toBe('Write `format: 1`');
    expect(cure('01')).toBe('Write `format: 1`');
  });
});

describe('a file of thousands of wrong names', () => {
  const lines = (count: number, line: (k: number) => string): string => Array.from({ length: count }, (_, k) => line(k)).join('');
  const took = (text: string): number => {
    const began = cpuTime();
    readDefinition(text);
    return cpuTime() - began;
  };

  // Each took from several seconds to a minute when names were looked for one by one in lists. A formula that was read before is kept by its
  // text, so each file has names of its own.
  const files: readonly (readonly [what: string, file: (count: number, own: string) => string])[] = [
    ['chained values', (count, own) => `format: 1\nlet:\n  ${own}0: 1\n${lines(count, (k) => `  ${own}${k + 1}: ${own}${k} + 1\n`)}`],
    ['unknown values', (count, own) => `format: 1\nlet:\n  a0: 1\n${lines(count, (k) => `  a${k + 1}: ${own}${k} + 1\n`)}`],
    [
      'unknown parts in requirements',
      (count, own) =>
        `format: 1\nlevers:\n${lines(count / 3, (k) => `  ${own}${k}: {pivot: [0, 0]}\n`)}require:\n${lines(count, (k) => `  r${k}: max(${own}_${k}.opening) > 3 deg\n`)}`,
    ],
  ];

  it.each(files)(
    'takes time in proportion: %s',
    (_what, file) => {
      took(file(1_000, 'first'));
      const short = Math.min(took(file(1_000, 'second')), took(file(1_000, 'third')));
      expect(took(file(4_000, 'fourth')) / short).toBeLessThan(10);
    },
    60_000,
  );
});
