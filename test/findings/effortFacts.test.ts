/** What is told of the foot: the step at tip-in, the loop and its work, the pad's travel, and what guidance says. By hand. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/findings/finding.ts';
import { solve } from '../../src/solve.ts';
import { FULL, onShaft, TWO } from './hungSprings.ts';

/** N·mm at rest, N·mm/deg of the two springs together; mm. */
const [PRELOAD, RATE, DRUM] = [600, 4, 24];
const MU_PHI = 0.1 * Math.PI;

const factsOf = (text: string, part = 'pedal'): readonly Fact[] => solve(text).facts.filter((each) => each.part === part);
const told = (text: string, key: string, part?: string): Fact => {
  const [fact, second] = factsOf(text, part).filter((each) => each.key === key);
  if (fact === undefined || second !== undefined) throw new Error(`not one ${key}`);
  return fact;
};
const rubbing = (cable: string, pedal = '', springs = TWO): string =>
  onShaft(springs)
    .replace('to: shaft.wheel}}', `to: shaft.wheel, bend: 180 deg, ${cable}}}`)
    .replace('pull: 25.13 mm}', `pull: 25.13 mm${pedal}}`);

describe('the step at tip-in', () => {
  it('is all that the springs ask for where the throttle starts from rest', () => {
    const step = told(onShaft(TWO), 'tip-in-step');
    expect(step.figure).toEqual({ value: expect.closeTo(PRELOAD / DRUM, 4) as number, dimension: 'force' });
    expect(step.travel).toBe(0);
  });

  it('comes where the slack ends, by the cable’s friction greater', () => {
    const step = told(rubbing('friction: 0.1, slack: 2 mm'), 'tip-in-step');
    expect(step.travel).toBeCloseTo(2 / 25.13, 8);
    expect(step.figure?.value).toBeCloseTo((PRELOAD / DRUM) * Math.exp(MU_PHI), 4);
  });

  it('is what comes on top of what the pedal itself asks for', () => {
    const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 200, angle: -90 deg}}, drums: {wheel: {radius: 50, wraps: counterclockwise}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 80 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 20 deg, pad: pad}
cables: {main: {from: pedal.wheel, leaves: [60, 50], enters: [240, 24], to: shaft.wheel, slack: 5 mm, stiffness: 50 N/mm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  own: {lever: pedal, rate: 10 N*mm/deg, preload: 1000 N*mm}
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
`;
    // 600 N·mm over 24 mm pull with 25 N on 50 mm: 1250 N·mm over 200 mm.
    const step = told(text, 'tip-in-step');
    expect(step.figure?.value).toBeCloseTo(6.25, 3);
    expect(step.travel).toBeCloseTo(5 / (50 * 20 * (Math.PI / 180)), 8);
    expect(told(text, 'pad-travel').figure?.value).toBeCloseTo(0.2 * 20 * (Math.PI / 180), 12);
    expect(told(text, 'effort-at-rest').figure?.value).toBeCloseTo(5, 9);
  });
});

describe('the step in the cable', () => {
  const text = rubbing('friction: 0.1, slack: 2 mm', ', lever_ratio: 4.5');
  const inCable = (from: string) => solve(from).facts.filter(({ key, part }) => key === 'tip-in-step' && part === 'main');

  it('stands beside that at the pad, by the ratio of the two greater', () => {
    const [step] = inCable(text);
    expect(step?.travel).toBeCloseTo(2 / 25.13, 8);
    expect(step?.figure?.value).toBeCloseTo((PRELOAD / DRUM) * Math.exp(MU_PHI), 4);
    expect(told(text, 'tip-in-step').figure?.value).toBeCloseTo(((PRELOAD / DRUM) * Math.exp(MU_PHI)) / 4.5, 4);
  });

  it('is told without a place where the foot presses, too', () => {
    const pedal = `format: 1
levers:
  pedal: {pivot: [0, 0], drums: {wheel: {radius: 50, wraps: counterclockwise}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 80 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 20 deg}
cables: {main: {from: pedal.wheel, leaves: [60, 50], enters: [240, 24], to: shaft.wheel, slack: 5 mm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs: {one: {lever: shaft, rate: 2 N*mm/deg, preload: 600 N*mm}}
`;
    expect(inCable(pedal)[0]?.figure?.value).toBeCloseTo(600 / 24, 4);
    expect(factsOf(pedal).some(({ key }) => key.startsWith('tip-in'))).toBe(false);
  });

  it('is not told twice where the pedal is the cable', () => {
    expect(inCable(rubbing('friction: 0.1, slack: 2 mm'))).toEqual([]);
  });
});

describe('effort with a spring off', () => {
  it('is half of it with one of two equal springs, with friction and without', () => {
    const most = (PRELOAD + RATE * FULL) / 2 / DRUM;
    for (const spring of ['one', 'two']) {
      const off = told(rubbing('friction: 0.1'), 'effort-greatest-off', spring);
      expect(off.figure?.value).toBeCloseTo(most * Math.exp(MU_PHI), 2);
      expect(off.travel).toBe(1);
      const smooth = told(onShaft(TWO), 'effort-greatest-off', spring);
      expect(smooth.figure?.value).toBeCloseTo(most, 2);
      expect(smooth.label).toContain('friction left out');
    }
  });
});

describe('the loop', () => {
  /** N·m: the springs’ work over the stroke, which pressing takes more of and coming back gives less of by the capstan’s factor. */
  const WORK = (PRELOAD * FULL + (RATE * FULL * FULL) / 2) * (Math.PI / 180) * 1e-3;

  it('takes the work that the capstan equation leaves between pressing and coming back', () => {
    const expected = WORK * (Math.exp(MU_PHI) - Math.exp(-MU_PHI));
    const work = told(rubbing('friction: 0.1'), 'loop-work');
    expect(work.figure?.dimension).toBe('energy');
    expect(work.figure?.value).toBeCloseTo(expected, 5);
    expect(told(rubbing('friction: 0.1'), 'loop-width').figure?.value).toBeCloseTo(expected / 25.13e-3, 3);
    // At a pad the same work.
    expect(told(rubbing('friction: 0.1', ', lever_ratio: 4.5'), 'loop-work').figure?.value).toBeCloseTo(expected, 5);
  });

  it('comes back with less where a spring is off, and with nothing where friction then holds it', () => {
    // Each of two equal springs is half of the torque; the capstan leaves exp(−μφ) of it on the way back.
    const half = ((PRELOAD / 2 / DRUM) * 1) / Math.exp(MU_PHI);
    for (const spring of ['one', 'two']) {
      const off = told(rubbing('friction: 0.1'), 'release-least-off', spring);
      expect(off.figure?.value).toBeCloseTo(half, 6);
      expect(off.travel).toBe(0);
    }
    const held = rubbing('friction: 0.1').replace('pivot: [100, 0]', 'friction: 310 N*mm, pivot: [100, 0]');
    expect(told(held, 'release-least').figure?.value).toBeGreaterThan(0);
    expect(told(held, 'release-least-off', 'one').figure?.value).toBe(0);
  });

  it('is not told of where no friction is given', () => {
    expect(factsOf(onShaft(TWO)).some(({ key }) => key.startsWith('loop'))).toBe(false);
  });
});

describe('guidance', () => {
  it('stands with its source beside travel and force of the pad, and judges nothing', () => {
    const text = rubbing('friction: 0.1', ', lever_ratio: 4.5');
    expect(told(text, 'pad-travel').figure?.value).toBeCloseTo(4.5 * 25.13e-3, 12);
    for (const key of ['pad-travel', 'effort-least', 'effort-greatest']) {
      expect(told(text, key).guidance, key).toMatch(/\d+ (?:mm|N).*; MIL-STD-1472, from memory$/);
    }
    expect(factsOf(text).filter(({ guidance }) => guidance !== undefined)).toHaveLength(3);
  });

  it('says nothing of the pull of a cable, which no foot feels', () => {
    expect(factsOf(onShaft(TWO)).filter(({ key, guidance }) => guidance !== undefined || key === 'pad-travel')).toEqual([]);
  });
});

describe('effort at the stop and at full pedal', () => {
  const beyond = (pull: string): string => `format: 1
levers:
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 24, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 80 deg}}
pedal: {cable: main, pull: ${pull}, lever_ratio: 4}
cables: {main: {enters: [240, 24], to: shaft.wheel, slack: 1 mm, stiffness: 50 N/mm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 4 deg}}
springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
`;
  /** mm that the cable has to be pulled: its slack, and 80° of the drum. */
  const TO_STOP = 1 + (24 * 80 * Math.PI) / 180;

  it('are told apart where the pedal goes on beyond the stop and stretches the cable', () => {
    const text = beyond(`${TO_STOP + 0.4} mm`);
    // 920 N·mm over 24 mm; then 0.4 mm of stretch at 50 N/mm on top; the lever ratio shares both by four.
    const [atStop, atFull] = [told(text, 'effort-at-stop'), told(text, 'effort-at-full')];
    expect(atStop.figure?.value).toBeCloseTo(920 / 24 / 4, 3);
    expect(atStop.travel).toBeCloseTo(TO_STOP / (TO_STOP + 0.4), 6);
    expect(atFull.figure?.value).toBeCloseTo((920 / 24 + 0.4 * 50) / 4, 3);
    expect([atStop.label, atFull.label, atFull.travel]).toEqual([
      'effort as shaft meets its open stop, friction left out',
      'effort at full pedal, pressed on beyond that stop, friction left out',
      1,
    ]);
  });

  it('are not told where the pedal ends before the stop', () => {
    expect(factsOf(beyond(`${TO_STOP - 1} mm`)).map(({ key }) => key)).not.toContain('effort-at-stop');
  });
});
