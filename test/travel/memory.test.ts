/** What is taken over from the travel solved before is, bit for bit, what solving anew gives, and is what is told of the text. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { showAnswers, showFirst } from '../../src/picture/showAnswers.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { timesAsLarge } from '../support/timesAsLarge.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const files = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => readFileSync(new URL(name, FOLDER), 'utf8'));
const twoBanks = readFileSync(new URL('two-banks.throttle.yaml', FOLDER), 'utf8');

/** Of a linkage with which the others share nothing. */
const APART = `format: 1
levers:
  alone: {pivot: [3, 4], stops: {open: 31 deg}}
pedal: {lever: alone, opens: clockwise, travel: 31 deg}
`;

describe('a travel solved after another', () => {
  it('is not to be told from one solved anew, in a storm of edits', () => {
    for (const [base, original] of [...files, timesAsLarge(twoBanks, 2)].entries()) {
      const texts = storm(original, 7919 + base);
      // All first, so that what is taken over is mostly itself taken over.
      const kept = texts.map((text) => told(solve(text)));
      const anew = eachAnew(texts, told);
      kept.forEach((each, i) => expect(each, `edit ${i}:\n${texts[i]!}`).toEqual(anew[i]));
    }
  }, 240_000);

  it('tells the same problems and findings at the same places, in a storm of edits of every kind', () => {
    for (const [base, original] of [...files, timesAsLarge(twoBanks, 14)].entries()) {
      const texts = stormOfAll(original, 104_729 + base);
      // Nothing else is asked for, as while a person types: what stands as it did is not solved meanwhile.
      const kept = texts.map((text) => marks(solve(text)));
      const anew = eachAnew(texts, marks);
      kept.forEach((each, i) => expect(each, `edit ${i}:\n${texts[i]!}`).toEqual(anew[i]));
    }
  }, 240_000);

  it('tells of a text the same though others were solved before it was asked for, as where the drawing goes first', () => {
    for (const [base, original] of [...files, timesAsLarge(twoBanks, 2)].entries()) {
      const texts = stormOfAll(original, 15_485_863 + base);
      const answers = texts.map((text, i) => {
        const each = solve(text);
        // Of some the positions are asked for at once, of some the findings, of some nothing.
        if (i % 3 === 0) showFirst(each, false);
        if (i % 3 === 1) expect(each.findings).toBeDefined();
        return each;
      });
      const late = answers.toReversed().map(told).toReversed();
      const anew = eachAnew(texts, told);
      late.forEach((each, i) => expect(each, `edit ${i}:\n${texts[i]!}`).toEqual(anew[i]));
    }
  }, 240_000);

  it.each([
    ['a length before', 'reach: 34 mm', 'reach: 33 mm'],
    ['the length of one of two rods', 'from: bellcrank.rear\n', 'from: bellcrank.rear\n    length: 92 mm\n'],
    ['the way that a housing points', 'leaves_along: [-1, -0.024, -0.03]', 'leaves_along: [-1, 0.5, -0.03]'],
    ['a spring', 'rear_return: {lever: rear, rate: 2.4', 'rear_return: {lever: rear, rate: 0.4'],
    ['friction', 'bend: 140 deg', 'bend: 740 deg'],
    [
      'plates',
      'rear_bank: {lever: rear, count: 2, bore: 44 mm, shaft: 8 mm, seat: 6 deg',
      'rear_bank: {lever: rear, count: 2, bore: 44 mm, shaft: 8 mm, seat: 9 deg',
    ],
    ['a sensor', 'at_closed: 12 deg', 'at_closed: 2 deg'],
    ['a way of opening', 'stops: {closed: 0 deg, open: 80 deg}', 'stops: {closed: 0 deg, open: 60 deg}'],
  ])('takes over nothing that follows from %s', (_, before, after) => {
    expect(twoBanks).toContain(before);
    const changed = twoBanks.replace(before, after);
    forget();
    const sound = told(solve(twoBanks));
    const other = told(solve(changed));
    expect(other).not.toEqual(sound);
    forget();
    expect(told(solve(changed))).toEqual(other);
  });

  it('takes over the very figures where only words change', () => {
    const first = solve(twoBanks);
    expect(first.findings.length).toBeGreaterThan(0);
    const second = solve(twoBanks.replace('title: Two', 'title: Three'));
    expect(second.study!.travel.samples).toBe(first.study!.travel.samples);
    expect(second.study!.travel.memory!.levers).toEqual(first.study!.travel.memory!.levers);
    second.study!.travel.memory!.levers.forEach((cause, i) => expect(cause).toBe(first.study!.travel.memory!.levers[i]));
  });
});

/** Solves two linkages that share nothing with the others, which are then all that is known. */
function forget(): void {
  solve(APART);
  solve(APART.replace('31 deg', '32 deg'));
}

