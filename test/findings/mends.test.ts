/** Every mend that a finding carries, carried out: the finding is gone, and nothing worse has come. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ruleNameOf, takeDocApart } from '../../scripts/ruleDocs.mjs';
import type { FindingCode } from '../../src/findings/codes.ts';
import type { Mend } from '../../src/findings/finding.ts';
import { solve } from '../../src/solve.ts';
import { applyMend, type Mended } from '../support/applyMend.ts';
import { foundBy } from '../support/foundBy.ts';
import { degrees, distance, polar, radians } from './handGeometry.ts';

/** The example on the page of the code. */
const example = (code: FindingCode): string =>
  takeDocApart(readFileSync(new URL(`../../src/findings/rules/${ruleNameOf(code)}.ts`, import.meta.url), 'utf8')).example;

const mendOf = (text: string, code: FindingCode): Mend | undefined => {
  const found = foundBy(solve(text), code);
  expect(found.length).toBeGreaterThan(0);
  return found[0]?.mend;
};

/** Greatest or least of a column at a thousand stations, in its own unit. */
const over = ({ answers }: Mended, column: string): readonly number[] =>
  (
    answers.table(
      Array.from({ length: 1001 }, (_, i) => i / 1000),
      [column],
    ).columns[0]?.values ?? []
  ).map((value) => value ?? NaN);

describe('clocking an arm', () => {
  it('squares a rod to the driven arm', () => {
    const mended = applyMend(example('transmission-angle'), 'transmission-angle');
    expect(mended.mend.unknown).toBe('levers.shaft.arms.arm.angle');
    expect(mended.left).toEqual([]);
    expect(Math.min(...over(mended, 'link.transmission'))).toBeCloseTo(40, 1);
  });

  it('squares a rod to the driving arm', () => {
    const mended = applyMend(example('drive-angle'), 'drive-angle');
    expect(mended.mend.unknown).toBe('levers.pedal.arms.out.angle');
    expect(mended.left).toEqual([]);
    expect(Math.min(...over(mended, 'link.drive'))).toBeCloseTo(20, 1);
  });

  it('takes dead centres out of the travel', () => {
    expect(applyMend(example('toggle-opening'), 'toggle-opening').left).toEqual([]);
    expect(applyMend(example('toggle-returning'), 'toggle-returning').left).toEqual([]);
  });

  it('squares a cable to the pin that it pulls', () => {
    const text = `format: 1
levers:
  shaft: {pivot: [100, 0], opens: counterclockwise, arms: {arm: {radius: 40 mm, angle: 280 deg}}, stops: {closed: 0 deg}}
pedal: {cable: main, pull: 45 mm}
cables:
  main: {enters: [250, -40], to: shaft.arm}
limits: {lead: 60 deg}
`;
    for (const code of ['transmission-angle', 'toggle-opening'] as const) {
      const mended = applyMend(text, code);
      expect(mended.mend.unknown).toBe('levers.shaft.arms.arm.angle');
      expect(mended.left).toEqual([]);
      expect(Math.min(...over(mended, 'main.transmission'))).toBeCloseTo(40, 1);
    }
  });

  it('squares a cable to the pin that pulls it', () => {
    const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 60 mm, angle: 130 deg}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 30 mm, wraps: clockwise}}, stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 80 deg}
cables:
  main: {from: pedal.out, leaves: [120, 60], enters: [240, 30], to: shaft.wheel}
