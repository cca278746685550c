import { describe, expect, it } from 'vitest';
import type { CheckedFile } from '../../src/outputs/checkedFile.ts';
import { checkMarkdown } from '../../src/outputs/checkMarkdown.ts';
import { markdownCode, markdownMessage, markdownText } from '../../src/outputs/markdown.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { CLOSED_BY_TWO } from '../studies/compareFiles.ts';
import { LINKED } from '../support/linkage.ts';
import {
  BROKEN_FILE,
  checked,
  DEMANDING_FILE,
  EMPTY_FILE,
  fromStandardInput,
  HOSTILE_FILE,
  HOSTILE_WORDS,
  MISSING,
  SOUND_FILE,
  wholeFiles,
} from './support/checked.ts';

/** Text as a reader sees it: references resolved, our own tags and the zero-width spaces taken out. */
function read(markdown: string): string {
  return markdown
    .replace(/<br>/g, ' / ')
    .replace(/<\/?(?:code|details|summary)>|\u200b|&emsp;/g, '')
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)));
}

/** Cells of each row of the table under a header that begins with a word. */
function tableOf(page: string, header: string): string[][] {
  const lines = page.split('\n');
  const start = lines.findIndex((line) => line.startsWith(`| ${header} |`));
  expect(start, `a table of ${header}`).toBeGreaterThanOrEqual(0);
  const end = lines.findIndex((line, index) => index > start && !line.startsWith('|'));
  return lines.slice(start + 2, end).map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => read(cell).trim()),
  );
}

const told = (changes: Partial<Answers>): CheckedFile => ({
  ...checked(LINKED),
  answers: { ...solve(LINKED), problems: [], findings: [], facts: [], notChecked: [], parts: [], requirements: [], ...changes },
});

const angle = (degrees: number): { value: number; dimension: 'angle' } => ({ value: (degrees * Math.PI) / 180, dimension: 'angle' });

describe('a page', () => {
  it('begins with file and title, how it stands in one line, and ends with the caution', () => {
    const page = checkMarkdown([checked(DEMANDING_FILE.replace('levers:', 'title: Rev B\nlevers:'))]);
    expect(page).toMatch(
      /^## car\.throttle\.yaml: Rev B\n\n\*\*.*errors?, .*warnings?, .*notes?; 1 requirement passed, 2 failed, 1 not decidable; .* not checked\*\*\n/,
    );
    expect(page).toMatch(/\n> \*\*Caution\.\*\* A throttle that does not close kills\.[^\n]*\n$/);
  });

  it('tells findings with severity, a link to the code’s page, place, message with the limit, and cure', () => {
    const start = LINKED.indexOf('radius: 30');
    const page = checkMarkdown([
      told({
        findings: [
          {
            code: 'transmission-angle',
            severity: 'warning',
            part: 'link',
            span: { start, end: start + 10 },
            message: 'The rod `link` has 31.2°',
            cure: 'Turn the arm',
            limit: { ...angle(40), from: 'textbook' },
          },
        ],
      }),
    ]);
    expect(tableOf(page, 'Severity')).toEqual([
      [
        'warning',
        '[transmission-angle](docs/codes/transmission-angle.md)',
        'car.throttle.yaml:4:42',
        'The rod link has 31.2°; limit 40° (textbook)',
        'Turn the arm',
      ],
    ]);
    expect(page).toContain('<code>link</code> has');
    expect(tableOf(page, 'Code')[0]?.[1]).toMatch(/^Rod, cable or fork meets the driven arm/);
  });

  it('tells requirements with actual, demanded and margin, a row a comparison', () => {
    const rows = tableOf(checkMarkdown([checked(DEMANDING_FILE)]), 'Requirement');
    expect(rows.map(([name, outcome]) => [name, outcome])).toEqual([
      ['opens', 'passed'],
      ['fails', 'failed'],
      ['', ''],
      ['never', 'failed'],
      ['nowhere', 'not decidable'],
    ]);
    expect(rows[0]?.[2]).toMatch(/^[\d.]+° at [\d.]+ %$/);
    expect(rows[0]?.[3]).toBe('≥ 10°');
    expect(rows[1]?.[4]).toMatch(/^−[\d.]+°$/);
    expect(rows[3]?.[2]).toContain('never');
    expect(rows[4]?.[2]).toContain('every pedal position');
  });

  it('tells other places that a finding speaks of behind the cure, a line each', () => {
    const start = LINKED.indexOf('radius: 30');
    const finding = (cure: object): Answers['findings'][number] => ({
      ...{ code: 'no-return-spring', severity: 'error', part: 'shaft', span: { start, end: start + 10 }, message: 'Nothing closes it' },
      ...cure,
      related: [
        { span: { start: 0, end: 4 }, message: 'the spring `foot` | <b>' },
        { span: { start, end: start + 1 }, message: 'this' },
      ],
    });
    const page = checkMarkdown([told({ findings: [finding({ cure: 'Put two' }), finding({})] })]);
    expect(tableOf(page, 'Severity').map((row) => row[4])).toEqual([
      'Put two / see line 1: the spring foot | <b> / see line 4: this',
      'see line 1: the spring foot | <b> / see line 4: this',
    ]);
    expect(page).toContain('Put two<br>see line 1: the spring <code>foot</code> &#124; &#60;b&#62;<br>see line 4: this |');
  });

  it('tells openly what bears on closing and was not checked, and folds the rest', () => {
    const text = CLOSED_BY_TWO.replace(', groove: 90 deg', '');
    const page = checkMarkdown([checked(text)]);
    const { notChecked, definition } = solve(text);
    const open = page.slice(page.indexOf('**Not checked'), page.indexOf('<details>'));
    expect(open).toMatch(/^\*\*Not checked, of what closes the throttle\*\*\n\n\| Part \| Place \| What \|\n/);
    const names = ['pedal', ...[...(definition?.springs ?? []), ...(definition?.plates ?? [])].map(({ name }) => name)];
    const bearing = notChecked.filter(({ part }) => names.includes(part));
    expect(bearing.length).toBeGreaterThan(1);
    expect(tableOf(open, 'Part').map(([part]) => part)).toEqual(bearing.map(({ part }) => part));
    expect(notChecked.length).toBeGreaterThan(bearing.length);
    expect(page).toContain(`<summary>Not checked besides: ${notChecked.length - bearing.length}</summary>`);
  });

  it('folds load path, facts and what else was not checked away, each a table of its own', () => {
    const text = CLOSED_BY_TWO.replace(', groove: 90 deg', '');
    const page = checkMarkdown([checked(text)]);
    const folded = [...page.matchAll(/<details>\n<summary>([^<\n]*)<\/summary>\n\n\|[^]*?\|\n\n<\/details>/g)].map(([, title]) => title);
    expect(folded.slice(0, 3)).toEqual(['Load path', 'Facts', expect.stringMatching(/^Not checked besides: \d+$/)]);
    const { parts } = solve(text);
    expect(parts.length).toBeGreaterThan(4);
    expect(tableOf(page.slice(page.indexOf('<summary>')), 'Part').map(([name, kind]) => [name, kind])).toEqual(
      parts.map(({ name, kind }) => [name, kind]),
    );
    expect(page.match(/<details>/g)).toHaveLength(page.match(/<\/details>/g)?.length ?? 0);
  });

  it('has a heading a file, says of a missing one that it cannot be read, and the caution once', () => {
    const page = checkMarkdown([checked(SOUND_FILE), MISSING, checked(EMPTY_FILE, 'empty.throttle.yaml'), fromStandardInput(BROKEN_FILE)]);
    expect(read(page).match(/^## .*$/gm)).toEqual([
      '## car.throttle.yaml',
      '## gone.throttle.yaml',
      '## empty.throttle.yaml',
      '## <stdin>',
    ]);
    expect(page).toContain('**cannot be read**: there is no such file');
    expect(page).toContain('## empty.throttle.yaml\n\n**cannot be used**\n\n| Severity |');
    expect(page.match(/Caution/g)).toHaveLength(1);
  });
});

