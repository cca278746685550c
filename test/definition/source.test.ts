import { describe, expect, it } from 'vitest';
import { LARGEST_FILE, readDefinition } from '../../src/definition/read.ts';
import { checkProblems } from '../support/checkProblems.ts';
import { LINKED } from '../support/linkage.ts';
import { cpuTime } from '../support/cpuTime.ts';

const codes = (text: string): string[] => readDefinition(text).problems.map((problem) => problem.code);

describe('the file as a whole', () => {
  it('reads a sound file without a word', () => {
    const { definition } = checkProblems(LINKED);
    expect(definition?.rods.map((rod) => rod.name)).toEqual(['link']);
  });

  it('says of an empty file how to begin', () => {
    checkProblems('# nothing yet\n#^^^^^^^^^^^^ error[file-empty]: Begin with `format: 1`');
    expect(codes('')).toEqual(['file-empty']);
    expect(codes('\ufeff\r\n\r\n')).toEqual(['file-empty']);
  });

  it('refuses a list or a word for a file', () => {
    checkProblems('- levers\n#^^^^^^^ error[wrong-shape]: block of keys');
    checkProblems('levers\n#^^^^^ error[wrong-shape]: block of keys');
  });

  it('asks for the format, and reads the rest meanwhile', () => {
    const { definition } = checkProblems('title: x\n#^^^^ error[format-missing]: Write `format: 1` as the first line\n');
    expect(definition?.title).toBe('x');
  });

  it('reads nothing of another format', () => {
    const { definition } = checkProblems(
      'format: 2\n#       < error[format-unsupported]: reads format 1, not `2`\n'.replace('#       <', '      # ^') + 'levers: 3\n',
    );
    expect(definition).toBeUndefined();
    expect(codes('format: one\n')).toEqual(['format-unsupported']);
    expect(codes('format: [1]\n')).toEqual(['wrong-shape']);
    expect(codes('format:\n')).toEqual(['wrong-shape']);
  });

  it('is not parsed above 256 kB of UTF-8, and is read at 256 kB', () => {
    const head = 'format: 1\n# ';
    const full = head + 'x'.repeat(LARGEST_FILE - head.length);
    expect(codes(full)).toEqual([]);
    expect(codes(`${full}x`)).toEqual(['file-too-large']);
    expect(codes(head + '·'.repeat((LARGEST_FILE - head.length) / 2))).toEqual([]);
    expect(codes(head + '·'.repeat((LARGEST_FILE - head.length) / 2 + 1))).toEqual(['file-too-large']);
    expect(codes(head + '\u{1d7d9}'.repeat(LARGEST_FILE / 4))).toEqual(['file-too-large']);
  });

  it('is one document', () => {
    checkProblems(`${LINKED}---\n#^^ error[multiple-documents]: Remove the line\nlevers: 3\n`);
    expect(codes(`---\n${LINKED}...\n`)).toEqual([]);
  });

  it('has the same places with a byte order mark and with CRLF', () => {
    const plain = `${LINKED}cables:\n  main: {from: pedal.clevis, leaves: [1, 2], enters: [3, 4], to: shaft.quadrnt}\n`;
    const slice = (text: string): string[] =>
      readDefinition(text).problems.map(({ code, span }) => `${code} ${text.slice(span.start, span.end)}`);
    expect(slice(plain)).toEqual(['unknown-name quadrnt']);
    expect(slice(`\ufeff${plain}`)).toEqual(['unknown-name quadrnt']);
    expect(slice(plain.replaceAll('\n', '\r\n'))).toEqual(['unknown-name quadrnt']);
    expect(slice(`\ufeff${plain.replaceAll('\n', '\r\n')}`)).toEqual(['unknown-name quadrnt']);
  });
});

describe('mistakes of YAML', () => {
  it('are told where the bracket opens that is not closed', () => {
    const { definition } = checkProblems(
      `format: 1
points:
  a: [1, 2
  #  < error[yaml-syntax]: is opened here and not closed
  b: [3, 4]
`.replace('#  <', '#  ^'),
    );
    expect(definition?.points.map((point) => point.name)).toEqual(['a', 'b']);
  });

  it('do not take the rest of the file along after a bracket too many', () => {
    const { definition } = checkProblems(`format: 1
points:
  a: [1, 2]]
  #        ^ error[yaml-syntax]: closes nothing
  b: [3, 4]
`);
    expect(definition?.points.map((point) => point.name)).toEqual(['a', 'b']);
  });

  it('do not take the rest of the file along after an open quote', () => {
    const { definition } = checkProblems(`format: 1
title: "Rev B
#      ^^^^^^ error[yaml-syntax]: not closed on its line
points:
  a: [1, 2]
`);
    expect(definition?.points).toHaveLength(1);
  });

  it('tell a tab in the indentation once, and read on', () => {
    const { definition, problems } = readDefinition('format: 1\npoints:\n\ta: [1, 2]\n\tb: [3, 4]\n');
    expect(problems.map((problem) => [problem.code, problem.span])).toEqual([['yaml-syntax', { start: 18, end: 19 }]]);
    expect(problems[0]?.replacements).toHaveLength(2);
    expect(definition?.points).toHaveLength(2);
  });

  it('tell a word without a colon', () => {
    checkProblems(`format: 1
points:
  a: [1, 2]
  b
# ^ error[yaml-syntax]: Write \`b: …\`
  c: [3, 4]
`);
  });

  it('tell a second colon on a line', () => {
    checkProblems(`format: 1
title: one: two
#      ^^^^^^^^ error[yaml-syntax]: A second
points:
  a: [1, 2]
`);
  });

  it('tell a line under a value that is complete', () => {
    checkProblems(`format: 1
title: one
  points: 3
# ^^^^^^^^^ error[yaml-syntax]: already complete
`);
  });

  it('tell a line that does not line up', () => {
    checkProblems(`format: 1
points:
    a: [1, 2]
   b: [3, 4]
#  ^ error[yaml-syntax]: line up
`);
  });

  it('tell text after a closing quote', () => {
    checkProblems(`format: 1
title: "a" b
#          ^ error[yaml-syntax]: after the closing quote
`);
  });

  it('tell a character that no value begins with', () => {
    checkProblems(`format: 1
title: @home
#      ^ error[yaml-syntax]: Put it in quotes
`);
  });

  it('tell a tag', () => {
    checkProblems(`format: 1
title: !text home
#      ^^^^^ error[yaml-syntax]: no meaning
`);
  });

  it('tell nesting that would overflow', () => {
    for (const deep of ['['.repeat(20_000), '- '.repeat(20_000), '? '.repeat(20_000), '{a: '.repeat(20_000)]) {
      expect(codes(`format: 1\nx: 1\ntitle:\n  ${deep}`)).toContain('yaml-syntax');
    }
  });
});