limits: {lead: 60 deg}
`;
    for (const code of ['drive-angle', 'toggle-returning'] as const) {
      const mended = applyMend(text, code);
      expect(mended.mend.unknown).toBe('levers.pedal.arms.out.angle');
      expect(mended.left).toEqual([]);
      expect(Math.min(...over(mended, 'main.drive'))).toBeCloseTo(20, 1);
    }
  });

  const forked = (stops: string, travel: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {tang: {radius: 30 mm, angle: 90 deg}}}
  idler: {pivot: [0, 60]${stops}}
pedal: {lever: pedal, opens: clockwise, travel: ${travel} deg}
slots:
  pair: {pin: pedal.tang, fork: idler, angle: 270 deg}
`;

  it('squares a fork to the pin that drives it', () => {
    for (const [code, travel] of [
      ['drive-angle', 50],
      ['toggle-returning', 70],
    ] as const) {
      const mended = applyMend(forked('', travel), code);
      expect(mended.mend.unknown).toBe('levers.pedal.arms.tang.angle');
      expect(mended.left).toEqual([]);
    }
  });

  it('turns the fork itself where the fork drives', () => {
    const mended = applyMend(
      `format: 1
levers:
  pedal: {pivot: [0, 0]}
  idler: {pivot: [0, 25], arms: {tang: {radius: 60 mm, angle: 90 deg}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 40 deg}
limits: {drive: [68 deg, 50 deg]}
slots:
  pair: {pin: idler.tang, fork: pedal, drives: pin, angle: 69.334 deg, offset: 30 mm}
`,
      'drive-angle',
    );
    expect(mended.mend.unknown).toBe('slots.pair.angle');
    expect(mended.left).toEqual([]);
  });

  it('is no mend where a lever behind would then miss its closed stop', () => {
    expect(mendOf(forked(', stops: {closed: 0 deg}', 50), 'drive-angle')).toBeUndefined();
    const rod = example('drive-angle').replace('to: shaft.arm}', 'to: shaft.arm, length: 68.35 mm}');
    expect(mendOf(rod, 'drive-angle')?.unknown).toBe('levers.pedal.arms.out.angle');
    expect(mendOf(rod.replace('angle: 90 deg}}}', 'angle: 90 deg}}, stops: {closed: 0 deg}}'), 'drive-angle')).toBeUndefined();
  });

  it('is no mend at a driven arm whose rod has a length of its own, since it meets the rod as before', () => {
    const text = example('transmission-angle').replace('to: shaft.arm}', 'to: shaft.arm, length: 100 mm}');
    expect(mendOf(text, 'transmission-angle')).toBeUndefined();
    const worst = (clocked: string): number | undefined =>
      solve(clocked).findings.find(({ code }) => code === 'transmission-angle')?.worst?.value;
    const last = text.lastIndexOf('angle: 60 deg');
    const turned = `${text.slice(0, last)}angle: 70 deg${text.slice(last + 'angle: 60 deg'.length)}`;
    expect(worst(turned)).toBeCloseTo(worst(text) ?? NaN, 9);
  });

  it('is no mend where the angle follows from a formula', () => {
    const text = example('transmission-angle').replace('arm: {radius: 40 mm, angle: 60 deg}', 'arm: {radius: 40 mm, angle: 30 deg * 2}');
    expect(mendOf(text, 'transmission-angle')).toBeUndefined();
  });
});

describe('moving a pin along its lever', () => {
  it('takes the tilt from a rod end', () => {
    const mended = applyMend(example('rod-end-tilt'), 'rod-end-tilt');
    expect(mended.left).toEqual([]);
    // Both bolts along z, the rod over 100 mm.
    expect(mended.value).toBeCloseTo(0.1 * Math.tan(radians(12 - 0.01)), 6);
  });

  it('moves the driving pin where only that has an offset, and none where none has', () => {
    const text = example('rod-end-tilt').replace(', offset: 26 mm', '').replace('out: {radius: 40 mm, angle: 60 deg', '$&, offset: 26 mm');
    const mended = applyMend(text, 'rod-end-tilt');
    expect(mended.mend.unknown).toBe('levers.pedal.arms.out.offset');
    expect(mended.left).toEqual([]);
    const drawn = text.replace('{radius: 40 mm, angle: 60 deg, offset: 26 mm}', '{at: [20, 34.64, 26]}');
    expect(mendOf(drawn, 'rod-end-tilt')).toBeUndefined();
  });
});

