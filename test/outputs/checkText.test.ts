import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../src/outputs/caution.ts';
import { checkText, hasError, problemsText } from '../../src/outputs/checkText.ts';
import type { Paint } from '../../src/outputs/paint.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { LINKED } from '../support/linkage.ts';

const angle = (value: number): { value: number; dimension: 'angle' } => ({ value: (value * Math.PI) / 180, dimension: 'angle' });

/** Answers about a text that say what they are told to, so that the layout alone is under test. */
function told(text: string, changes: Partial<Answers>): Answers {
  return { ...solve(text), problems: [], findings: [], requirements: [], facts: [], notChecked: [], parts: [], ...changes };
}

const spanOf = (words: string): { start: number; end: number } => ({
  start: LINKED.indexOf(words),
  end: LINKED.indexOf(words) + words.length,
});

describe('a check', () => {
  it('shows a finding at its place, with carets, limit, cure and what belongs to it', () => {
    const text = checkText(
      told(LINKED, {
        findings: [
          {
            code: 'transmission-angle',
            severity: 'warning',
            part: 'link',
            span: spanOf('radius: 30'),
            message: 'The rod link has 31.2°',
            cure: 'Turn the arm',
            limit: { ...angle(40), from: 'textbook' },
            related: [{ span: spanOf('link:'), message: 'the rod' }],
          },
        ],
      }),
      { file: 'a.yaml', width: 160 },
    );
    expect(text).toContain(`a.yaml:4:42: warning[transmission-angle]: The rod link has 31.2°
  4 |   shaft: {pivot: [320, 80], arms: {arm: {radius: 30, angle: 200}, tang: {radius: 20, angle: 90}}, drums: {quadrant: {radius: 26, wraps: clockwise}}}
    |                                          ^^^^^^^^^^
  limit: 40° (textbook)
  cure: Turn the arm
  see line 7: the rod
`);
    expect(text).toMatch(/a\.yaml: no errors, 1 warning, no notes\n$/);
  });

  it('tells errors before warnings before notes, each in the order of the file', () => {
    const finding = (severity: 'error' | 'warning' | 'note', words: string): Answers['findings'][number] => ({
      code: 'turns-back',
      severity,
      part: 'shaft',
      span: spanOf(words),
      message: `${severity} at ${words}`,
    });
    const text = checkText(
      told(LINKED, {
        findings: [finding('note', 'format'), finding('warning', 'rods'), finding('error', 'link'), finding('warning', 'levers')],
      }),
      {
        file: 'a',
      },
    );
    const order = ['error at link', 'warning at levers', 'warning at rods', 'note at format'].map((words) => text.indexOf(words));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order).not.toContain(-1);
  });

  it('walks the load path in order, with the figures of each part', () => {
    const text = checkText(
      told(LINKED, {
        parts: [
          { kind: 'pedal', name: 'pedal', span: spanOf('pedal'), depth: 0, figures: [{ label: 'travel', figure: angle(27) }] },
          {
            kind: 'rod',
            name: 'link',
            span: spanOf('link'),
            depth: 1,
            figures: [
              { label: 'least transmission angle', figure: angle(51.23), travel: 0.981 },
              { label: 'four-bar', text: 'crank-rocker' },
            ],
          },
        ],
      }),
      { file: 'a' },
    );
    expect(text).toContain(
      '  pedal   pedal  travel 27°\n    link  rod    least transmission angle 51.2° at 98.1 %; four-bar crank-rocker\n',
    );
  });

  it('tells facts, what is not checked, and the caution in full', () => {
    const text = checkText(
      told(LINKED, {
        facts: [
          {
            key: 'a',
            part: 'shaft',
            label: 'pedal travel at 50 % of opening',
            figure: { value: 0.555, dimension: 'number' },
            travel: 0.555,
          },
          { key: 'b', part: 'shaft', label: 'greatest ratio', figure: { value: 4.05, dimension: 'number' }, travel: 0.98 },
          { key: 'c', part: 'shaft', label: 'pedal travel at 90 % of opening', why: 'never reached' },
        ],
        notChecked: [{ part: 'link', span: spanOf('link'), message: 'Not checked: tilt of its ends' }],
      }),
      { file: 'a' },
    );
    expect(text).toContain('  shaft  pedal travel at 50 % of opening  55.5 %\n');
    expect(text).toContain('  shaft  greatest ratio                   4.05 at 98 % of pedal travel\n');
    expect(text).toContain('  shaft  pedal travel at 90 % of opening  never reached\n');
    expect(text).toContain('Not checked\n  line 7  link  tilt of its ends\n');
    expect(text.replace(/\s+/g, ' ')).toContain(CAUTION);
    expect(text).toMatch(/; 1 thing not checked\n$/);
  });

  it('gathers springs that are given by their rate in one line, and tells each by itself elsewhere', () => {
    const spring = (name: string): string => `  ${name}: {lever: crank, rate: 1 N*mm/deg, preload: 50 N*mm}\n`;
    const file = (...names: readonly string[]): string =>
      `format: 1\nlevers: {crank: {pivot: [0, 0]}}\npedal: {lever: crank, opens: counterclockwise, travel: 20 deg}\nsprings:\n${names.map(spring).join('')}`;
    const told = (text: string): readonly string[] =>
      checkText(solve(text), { file: 'a', width: 200 })
        .split('\n')
        .filter((line) => line.includes('stressed too much'))
        .map((line) => line.trim().replaceAll(/ +/g, ' '));
    expect(told(file('one'))).toEqual([
      'line 5 one whether it is stressed too much, since it is given by its `rate` and not by its `wire`',
    ]);
    expect(told(file('one', 'two', 'three'))).toEqual([
      'line 5 one, two, three whether they are stressed too much, since they are given by their `rate` and not by their `wire`',
    ]);
    expect(solve(file('one', 'two')).notChecked.filter(({ message }) => message.includes('stressed too much'))).toHaveLength(2);
  });

  it('shows a problem of the text, and says that a text without meaning cannot be used', () => {
    const text = checkText(solve('format: 9\n'), { file: 'b' });
    expect(text).toContain('b:1:9: error[format-unsupported]');
    expect(text).toContain('  1 | format: 9\n    |         ^\n  cure: ');
    expect(text).toMatch(/b: cannot be used\n$/);
  });

  it('has no escape code without a painter, even where title and file name hold some', () => {
    const text = checkText(solve(LINKED.replace('levers', 'title: "\u001b[31mred"\nlevers')), { file: '\u001b[31mname' });
    expect(text).not.toContain('\u001b');
    expect(text).toContain('\ufffd[31mname');
  });

  it('paints words and leaves the letters alone', () => {
    const paint: Paint = (style, words) => `<${style}>${words}</${style}>`;
    const answers = solve(LINKED.replace('link:', 'lnk:').replace('shaft.arm', 'shaft.amr'));
    const painted = checkText(answers, { file: 'a', paint });
    expect(painted).toContain('<error>error[unknown-name]:</error>');
    expect(painted.replace(/<\/?(?:error|warning|note|strong|quiet)>/g, '')).toBe(checkText(answers, { file: 'a' }));
  });
});

