import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { along } from '../../src/findings/study.ts';
import { hoverAt } from '../../src/language/hover.ts';
import { solve } from '../../src/solve.ts';
import { greatestOf, leastOf } from '../../src/travel/extremes.ts';
import { checkHover, hoverText } from './support/checkHover.ts';
import { EVERY_NAME } from './support/everyName.ts';

const EXAMPLE = readFileSync('examples/four-barrel.throttle.yaml', 'utf8');
const TWO = readFileSync('examples/two-banks.throttle.yaml', 'utf8');

/** The text with the cursor within the first occurrence of a word after a place. */
function on(text: string, word: string, after = ''): string {
  const from = after === '' ? 0 : text.indexOf(after);
  const at = text.indexOf(word, from);
  if (from < 0 || at < 0) throw new Error(`no ${word} after ${after}`);
  return `${text.slice(0, at + 1)}$0${text.slice(at + 1)}`;
}

const HAND = `format: 1
title: <b>not</b> bold
let:
  reach: 1.5 inch ± 0.1 mm
  half: reach / 2 + 1 mm
points:
  here: [10, 20, 3]
levers:
  crank:
    pivot: here
    arms: {out: {radius: half, angle: 30 deg}, in: {at: [12, 1 cm]}}
require:
  short: half <= 22 mm
`;

describe('over a value', () => {
  test('are its size in the unit of the place and as written, its tolerance, and what follows from it', () => {
    checkHover(on(HAND, '5 inch'), '1.5 inch ± 0.1 mm', [
      '38.1 mm',
      'written 1.5 inch',
      'Tolerance ±0.1 mm: from 38 mm to 38.2 mm',
      'let.half = 20.05 mm',
    ]);
  });

  test('is the formula with its values put in', () => {
    checkHover(on(HAND, '/ 2'), 'reach / 2 + 1 mm', [
      '20.05 mm',
      'reach / 2 + 1 mm = 38.1 mm / 2 + 1 mm',
      'levers.crank.arms.out.radius = 20.05 mm',
    ]);
  });

  test('in another unit within a place both are told', () => {
    checkHover(on(HAND, '1 cm'), '1 cm', ['10 mm', 'written 1 cm']);
  });

  test('over a unit is what it is in SI', () => {
    checkHover(on(HAND, 'inch'), 'inch', ['1 inch = 0.0254 m']);
    checkHover(on(EXAMPLE, 'N*mm/deg'), 'N*mm/deg', ['1 N*mm/deg = 0.0572957795131 N·m/rad']);
    checkHover(on(HAND, 'mm', '± 0.1'), 'mm', ['1 mm = 0.001 m']);
  });

  test('in quotes and with a byte order mark it is at the same place', () => {
    const text = HAND.replace('reach / 2 + 1 mm', '"reach / 2 + 1 mm"');
    checkHover(on(`\ufeff${text.replaceAll('\n', '\r\n')}`, '/ 2'), 'reach / 2 + 1 mm', ['20.05 mm']);
  });
});

describe('over a name', () => {
  test('of `let` is its value, where it is used too', () => {
    checkHover(on(HAND, 'reach', 'half:'), 'reach', ['reach · a named value', '38.1 mm', 'let.half']);
  });

  test('of a point is its place', () => {
    checkHover(on(HAND, 'here', 'pivot'), 'here', ['a place', '[10 mm, 20 mm, 3 mm]']);
  });

  test('of an arm or a drum is where it is and what it carries', () => {
    checkHover(on(EXAMPLE, 'out', 'from: bellcrank'), 'out', [
      'bellcrank.out · an arm',
      'Pin at 38 mm, drawn at 166°',
      'Carries rod link.',
    ]);
    checkHover(on(TWO, 'snail'), 'snail', ['a drum', 'Radius from 20 mm to 24.5 mm by its profile', 'Carries cable main.']);
  });

  test('of a requirement is how it stands', () => {
    checkHover(on(TWO, 'opens fully'), 'opens fully', ['passed', '80° ≥ 79°']);
  });
});