describe('a person’s own words', () => {
  const files = [...wholeFiles(), checked(HOSTILE_FILE, `${HOSTILE_WORDS}.throttle.yaml`), checked(BROKEN_FILE), MISSING];
  const page = checkMarkdown([...files, { name: HOSTILE_WORDS, uri: 'x', reason: HOSTILE_WORDS }]);

  it('never break a table: every row has the cells of its header', () => {
    let cells = 0;
    let rows = 0;
    for (const line of page.split('\n')) {
      if (!line.startsWith('|')) cells = 0;
      else if (cells === 0) cells = line.split('|').length;
      else {
        expect(line.split('|')).toHaveLength(cells);
        expect(line.endsWith(' |')).toBe(true);
        rows++;
      }
    }
    expect(rows).toBeGreaterThan(100);
  });

  it('never are markup: no tag, backtick, link, picture, mention, number of an issue, address or formula of theirs', () => {
    const rest = page
      .replace(/<\/?(?:code|details|summary)>|<br>/g, '')
      .replace(/\[[a-z-]+\]\(docs\/codes\/[a-z-]+\.md\)/g, '')
      .replace(/^## |^> /gm, '')
      .replace(
        /\*\*(?:Caution\.|Not checked, of what closes the throttle|cannot be read|cannot be used|[^*\n]*(?:errors?|notes?)[^*\n]*)\*\*/g,
        '',
      );
    expect(rest.match(/[<>`*_[\]\\$!@#~^](?!\d+;)/g) ?? []).toEqual([]);
    expect(rest).not.toMatch(/&(?!#\d+;|emsp;)/);
    expect(rest).not.toMatch(/&#(?:64|35);(?!\u200b)/);
    expect(rest).not.toMatch(/www\.|:\/\/|mailto:|:smile:/);
    expect(rest).not.toMatch(/[^\P{Cc}\n]|\u202e/u);
  });

  it('never close what they stand in', () => {
    expect(page.match(/<code>/g)?.length).toBe(page.match(/<\/code>/g)?.length);
    expect(page.match(/<details>/g)?.length).toBe(page.match(/<\/details>/g)?.length);
  });

  it('read as they were written', () => {
    const shown = HOSTILE_WORDS.replace(/\p{Cc}|\u202e/gu, '\ufffd');
    expect(read(markdownText(HOSTILE_WORDS))).toBe(shown);
    expect(read(markdownCode(HOSTILE_WORDS))).toBe(shown);
    expect(read(page)).toContain(`: ${shown}\n`);
  });
});

describe('a message', () => {
  it('shows what it quotes in the type of code', () => {
    expect(markdownMessage('There is no `a_b`; write `c` or ``')).toBe('There is no <code>a&#95;b</code>; write <code>c</code> or ');
  });

  it('shows an odd backtick as one', () => {
    expect(markdownMessage('a ` b')).toBe('a &#96; b');
    expect(read(markdownMessage('`a` b ` c | d'))).toBe('a b ` c | d');
  });

  it('stays on one line', () => {
    expect(markdownText('a\r\n  | b\n\nc\u2028d')).toBe('a &#124; b c d');
  });
});