it('tells problems alone where the verdict is not wanted', () => {
  expect(problemsText(solve(LINKED), { file: 'a' })).toBe('');
  expect(problemsText(solve(LINKED.replace('27', '27 mm')), { file: 'a' })).toMatch(/^a:5:\d+: error\[wrong-unit\]/);
});

it('takes an error of text or linkage, or a requirement that is not passed, for an error, and nothing less', () => {
  const nothing = { problems: [], findings: [], requirements: [] };
  const finding = { code: 'turns-back', part: 'shaft', span: { start: 0, end: 1 }, message: 'm' } as const;
  expect(hasError(nothing)).toBe(false);
  expect(hasError({ ...nothing, findings: [{ ...finding, severity: 'warning' }] })).toBe(false);
  expect(hasError({ ...nothing, findings: [{ ...finding, severity: 'error' }] })).toBe(true);
  expect(hasError({ ...nothing, problems: solve('format: 9').problems })).toBe(true);
  const requirements = (line: string): Answers['requirements'] => solve(`${LINKED}require: {it: '${line}'}\n`).requirements;
  expect(hasError({ ...nothing, requirements: requirements('max(pedal.rotation) > 1 deg') })).toBe(false);
  expect(hasError({ ...nothing, requirements: requirements('max(pedal.rotation) < 1 deg') })).toBe(true);
  expect(hasError({ ...nothing, requirements: requirements('pedal.rotation < 1 deg') })).toBe(true);
});