describe('over a part is what it does over the travel', () => {
  const study = solve(TWO).study!;
  const degrees = (value: number | undefined): string => (((value ?? NaN) * 180) / Math.PI).toFixed(1).replace(/\.0$/, '');
  const least = (column: string): string => degrees(leastOf(along(study, column), study.travel.samples)?.value);
  const greatest = (column: string): string => degrees(greatestOf(along(study, column), study.travel.samples)?.value);

  test('rod: class, least transmission and drive, and where', () => {
    checkHover(on(TWO, 'front_link'), 'front_link', [
      'a rod from bellcrank.front to front.arm',
      'Four-bar: spatial',
      `Least transmission angle ${least('front_link.transmission')}° at `,
      'at front',
      `Least drive angle ${least('front_link.drive')}° at `,
      'at bellcrank',
    ]);
    checkHover(on(EXAMPLE, 'link', 'rods:'), 'link', ['a rod', 'Four-bar: ', 'Grashof class']);
  });

  test('lever: opening, ratio and closing torque', () => {
    checkHover(on(TWO, 'front', '{lever: front'), 'front', [
      `Opens ${greatest('front.opening')}° at `,
      'rests at 0°',
      'Ratio from',
      'Least closing torque',
    ]);
  });

  test('cable: pull, slack and stretch', () => {
    checkHover(on(EXAMPLE, 'main', 'cables:'), 'main', [
      'a cable from pedal.clevis to bellcrank.quadrant',
      'Pulls',
      'Slack 1 mm as drawn',
      'Stretches 0.53 mm past an open stop',
    ]);
  });

  test('spring: torque at rest, at full and least', () => {
    checkHover(on(TWO, 'front_return'), 'front_return', [
      'a spring',
      'Closing torque 250 N·mm at rest, 442 N·mm at full pedal',
      'Least 250 N·mm at 0 %',
    ]);
  });

  test('plates: area at rest and at full', () => {
    checkHover(on(TWO, 'rear_bank'), 'rear_bank', [
      'a set of plates',
      'Open area of one plate:',
      'mm² at rest',
      'mm² at full pedal',
      'Of its greatest possible:',
    ]);
  });

  test('sensor: signal at rest and full, and its resolution', () => {
    checkHover(on(EXAMPLE, 'position'), 'position', [
      'a sensor',
      'Signal 0.936 V at rest',
      'at full pedal',
      'Resolution',
      'counts for 1° of shaft',
    ]);
  });

  test('slot: the reach of its pin', () => {
    checkHover(on(SLOT, 'fork_slot'), 'fork_slot', ['a slot', 'Reach from', 'to', 'Least transmission angle']);
  });

  test('coupling: its ratio', () => {
    const sample = readFileSync('test/support/sample.throttle.yaml', 'utf8');
    checkHover(on(sample, 'sensor_drive'), 'sensor_drive', ['a coupling', 'Ratio -1']);
  });

  test('the pedal: its travel and effort', () => {
    checkHover(on(EXAMPLE, 'pedal: {'), 'pedal', ['what the foot moves', 'Turns 27°', 'Effort from 0.21 N to', 'Least release force']);
  });

  test('with what was found about it', () => {
    const broken = readFileSync('examples/binding-broken.throttle.yaml', 'utf8');
    checkHover(on(broken, 'link', 'rods:'), 'link', ['a rod', 'error', 'comes in line with the arm of shaft']);
  });

  test('obstacle: the least gap to it, and what of it was not checked; a movement: what it does', () => {
    const firm = readFileSync('examples/firm-pedal.throttle.yaml', 'utf8');
    const { facts } = solve(firm);
    const gap = facts.find(({ part, key }) => part === 'fuel_rail' && key === 'keep-out-gap');
    if (gap?.figure === undefined) throw new Error('no gap to the fuel rail');
    checkHover(on(firm, 'fuel_rail', 'keep_out:'), 'fuel_rail', [
      'an obstacle',
      `to link: ${(1000 * gap.figure.value).toFixed(2)} mm at `,
      'not checked: whether these clear it: the housing of main; ',
    ]);
    checkHover(on(EVERY_NAME, 'rock', 'movements:'), 'rock', [
      'a movement of the engine',
      'shaft open at rest with it',
      'shaft open at full',
    ]);
    const unsolved = EVERY_NAME.replace('pedal: {lever', 'pedal: {lover');
    checkHover(on(unsolved, 'fuel_rail', 'keep_out:'), 'fuel_rail', ['an obstacle', 'Nothing is solved']);
  });

  test('a part that the pedal does not move says so', () => {
    checkHover(on(HAND, 'crank'), 'crank', ['a lever', 'Nothing is solved']);
  });
});