describe('opening fully', () => {
  it('takes a smaller drum', () => {
    const mended = applyMend(example('opening-missed'), 'opening-missed');
    expect(mended.left).toEqual([]);
    // What is left of the pull after the slack, over the opening half a tolerance short of full.
    expect(mended.value).toBeCloseTo(32.2e-3 / radians(82 - 0.05), 9);
  });

  it('shortens the arm that a cable pulls', () => {
    const mended = applyMend(
      `format: 1
levers:
  shaft: {pivot: [100, 0], opens: counterclockwise, arms: {arm: {radius: 40 mm, angle: 240 deg}}, stops: {closed: 0 deg, open: 55 deg}}
pedal: {cable: main, pull: 36 mm}
cables:
  main: {enters: [250, -40], to: shaft.arm}
limits: {lead: 60 deg}
plates: {bank: {lever: shaft, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}}
`,
      'opening-missed',
    );
    expect(mended.mend.unknown).toBe('levers.shaft.arms.arm.radius');
    expect(mended.left).toEqual([]);
    const pin = (rotation: number): number => distance(polar([100, 0], mended.value * 1000, 240 + rotation), [250, -40]);
    expect(pin(0) - pin(55 - 0.05)).toBeCloseTo(36, 6);
  });

  it('gives a coupling more ratio, and a rod more driving arm', () => {
    const text = (joint: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}, stops: {closed: 0 deg, open: 70 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
${joint}
plates: {bank: {lever: shaft, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}}
`;
    const coupled = applyMend(text('couplings: {gears: {from: pedal, to: shaft, ratio: 1.1}}'), 'opening-missed');
    expect(coupled.mend.unknown).toBe('couplings.gears.ratio');
    expect(coupled.value).toBeCloseTo((70 - 0.05) / 60, 9);
    expect(coupled.left).toEqual([]);
    const driven = applyMend(text('rods: {link: {from: pedal.out, to: shaft.arm}}'), 'opening-missed');
    expect(driven.mend.unknown).toBe('levers.pedal.arms.out.radius');
    expect(driven.left).toEqual([]);
  });

  it('has no mend for a cable that is never pulled tight, nor where another stop holds the group', () => {
    const text = example('opening-missed');
    expect(mendOf(text.replace('pull: 33.2 mm', 'pull: 0.9 mm'), 'opening-missed')).toBeUndefined();
    const held = text
      .replace('stops: {closed: 0 deg, open: 82 deg}', 'arms: {out: {radius: 30 mm, angle: 90 deg}}\n    $&')
      .replace('pedal:', '  idler: {pivot: [200, 0], arms: {in: {radius: 30 mm, angle: 90 deg}}, stops: {open: 40 deg}}\npedal:')
      .replace('plates:', 'rods: {tie: {from: shaft.out, to: idler.in}}\nplates:');
    expect(solve(held).findings.find(({ code }) => code === 'opening-missed')?.cure).toContain('idler meets its open stop first');
    expect(mendOf(held, 'opening-missed')).toBeUndefined();
  });
});

describe('less pedal', () => {
  it('leaves no more than 2 mm of stretch in the cable, at either kind of pedal', () => {
    const mended = applyMend(example('opening-early'), 'opening-early');
    expect(mended.mend.unknown).toBe('pedal.pull');
    expect(mended.answers.findings).toMatchObject([{ code: 'opening-early', severity: 'note' }]);
    expect(mended.answers.findings[0]?.mend).toBeUndefined();
    // Slack, the drum's share, and the stretch.
    expect(mended.value * 1000).toBeCloseTo(1 + 24 * radians(82) + 2 - 0.01, 6);
    const turned = applyMend(
      example('opening-early')
        .replace('  shaft:', '  pedal: {pivot: [0, 0], drums: {out: {radius: 60 mm, wraps: counterclockwise}}}\n  shaft:')
        .replace('{cable: main, pull: 39 mm}', '{lever: pedal, opens: counterclockwise, travel: 40 deg}')
        .replace('main: {', 'main: {from: pedal.out, leaves: [-80, 60], '),
      'opening-early',
    );
    expect(turned.mend.unknown).toBe('pedal.travel');
    expect(turned.answers.findings).toMatchObject([{ code: 'opening-early', severity: 'note' }]);
  });

  it('lets the pedal land before a stop that no cable spares', () => {
    const mended = applyMend(
      `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 49 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 49 deg}}, stops: {closed: 0 deg, open: 80 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 90 deg}
rods:
  link: {from: pedal.out, to: shaft.arm}
plates: {bank: {lever: shaft, bore: 45 mm, seat: 6 deg, idle: 4 deg}}
`,
      'opening-early',
    );
    expect(mended.mend.unknown).toBe('pedal.travel');
    expect(degrees(mended.value)).toBeCloseTo(80 - 0.05, 9);
    expect(mended.left).toEqual([]);
  });

  it('ends where a lever turns back, if that goes on to the floor', () => {
    const text = example('turns-back');
    const mended = applyMend(text, 'turns-back');
    expect(mended.mend).toMatchObject({ unknown: 'pedal.travel', outcome: { kind: 'itself' } });
    expect(mended.left).toEqual(['toggle-returning link']);
    expect(foundBy(mended.answers, 'turns-back')).toEqual([]);
    // A whole turn of the crank closes the shaft and opens it again: one end of the travel mends nothing.
    const whole = text.replace('travel: 60 deg', 'travel: 300 deg');
    expect(mendOf(whole, 'turns-back')).toBeUndefined();
  });
});

describe('one figure written anew', () => {
  it('carries the groove on, though it is no dimension of the linkage', () => {
    const mended = applyMend(example('groove-left'), 'groove-left');
    expect(mended.mend.outcome).toEqual({ kind: 'itself' });
    // It turns 21/20 rad, that is 60.161°: as far and a little further.
    expect(mended.value).toBeCloseTo(radians(60.17), 12);
    expect(mended.left).toEqual([]);
    expect(mendOf(example('groove-left').replace('55 deg', '50 deg + 5 deg'), 'groove-left')).toBeUndefined();
  });

  it('makes a fork longer at the end that its pin leaves, and at neither where it leaves both', () => {
    const text = example('slot-run-out');
    const far = applyMend(text, 'slot-run-out');
    const reach = distance(polar([0, 0], 30, 90 - 35), [0, 60]);
    expect(far.mend.unknown).toBe('slots.pair.reach.1');
    expect(far.value * 1000).toBeCloseTo(reach + 0.01, 6);
    expect(far.left).toEqual([]);
    const near = applyMend(text.replace('[25 mm, 38 mm]', '[32 mm, 45 mm]'), 'slot-run-out');
    expect(near.mend.unknown).toBe('slots.pair.reach.0');
    expect(near.value * 1000).toBeCloseTo(30 - 0.01, 6);
    expect(near.left).toEqual([]);
    expect(mendOf(text.replace('[25 mm, 38 mm]', '[32 mm, 38 mm]'), 'slot-run-out')).toBeUndefined();
  });

  it('brings a rod within its adjuster, at the end that is nearer', () => {
    const short = applyMend(example('rod-out-of-adjustment'), 'rod-out-of-adjustment');
    expect(short.value).toBeCloseTo(0.101, 12);
    expect(short.answers.findings.map(({ code }) => code)).not.toContain('rod-out-of-adjustment');
    const text = example('rod-out-of-adjustment').replace('min: 101 mm, max: 106 mm', 'max: 98.5 mm');
    const long = applyMend(text, 'rod-out-of-adjustment');
    expect(long.value).toBeCloseTo(0.0985, 12);
    expect(long.answers.findings.map(({ code }) => code)).not.toContain('rod-out-of-adjustment');
    expect(mendOf(text.replace('    length: 100 mm\n', ''), 'rod-out-of-adjustment')).toBeUndefined();
  });

  it('puts the closed stop of a shaft with plates where it is drawn', () => {
    const text = example('opening-early').replace('closed: 0 deg', 'closed: 3 deg').replace('pull: 39 mm', 'pull: 35.3 mm');
    const mended = applyMend(text, 'held-open');
    expect(mended.mend).toMatchObject({ unknown: 'levers.shaft.stops.closed', target: 0 });
    expect(mended.answers.findings.map(({ code }) => code)).not.toContain('held-open');
  });

  it('gives the cable the slack that a movement takes, written or not', () => {
    const text = example('movement-at-rest');
    const mended = applyMend(text, 'movement-at-rest');
    // The drum moves 4 mm off its housing end along the inner, and 1 mm of slack is there.
    expect(mended.value * 1000).toBeCloseTo(4, 9);
    expect(mended.left).not.toContain('movement-at-rest rock');
    const without = applyMend(text.replace(', slack: 1 mm', ''), 'movement-at-rest');
    expect(without.value * 1000).toBeCloseTo(4, 9);
    expect(without.text).toContain('slack: 4 mm');
    expect(without.left).not.toContain('movement-at-rest rock');
  });
});

describe('mends that were there before', () => {
  it('sets a rod to where both closed stops are met together, not merely to where one no longer is', () => {
    const mended = applyMend(example('held-open'), 'held-open');
    expect(mended.value).toBeCloseTo(0.1, 10);
    expect(mended.left).toEqual([]);
  });

  it('gives a tight cable just the slack that it lacks', () => {
    const mended = applyMend(example('slack-used-up'), 'slack-used-up');
    // 4° on a drum of 20 mm are 1.396 mm: as much and a little more.
    expect(mended.value).toBeCloseTo(1.41e-3, 12);
    expect(mended.left).toEqual([]);
  });
});