describe('requirements', () => {
  const text = `${LINKED}require:
  opens: at(100%, pedal.rotation) <= 1000 deg
  "opens \\e fully": at(50%, pedal.rotation) >= 14 deg
  in between: 5 deg < at(50%, pedal.rotation) < 10 deg and at(50%, pedal.opening) == at(50%, pedal.rotation)
  nowhere: shaft.opening > 3 deg
`;

  it('are told one a line, with the figures of each comparison, between findings and facts', () => {
    const page = checkText(solve(text), { file: 'a', width: 200 });
    expect(page).toMatch(
      /\nRequirements\n {2}opens {10}passed {9}27° ≤ 1000° \(973° to spare, at 100 %\)\n {2}opens \ufffd fully {2}failed {9}13\.5°, not ≥ 14° \(0\.5° short, at 50 %\)\n/,
    );
    expect(page).toContain(
      '  in between     failed         13.5° > 5° (8.5° to spare, at 50 %); 13.5°, not < 10° (3.5° too much, at 50 %); 13.5° = 13.5° (at 50 %)\n',
    );
    expect(page).toContain('  nowhere        not decidable  `shaft.opening` has a value at every pedal position');
    expect(page.indexOf('\nLoad path\n')).toBeLessThan(page.indexOf('\nRequirements\n'));
    expect(page.indexOf('\nRequirements\n')).toBeLessThan(page.indexOf('\nNot checked\n'));
    expect(solve(text).notChecked.filter(({ message }) => message.includes('requirement'))).toEqual([]);
  });

  it('are folded to the width, in line', () => {
    const page = checkText(solve(text), { file: 'a', width: 72 });
    const [, section = ''] = /\nRequirements\n([^]*?)\n\n/.exec(page) ?? [];
    const rows = section.split('\n');
    expect(rows.length).toBeGreaterThan(6);
    for (const row of rows) expect(row.length, row).toBeLessThanOrEqual(72);
    const start = rows[0]?.search('27° ≤') ?? -1;
    for (const row of rows) expect(row.slice(0, start).trim() === '' || /passed|failed|decidable/.test(row), row).toBe(true);
    expect(rows.join(' ').replace(/\s+/g, ' ')).toContain('13.5° > 5° (8.5° to spare, at 50 %) 13.5°, not < 10° (3.5°');
  });

  it('are counted in the last line', () => {
    const last = (lines: string): string | undefined =>
      checkText(told('', { ...solve(`${LINKED}require:\n${lines}`), problems: [], findings: [], notChecked: [] }), { file: 'a' })
        .trimEnd()
        .split('\n')
        .at(-1);
    const passed = (name: string): string => `  ${name}: max(pedal.rotation) > 1 deg\n`;
    const failed = '  no: max(pedal.rotation) < 1 deg\n';
    const open = '  open: pedal.rotation < 1 deg\n';
    expect(last(passed('a') + failed + open + passed('b'))).toMatch(/^a: no errors, .*; 2 requirements passed, 1 failed, 1 not decidable$/);
    expect(last(failed)).toMatch(/; 1 requirement failed$/);
    expect(last(open + passed('a'))).toMatch(/; 1 requirement passed, 1 not decidable$/);
    expect(last('')).toBe('a: no errors, no warnings, no notes');
  });

  it('are coloured by their outcome', () => {
    const paint: Paint = (style, words) => `<${style}>${words}</${style}>`;
    const page = checkText(solve(text), { file: 'a', paint, width: 200 });
    expect(page).toMatch(/opens {10}<quiet>passed {7}<\/quiet>/);
    expect(page).toMatch(/<error>failed {7}<\/error>/);
    expect(page).toMatch(/<warning>not decidable<\/warning>/);
    expect(page).toContain('<quiet>1 requirement passed</quiet>, <error>2 failed</error>, <warning>1 not decidable</warning>');
  });
});
