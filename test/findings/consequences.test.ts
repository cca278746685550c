/** One root cause instead of its consequences, and nothing that is wrong elsewhere lost with them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { withoutConsequences } from '../../src/findings/consequences.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { solve } from '../../src/solve.ts';
import { foundBy, foundByRules } from '../support/foundBy.ts';

const LINK = 'rods: {link: {from: pedal.out, to: shaft.arm}}\n';

/** A crank that turns a shaft through a rod. Lengths in mm, angles in degrees. */
const crank = (driving: number, at: number, driven: number, to: number, travel: number, more = LINK): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: ${driving}, angle: ${at}}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: ${driven}, angle: ${to}}, out: {radius: 20, angle: 60}}}
  rear: {pivot: [200, 0], arms: {arm: {radius: 30, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
${more}`;

/** `code part`, with what is told beside it behind. */
const told = ({ code, part, following = [] }: Finding): string =>
  [`${code} ${part}`, ...following.map((each) => `${each.code} ${each.part}`)].join(' > ');

describe('a dead centre that ends the way', () => {
  const answers = solve(crank(40, 60, 25, 60, 120));

  it('is one finding; that the rod reaches no further and its angle follow', () => {
    expect(answers.findings.filter(({ severity }) => severity === 'error').map(told)).toEqual([
      'toggle-opening link > not-assembled link > transmission-angle link',
    ]);
  });

  it('tells what follows in the words of the rules, at its own place', () => {
    const [root] = answers.findings.filter(({ code }) => code === 'toggle-opening');
    for (const code of ['not-assembled', 'transmission-angle'] as const) {
      const [{ message, span } = { message: '', span: undefined }] = foundBy(answers, code);
      expect(root?.related).toContainEqual({ message, span });
    }
  });

  it('explains that a shaft behind it does not open fully, and not that one before it does not', () => {
    const binding = readFileSync(new URL('../../examples/binding-broken.throttle.yaml', import.meta.url), 'utf8');
    expect(solve(binding).findings.map(told)).toEqual([
      'toggle-opening link > not-assembled link > opening-missed shaft > transmission-angle link',
      'single-return-spring return_one',
    ]);
    const plates = `${LINK}plates: {bank: {lever: pedal, bore: 40, idle: 2 deg}}\n`;
    const before = solve(crank(40, 60, 25, 60, 75, plates)).findings.map(told);
    expect(before.filter((each) => each.startsWith('opening-missed'))).toEqual(['opening-missed pedal']);
  });
});

describe('a dead centre of the driving arm', () => {
  it('explains that every lever behind turns back from there, and that it opens no further', () => {
    const both = `rods: {link: {from: pedal.out, to: shaft.arm}, on: {from: shaft.out, to: rear.arm}}
plates: {bank: {lever: rear, bore: 40, idle: 2 deg}}
`;
    const findings = solve(crank(20, 150, 40, 100, 80, both)).findings.filter(({ code }) => !code.startsWith('no-'));
    expect(findings.map(told)).toEqual([
      'toggle-returning link > turns-back shaft > turns-back rear > opening-missed rear > drive-angle link',
    ]);
  });

  it('leaves the angle of another joint, at the same place of the travel too', () => {
    const flat = 'rods: {link: {from: pedal.out, to: shaft.arm}, on: {from: shaft.out, to: rear.arm}}\nlimits: {transmission: 89 deg}\n';
    const answers = solve(crank(20, 150, 40, 100, 80, flat));
    expect(answers.findings.map(({ code, part }) => `${code} ${part}`)).toEqual(
      expect.arrayContaining(['toggle-returning link', 'transmission-angle link', 'transmission-angle on']),
    );
  });
});

describe('friction that holds a shaft', () => {
  /** Friction on the shaft that the rod turns; the driving arm comes to its dead centre at two thirds of the travel. */
  const rubbing = (drag: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20, angle: 150}}, friction: 20 N*mm, bearing: {diameter: 8, friction: 0.15}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}, friction: ${drag} N*mm, bearing: {diameter: 8, friction: 0.15}}
pedal: {lever: pedal, opens: counterclockwise, travel: 80}
rods: {link: {from: pedal.out, to: shaft.arm, ends: {kind: rod_end, pin: 6, friction: 0.1}}}
springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 220 N*mm}
  two: {lever: shaft, rate: 2 N*mm/deg, preload: 220 N*mm}
`;
  const lock = (drag: number) => {
    const answers = solve(rubbing(drag));
    const [found] = foundBy(answers, 'friction-lock');
    const [flat] = foundBy(answers, 'drive-angle');
    return {
      answers,
      lock: found?.ranges?.[0],
      flat: flat?.ranges?.[0],
      isOwn: answers.findings.some(({ code }) => code === 'friction-lock'),
    };
  };

  it('at a dead centre of the driving arm alone follows from it: the springs push back through nothing there', () => {
    const { answers, lock: held, flat, isOwn } = lock(20);
    expect(held?.from).toBeGreaterThan(flat?.from ?? NaN);
    expect(isOwn).toBe(false);
    const [root] = answers.findings.filter(({ code }) => code === 'toggle-returning');
    expect(root?.following?.map(({ code }) => code)).toContain('friction-lock');
    expect(root?.related?.some(({ message }) => message.startsWith('Friction holds'))).toBe(true);
  });

  it('before the drive angle is small, too, is too great by itself, and stays a finding', () => {
    const { lock: held, flat, isOwn } = lock(430);
    expect(held?.from).toBeLessThan(flat?.from ?? NaN);
    expect(isOwn).toBe(true);
  });

  it('is as far as there is no dead centre a finding', () => {
    expect(solve(rubbing(600).replace('travel: 80', 'travel: 30')).findings.map(({ code }) => code)).toContain('friction-lock');
  });
});

describe('an angle that is under its limit in several stretches', () => {
  it('stays a finding of those that do not come to a dead centre', () => {
    // The drive angle of a crank that starts flat, squares up, and comes to its dead centre.
    const answers = solve(`${crank(20, 30, 40, 100, 165)}limits: {transmission: 1 deg}\n`);
    const [whole] = foundBy(answers, 'drive-angle');
    expect(whole?.ranges).toHaveLength(2);
    const [dead] = answers.findings.find(({ code }) => code === 'toggle-returning')?.ranges ?? [];
    const own = answers.findings.find(({ code }) => code === 'drive-angle');
    expect(own?.ranges).toHaveLength(1);
    expect(own?.ranges?.[0]?.to).toBeLessThan(dead?.from ?? NaN);
    expect(own?.worst?.value).toBeGreaterThan(0.01);
    expect(own?.worst?.travel).toBeLessThan(0.5);
    expect(own?.mend).toEqual(whole?.mend);
    expect(own?.message).not.toContain(' and from');
    // Its other stretch is told with the dead centre.
    expect(answers.findings.find(({ code }) => code === 'toggle-returning')?.following).toContainEqual(whole);
  });
});

describe('a change point', () => {
  it('explains both angles, the way back and the turning back', () => {
    const text = crank(40, 60, 40, 60, 150);
    expect(solve(text).findings.map(told)).toEqual([
      'change-point link > toggle-returning link > turns-back shaft > transmission-angle link > drive-angle link',
    ]);
  });
});

describe('a closing torque that dips', () => {
  // The pedal pulls the shaft by a cable, and turns another lever by a rod whose driving arm passes its dead centre meanwhile.
  const text = (travel: number): string => `format: 1
levers:
  pedal:
    pivot: [0, 200]
    arms: {out: {radius: 20, angle: 150}}
    drums: {wheel: {radius: ${(30.3 / travel) * (180 / Math.PI)}, wraps: counterclockwise}}
  other: {pivot: [100, 200], arms: {arm: {radius: 40, angle: 100}}}
  shaft:
    pivot: [100, 0]
    arms: {tail: {radius: 20, angle: 270}}
    drums: {wheel: {radius: 24, wraps: counterclockwise}}
    stops: {open: 70 deg}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
cables: {main: {from: pedal.wheel, leaves: [-80, 200], enters: [40, 24], to: shaft.wheel, slack: 1}}
rods: {link: {from: pedal.out, to: other.arm}}
plates: {bank: {lever: shaft, count: 4, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {from: [20, -10], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}
  two: {from: [20, -10], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}
`;

  it('is told beside a dead centre that has nothing to do with it', () => {
    const { findings } = solve(text(60));
    const [dip, dead] = ['closing-dips', 'toggle-returning'].map((code) => findings.find((each) => each.code === code));
    // The one lies within the stretch of the other.
    const [stretch, place] = [dip?.ranges?.[0], dead?.ranges?.[0]];
    expect(place?.from).toBeGreaterThan(stretch?.from ?? NaN);
    expect(place?.to).toBeLessThan(stretch?.to ?? NaN);
  });
});

describe('what only seems to follow from a dead centre', () => {
  const { study } = solve(
    crank(20, 150, 40, 100, 80, 'rods: {link: {from: pedal.out, to: shaft.arm}, on: {from: shaft.out, to: rear.arm}}\n'),
  );
  const found = (code: Finding['code'], part: string, ...ranges: readonly (readonly [number, number])[]): Finding => ({
    code,
    severity: 'warning',
    part,
    span: { start: 0, end: 1 },
    message: code,
    ranges: ranges.map(([from, to]) => ({ from, to })),
    worst: { value: 0, dimension: 'angle', travel: ranges[0]![0] },
  });
  const stays = (each: Finding): boolean => withoutConsequences(study!, [found('toggle-returning', 'on', [0.5, 0.5]), each]).includes(each);

  it('is told with it where it meets that place, behind that joint', () => {
    expect(stays(found('turns-back', 'rear', [0.5, 0.7]))).toBe(false);
    expect(stays(found('turns-back', 'rear', [0.5000005, 0.7]))).toBe(false);
    expect(stays(found('opening-missed', 'rear', [0.5, 0.5]))).toBe(false);
  });

  it('stays a finding where it also is elsewhere, or elsewhere alone', () => {
    expect(stays(found('turns-back', 'rear', [0.5, 0.7], [0.9, 1]))).toBe(true);
    expect(stays(found('turns-back', 'rear', [0.501, 0.7]))).toBe(true);
    expect(stays(found('opening-missed', 'rear', [0.501, 0.501]))).toBe(true);
  });

  it('stays a finding of a lever before that joint', () => {
    expect(stays(found('turns-back', 'shaft', [0.5, 0.7]))).toBe(true);
    expect(stays(found('opening-missed', 'shaft', [0.5, 0.5]))).toBe(true);
  });
});

it('loses nothing: every finding of a rule is a finding, or follows from one', () => {
  for (const [driving, at, driven, to, travel] of [
    [40, 60, 25, 60, 120],
    [20, 150, 40, 100, 120],
    [20, 8, 40, 100, 185],
    [40, 60, 40, 60, 150],
    [30, 70, 20, 100, 80],
  ] as const) {
    const answers = solve(crank(driving, at, driven, to, travel));
    const known = answers.findings.flatMap((finding) => [finding, ...(finding.following ?? [])]).map(({ code, part }) => `${code} ${part}`);
    for (const { code, part } of foundByRules(answers)) expect(known).toContain(`${code} ${part}`);
  }
});
