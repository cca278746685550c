/** What must be kept: by the figures themselves, never by what a file leaves unsaid; and on the steps that values have. */
import { describe, expect, test } from 'vitest';
import { solve } from '../../../src/solve.ts';
import { finished } from '../../../src/studies/finished.ts';
import { isSound, keepsAll } from '../../../src/studies/tune/answers.ts';
import { demandsOf, judge } from '../../../src/studies/tune/demands.ts';
import type { Tuned } from '../../../src/studies/tune/tune.ts';
import { tuneText } from '../../../src/tuneText.ts';

const DEG = Math.PI / 180;

interface Choice {
  readonly preload?: number;
  /** mm */
  readonly a?: number;
  /** deg */
  readonly al?: number;
  readonly be?: number;
  readonly friction?: boolean;
  readonly more?: string;
  /** Whether the rod has a width. */
  readonly thick?: boolean;
  readonly tune: string;
}

/** A drum that turns a crank of 30 mm, and a shaft on a pivot 90 mm beside it. */
const linkage = ({
  preload = 180,
  a = 30,
  al = 120,
  be = 115,
  friction = true,
  more = '',
  thick = false,
  tune,
}: Choice): string => `format: 1
let: {a: ${a} mm, al: ${al} deg, pre: ${preload} N*mm}
levers:
  crank:
    pivot: [0, 0]
    arms: {out: {radius: a, angle: al}}
    drums: {quadrant: {radius: 24 mm, wraps: clockwise}}${friction ? '\n    friction: 30 N*mm' : ''}
  shaft:
    pivot: [90, 10]
    arms: {arm: {radius: 32 mm, angle: ${be} deg}}
    stops: {closed: 0 deg, open: 78 deg}${friction ? '\n    friction: 30 N*mm' : ''}
pedal: {cable: main, pull: 36 mm}
cables: {main: {to: crank.quadrant, enters: [-60, 30], slack: 0 mm}}
rods: {link: {from: crank.out, to: shaft.arm${thick ? ', width: 8 mm' : ''}}}
plates: {bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}}
${more}tune:
${tune}`;

const SPRINGS = `springs:
  one: {lever: shaft, rate: 0.5 N*mm/deg, preload: pre}
  two: {lever: shaft, rate: 0.5 N*mm/deg, preload: pre}
`;
const FREE = '  free: {pre: {from: 0 N*mm, to: 300 N*mm}}\n  curve: {of: shaft.opening, through: [[0 %, 0 deg], [100 %, 60 deg]]}\n';

function judged(text: string): ReadonlyMap<string, { readonly shortfall: number; readonly words: string }> {
  const answers = solve(text);
  return new Map(judge(answers, demandsOf(answers.study!)).map((each) => [each.demand.name, each]));
}

describe('an angle beyond its limit', () => {
  const tune = `${FREE}  keep: [transmission]\n`;
  /** The least transmission angle in degrees, at rest here: between the rod as drawn and the shaft's arm, from their places. */
  const angleAt = (be: number): number => {
    const [out, arm] = [120 * DEG, be * DEG];
    const rod = Math.atan2(10 + 32 * Math.sin(arm) - 30 * Math.sin(out), 90 + 32 * Math.cos(arm) - 30 * Math.cos(out));
    return Math.asin(Math.abs(Math.sin(rod - arm))) / DEG;
  };

  test('falls shorter the smaller it is, on past the limit of the error', () => {
    const clockings = [144, 148, 152, 154, 158, 165];
    const angles = clockings.map(angleAt);
    expect(angles.map((angle) => angle < 25)).toEqual([false, false, false, true, true, true]);
    clockings.forEach((be, i) => {
      const { shortfall } = judged(linkage({ be, tune })).get('transmission')!;
      expect(shortfall).toBeCloseTo((40 - angles[i]!) / 40, 6);
    });
  });

  test('is told of the rod that is worst, though that one is an error and another a warning', () => {
    const second = `  other:
    pivot: [180, 20]
    arms: {arm: {radius: 32 mm, angle: 153 deg}}
    stops: {closed: 0 deg}
`;
    const text = linkage({ be: 150, tune })
      .replace(
        '    arms: {arm: {radius: 32 mm, angle: 150 deg}}',
        '    arms: {arm: {radius: 32 mm, angle: 150 deg}, on: {radius: 32 mm, angle: 115 deg}}',
      )
      .replace('pedal: {cable', `${second}pedal: {cable`)
      .replace('rods: {', 'rods: {sync: {from: shaft.on, to: other.arm}, ');
    const { words } = judged(text).get('transmission')!;
    expect(words).toContain('The rod sync has a transmission angle of');
  });
});