/** What is told of texts that are solved after nothing that they share anything with; once of those that come again. */
function eachAnew<Told>(texts: readonly string[], tell: (answers: Answers) => Told): readonly Told[] {
  const known = new Map<string, Told>();
  return texts.map((text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    forget();
    const now = tell(solve(text));
    known.set(text, now);
    return now;
  });
}

/** Everything that is told of a text, each figure to its last bit. */
function told(answers: Answers): Readonly<Record<string, string>> {
  const { problems, findings, facts, requirements, parts, notChecked, study } = answers;
  const rows = study === undefined ? undefined : answers.table(study.travel.samples);
  const parted = { problems, findings, facts, requirements, parts, notChecked, rows, picture: showAnswers(answers) };
  return Object.fromEntries(Object.entries(parted).map(([what, value]) => [what, digest(value)]));
}

function marks({ problems, findings }: Answers): Readonly<Record<string, string>> {
  return { problems: digest(problems), findings: digest(findings) };
}

function digest(value: unknown): string {
  const bits = (_: string, each: unknown): unknown => {
    if (typeof each !== 'number') return each instanceof Map ? [...(each as ReadonlyMap<unknown, unknown>)] : each;
    return Object.is(each, -0) || !Number.isFinite(each) ? `number ${Object.is(each, -0) ? '-0' : each}` : each;
  };
  return createHash('sha1')
    .update(value === undefined ? '' : JSON.stringify(value, bits))
    .digest('hex');
}

const EDITS = 16;

/** Half of the texts are one slip from the file, the others one more mistake beside those that are there. */
function storm(original: string, seed: number): readonly string[] {
  const draw = drawing(seed);
  let text = original;
  return Array.from({ length: EDITS }, (_, i) => {
    text = i % 6 === 5 ? original : edited(draw() < 0.5 ? original : text, draw);
    return text;
  });
}

/** One edit of each kind, each taken back, and then one upon another. */
function stormOfAll(original: string, seed: number): readonly string[] {
  const draw = drawing(seed);
  const texts = [original];
  for (const edit of EDITS_OF_ALL_KINDS) texts.push(edit(original, draw), original);
  let text = original;
  for (const edit of EDITS_OF_ALL_KINDS) texts.push((text = edit(text, draw)));
  return texts;
}

type Edit = (text: string, draw: () => number) => string;

const EDITS_OF_ALL_KINDS: readonly Edit[] = [
  (text) => `# A comment above all\n${text}`,
  (text, draw) => atLine(text, draw, (line) => [/^ *(?:#|$)/.test(line) ? '' : `${line} # said beside it`]),
  (text, draw) => atLine(text, draw, (line) => ['', line]),
  (text) => text.replace(/^title: /m, 'title: More than '),
  (text, draw) => edited(text, () => draw() * 0.6),
  // Each name in turn, wherever it stands.
  (text, draw) => {
    const names = [...text.matchAll(/^ {2}([a-z_]{4,}):/gm)].map(([, name]) => name!);
    const name = names[Math.floor(draw() * names.length)] ?? 'pedal';
    return text.replaceAll(new RegExp(`(?<![a-z_])${name}(?![a-z_])`, 'g'), `${name}_too`);
  },
  (text, draw) => atLine(text, draw, () => []),
  (text, draw) => atLine(text, draw, (line) => [`${line} {`]),
  (text) => text.replace(/>= |<= /, '> '),
  (text, draw) => atLine(text, draw, (line) => [line.replace(/(\d) (mm|deg)/, '$1.0 $2')]),
];

/** A line in the place of which others are put. */
function atLine(text: string, draw: () => number, instead: (line: string) => readonly string[]): string {
  const lines = text.split('\n');
  const at = Math.floor(draw() * lines.length);
  return lines.toSpliced(at, 1, ...instead(lines[at] ?? '')).join('\n');
}

function edited(text: string, draw: () => number): string {
  const kind = draw();
  if (kind < 0.6) {
    const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
    const at = digits[Math.floor(draw() * digits.length)] ?? 0;
    return text.slice(0, at) + String(Math.floor(draw() * 10)) + text.slice(at + 1);
  }
  if (kind < 0.8) {
    const at = Math.floor(draw() * text.length);
    return text.slice(0, at) + String.fromCharCode(97 + Math.floor(draw() * 26)) + text.slice(at);
  }
  const lines = text.split('\n');
  const at = Math.floor(draw() * lines.length);
  return (draw() < 0.5 ? lines.toSpliced(at, 1) : lines.toSpliced(at, 0, lines[at] ?? '')).join('\n');
}

/** Numbers from 0 to below 1, the same for the same seed. */
function drawing(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