describe('over a key or word', () => {
  test('is its meaning from the format', () => {
    checkHover(on(EXAMPLE, 'preload'), 'preload', ['Closing torque in the drawn position.', 'A torque', '240 N·mm']);
    checkHover('levers:\n  a:\n    piv$0ot:', 'pivot', ['A place on the axis', 'Required.']);
  });

  test('of a spring is that of its kind', () => {
    const torsion = hoverText('springs:\n  s: {lever: a, ra$0te: 3}');
    expect(torsion?.shown).toContain('Torque per angle.');
    expect(torsion?.shown).not.toContain('Force per length.');
    checkHover('springs:\n  s: {from: a.b, ra$0te: 3}', 'rate', ['Force per length.']);
  });

  test('one of a few words is explained', () => {
    checkHover('rods:\n  link: {ends: {kind: cle$0vis}}', 'clevis', ['clevis: fork and pin']);
  });

  test('in a requirement a column has its meaning and its extremes, a function its meaning', () => {
    const study = solve(TWO).study!;
    const most = greatestOf(along(study, 'front.opening'), study.travel.samples)!;
    checkHover(on(TWO, 'opening', 'opens fully'), 'opening', [
      'front.opening in deg: Rotation counted in its opening direction.',
      'Least 0° at 0 %',
      `greatest ${((most.value * 180) / Math.PI).toFixed(0)}° at`,
    ]);
    checkHover(on(TWO, 'at(', 'opens fully'), 'at', ['x at pedal position p', '≥ 79°']);
  });
});

describe('nothing is shown', () => {
  test.each(['# com$0ment\nformat: 1', '$0', 'format: 1\n$0\n', 'format: 1 # $0'])('%j', (marked) => {
    expect(hoverText(marked)).toBeUndefined();
  });
});

test('a person’s words stay words', () => {
  const text = HAND.replace('short: half', '"![x](http://y) <i>": half');
  const hover = hoverText(on(text, '[x]'));
  expect(hover?.hover.markdown ?? '').not.toMatch(/<i>|!\[x\]\(/);
  const unknown = hoverText('format: 1\nlet:\n  a: 3\n  b: "a + 1 # `x` <b>"$0');
  expect(unknown?.hover.markdown ?? '').not.toContain('<b>');
});

test('at any place of any cut of an example it answers, about a text around the pointer', () => {
  const names = readdirSync('examples').filter((name) => name.endsWith('.throttle.yaml'));
  const texts = names.map((name) => readFileSync(`examples/${name}`, 'utf8'));
  fc.assert(
    fc.property(
      fc.constantFrom(...texts),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 20, maxLength: 20 }),
      (whole, cut, places) => {
        const text = whole.slice(0, Math.floor(whole.length * cut));
        const answers = solve(text);
        for (const place of places) {
          const offset = Math.floor(text.length * place);
          const hover = hoverAt(answers, offset);
          if (hover === undefined) continue;
          expect(hover.span.start).toBeLessThanOrEqual(offset);
          expect(hover.span.end).toBeGreaterThanOrEqual(offset);
          expect(hover.markdown.trim()).not.toBe('');
          expect(hover.markdown).not.toContain('NaN');
          expect(hover.markdown).not.toContain('undefined');
        }
      },
    ),
    { numRuns: 60 },
  );
});

const SLOT = `format: 1
levers:
  pedal:
    pivot: [0, 0]
    arms: {pin: {radius: 30 mm, angle: 90 deg}}
  idler:
    pivot: [0, 80]
    arms: {out: {radius: 20 mm, angle: 0 deg}}
pedal: {lever: pedal, opens: clockwise, travel: 20 deg}
slots:
  fork_slot: {pin: pedal.pin, fork: idler, angle: -90 deg}
`;