describe('closing with a spring off', () => {
  const tune = `${FREE}  keep: [closing_torque, closing_margin]\n`;
  const at = (preload: number): ReturnType<typeof judged> => judged(linkage({ preload, more: SPRINGS, tune }));

  // At rest the drum's friction comes to the shaft by the ratio of the four-bar, which is had from its closed form below.
  const ratio = ((): number => {
    const [out, arm] = [120 * DEG, 115 * DEG];
    const one = { x: 30 * Math.cos(out), y: 30 * Math.sin(out) };
    const other = { x: 90 + 32 * Math.cos(arm), y: 10 + 32 * Math.sin(arm) };
    const along = { x: other.x - one.x, y: other.y - one.y };
    // Moments of a force along the rod about either pivot.
    const moment = ({ x, y }: { x: number; y: number }): number => x * along.y - y * along.x;
    return Math.abs(moment({ x: other.x - 90, y: other.y - 10 }) / moment(one));
  })();
  const needed = 30 + 30 * ratio;

  test('is kept from the preload on that friction at both levers asks of one spring alone', () => {
    expect(at(needed * 1.01).get('closing_torque')!.shortfall).toBe(0);
    const short = at(needed * 0.9).get('closing_torque')!;
    expect(short.shortfall).toBeCloseTo(0.1, 2);
    expect(short.words).toMatch(/^With (?:one|two) off, the closing torque at shaft is only 0\.9 times the friction/);
  });

  test('falls shorter the weaker the springs are, also where friction holds it with both on', () => {
    for (const name of ['closing_torque', 'closing_margin']) {
      const shorts = [20, 28, 31, 32, 45, 60].map((preload) => at(preload).get(name)!.shortfall);
      expect(shorts).toEqual([...shorts].sort((a, b) => b - a));
      expect(new Set(shorts).size).toBe(shorts.length);
    }
  });

  test('without any friction in the file is told as kept without it, and the margin is not checked', () => {
    const answers = solve(linkage({ more: SPRINGS, friction: false, tune }));
    const [torque, margin] = judge(answers, demandsOf(answers.study!));
    expect(torque).toMatchObject({ shortfall: 0, without: 'without friction, of which the file gives none' });
    expect(margin).toMatchObject({ shortfall: NaN, words: 'not checked: the file gives no friction' });
  });
});

test('what the file has nothing of is not checked where `keep` names it, and is not spoken of where it does not', () => {
  const keep = '  keep: [misalignment, closing_margin, lead, step, closing_torque, clearance]\n';
  const all = judged(linkage({ tune: FREE.replace('pre: {from: 0 N*mm, to: 300 N*mm}', 'a: {from: 20 mm, to: 45 mm}') + keep }));
  for (const name of ['misalignment', 'closing_margin', 'step', 'closing_torque', 'clearance']) {
    expect(all.get(name)!.shortfall).toBeNaN();
    expect(all.get(name)!.words).toMatch(/^not checked: /);
  }
  const plain = judged(linkage({ tune: FREE }));
  expect([...plain.keys()]).toEqual(['transmission', 'drive', 'lead', 'full_opening']);
});

test('what hits falls shorter than what comes too near, and the deeper the more', () => {
  const tune = `${FREE}  keep: [clearance]\n`;
  const rail = (y: number): string => `keep_out: {rail: {circle: [55, ${y}], radius: 8 mm, clearance: 20 mm}}\n`;
  const shorts = [70, 60, 42, 38].map((y) => judged(linkage({ more: rail(y), thick: true, tune })).get('clearance')!);
  expect(shorts.map(({ shortfall }) => shortfall)).toEqual([...shorts].map(({ shortfall }) => shortfall).sort((a, b) => a - b));
  const touching = shorts.filter(({ words }) => /touch|reaches/.test(words));
  expect(touching.length).toBeGreaterThan(0);
  expect(touching.length).toBeLessThan(shorts.length);
  for (const { shortfall } of touching) expect(shortfall).toBeGreaterThanOrEqual(1);
});

describe('with steps', () => {
  const tune = `  free:
    a: {from: 20 mm, to: 45 mm, step: 5 mm}
    al: {from: 90 deg, to: 175 deg, step: 10 deg}
  curve: {of: shaft.opening, through: [[0 %, 0 deg], [25 %, 13.5847 deg], [50 %, 29.1042 deg], [75 %, 45.5934 deg], [100 %, 62.231 deg]]}
  keep: [transmission, drive]
`;
  const tuned = finished(tuneText(linkage({ be: 125, tune }), { seed: 1, rounds: 2, answers: 3 })) as Tuned;

  test('no step of all that there are is sound and nearer than the first answer', () => {
    const [best] = tuned.answers;
    expect(isSound(best!)).toBe(true);
    const wanted = [0, 13.5847, 29.1042, 45.5934, 62.231];
    for (let a = 20; a <= 45; a += 5) {
      for (let al = 90; al <= 170; al += 10) {
        const answers = solve(linkage({ a, al, be: 125, tune }));
        const values = answers.table([0, 0.25, 0.5, 0.75, 1], ['shaft.opening']).columns[0]!.values;
        const off = Math.max(...wanted.map((each, i) => Math.abs(values[i]! - each)));
        const isKept = judge(answers, demandsOf(answers.study!)).every(({ shortfall }) => shortfall === 0);
        // By the points alone it can only seem nearer than it is.
        if (isKept && Number.isFinite(off)) expect(off * DEG + 1.5 * DEG).toBeGreaterThan(best!.error);
      }
    }
  });

  test('there are several answers, each on the steps', () => {
    const sound = tuned.answers.filter(keepsAll);
    const offStep = (steps: number): number => Math.abs(steps - Math.round(steps));
    expect(sound.length).toBeGreaterThan(1);
    for (const { values } of sound) {
      expect(offStep((values[0]!.value * 1e3) / 5)).toBeLessThan(1e-9);
      expect(offStep(values[1]!.value / DEG / 10)).toBeLessThan(1e-9);
    }
  });
});