describe('keys', () => {
  it('that are unknown are told with the nearest right one', () => {
    const { problems } = checkProblems(`format: 1
pionts:
#^^^^^ error[unknown-key]: Did you mean \`points\`?
  a: [1, 2]
`);
    expect(problems[0]?.replacements).toEqual([{ span: { start: 10, end: 16 }, text: 'points' }]);
  });

  it('that stand twice are told at the second place, and the first is read', () => {
    const { definition, problems } = checkProblems(`format: 1
points:
  a: [1, 2]
  a: [3, 4]
# ^ error[duplicate-key]: stands twice
title: one
title: two
#^^^^ error[duplicate-key]: stands twice
`);
    expect(definition?.points.map((point) => point.place.x.nominal)).toEqual([0.001]);
    expect(problems[0]?.related?.[0]?.span.start).toBe(20);
  });

  it('of things that format 1 does not have are told so', () => {
    checkProblems(`format: 1
cams: {}
#^^^ error[unknown-key]: Format 1 does not describe this
`);
  });

  it('that merge are told as such', () => {
    checkProblems(`format: 1
levers:
  a: &a {pivot: [0, 0]}
# ^ warning[not-driven]
  b:
    <<: *a
#   ^^ error[unknown-key]: Merge keys
    pivot: [1, 0]
pedal: {lever: b, opens: clockwise, travel: 20}
`);
  });

  it('that are lists are told', () => {
    checkProblems(`format: 1
points: {[1, 2]: [3, 4]}
#        ^^^^^^ error[wrong-shape]: plain word
`);
  });
});

describe('anchors and aliases', () => {
  it('give the very same figure', () => {
    const { definition } = checkProblems(`format: 1
points:
  a: [&x 12, 3]
  b: [*x, 4]
  c: &place [5, 6]
  d: *place
`);
    const [a, b, c, d] = definition?.points ?? [];
    expect(b?.place.x).toBe(a?.place.x);
    expect(d?.place.y).toBe(c?.place.y);
    expect(b?.place.x.path).toBe('points.a.0');
  });

  it('that name nothing are told', () => {
    checkProblems(`format: 1
points: {a: *b}
#           ^^ error[unknown-name]: no anchor
`);
  });

  it('that hold themselves are told', () => {
    checkProblems(`format: 1
points: {a: &a [*a, 1]}
#               ^^ error[alias-bound]: inside the value
`);
  });

  it('that multiply without end are bounded', () => {
    let bomb = 'format: 1\nlevers:\n  l0: &l0 {arms: {a: {radius: 1}}}\n';
    for (let level = 1; level < 30; level++)
      bomb += `  l${level}: &l${level} {arms: {${Array.from({ length: 10 }, (_, k) => `a${k}: *l${level - 1}`).join(', ')}}}\n`;
    const began = cpuTime();
    expect(codes(bomb)).toContain('alias-bound');
    expect(cpuTime() - began).toBeLessThan(5_000);
  });
});

describe('formulas and figures that YAML cuts', () => {
  it('are told once, with quotes as the cure, and read as meant', () => {
    const text = `format: 1
let: {a: 3 mm, b: 4 mm}
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: max(a, b), angle: 3}}}
  #                                           ^^^^^^^^^ error[quote-formula]: Put it in quotes: "max(a, b)"
pedal: {lever: pedal, opens: clockwise, travel: 20}
`;
    const { problems } = checkProblems(text);
    expect(problems[0]?.replacements?.[0]?.text).toBe('"max(a, b)"');
  });

  it('are told in lists', () => {
    checkProblems(`format: 1
let: {a: 3 mm, b: 4 mm}
points:
  p: [max(a, min(b, 5 mm)), 3]
  #   ^^^^^^^^^^^^^^^^^^^^ error[quote-formula]
`);
  });

  it('are told with brackets', () => {
    checkProblems(`format: 1
let: {a: 3 mm, c: a[1] + 2, b: 4 mm}
#                 ^^^^^^^^ error[quote-formula]
title: after
`);
  });

  it('are told where a decimal comma has cut them', () => {
    const { problems } = checkProblems(`format: 1
pedal: {cable: main, pull: 1,5 mm}
#                          ^^^^^^ error[bad-quantity]: Write \`1.5 mm\`
cables: {main: {enters: [0, 1], to: a.b}}
levers: {a: {pivot: [0, 0], arms: {b: {radius: 3, angle: 4}}}}
`);
    expect(problems).toHaveLength(1);
  });
});
