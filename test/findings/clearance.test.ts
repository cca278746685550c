/** What touches and what comes too near: by figures from geometry, by construction, and beside near neighbours that do neither. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';
import { checkFindings } from '../support/checkFindings.ts';

const DEGREE = Math.PI / 180;
const CODES: readonly string[] = ['touches-keep-out', 'keep-out-clearance', 'parts-touch'];

/** `code severity part`, and nothing of other kinds. */
const clearanceFindings = (text: string): readonly string[] => {
  const { problems, findings } = solve(text);
  expect(problems).toEqual([]);
  return findings.filter(({ code }) => CODES.includes(code)).map(({ code, severity, part }) => `${code} ${severity} ${part}`);
};

const notChecked = (text: string): readonly string[] =>
  solve(text)
    .notChecked.map(({ part, message }) => `${part}: ${message.replace('Not checked: ', '')}`)
    .filter((line) => /clear|touch/.test(line));

describe('touching a keep-out', () => {
  it('begins where geometry says, to the last digit', () => {
    // The tip's circle of 6 mm about 40 mm · sin(30° + 60° t) comes to y = 44 at sin = 38/40.
    const { only } = checkFindings(`format: 1
levers:
  crank:
# ^^^^^ error[touches-keep-out]: The arm crank.out reaches 2 mm into bonnet at 100 % of pedal travel (from
    pivot: [0, 0]
    width: 12 mm
    arms: {out: {radius: 40 mm, angle: 30 deg}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
keep_out:
  bonnet: {polygon: [[-60, 44], [60, 44], [60, 60], [-60, 60]], clearance: 1 mm}
`);
    const { ranges, worst, related } = only('touches-keep-out');
    expect(ranges?.[0]?.from).toBeCloseTo((Math.asin(38 / 40) / DEGREE - 30) / 60, 6);
    expect(ranges?.[0]?.to).toBe(1);
    expect(worst).toMatchObject({ travel: 1, dimension: 'length' });
    expect(worst?.value).toBeCloseTo(-0.002, 12);
    expect(related?.[0]?.message).toBe('bonnet is here');
  });

  it('is told with the arm, drum, outline or rod that does', () => {
    const text = (lever: string, at: string): string => `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 90 deg}}, ${lever}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 90 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
rods: {link: {from: crank.out, to: shaft.arm, width: 8 mm}}
keep_out: {post: {circle: ${at}, radius: 2 mm}}
`;
    const messages = (lever: string, at: string) => solve(text(lever, at)).findings.map(({ message }) => message.split(' at ')[0]);
    expect(messages('width: 6 mm', '[0, 20]')).toEqual(['The arm crank.out reaches 5 mm into post']);
    expect(messages('drums: {wheel: {radius: 20 mm, wraps: clockwise}}', '[-21, 0]')).toEqual([
      'The drum crank.wheel reaches 1 mm into post',
    ]);
    expect(messages('outline: [[-5, -25], [5, -25], [0, 10]]', '[0, -26]')[0]).toMatch(/^The outline of crank reaches .* into post/);
    expect(messages('opens: clockwise', '[60, 45]')).toEqual(['link reaches 1 mm into post']);
  });

  it('and coming near it are one finding, the worse', () => {
    const at = (y: number) => `format: 1
levers: {crank: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 90 deg}}}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
keep_out: {post: {circle: [0, ${y}], radius: 10 mm, clearance: 3 mm}}
`;
    expect(clearanceFindings(at(55.9))).toEqual(['touches-keep-out error crank']);
    expect(clearanceFindings(at(56))).toEqual(['touches-keep-out error crank']);
    expect(clearanceFindings(at(56.1))).toEqual(['keep-out-clearance warning crank']);
    expect(clearanceFindings(at(58.9))).toEqual(['keep-out-clearance warning crank']);
    // Exactly what is asked keeps it.
    expect(clearanceFindings(at(59))).toEqual([]);
    expect(solve(at(56)).findings[0]?.message).toBe('The arm crank.out touches post at 0 % of pedal travel (at 0 % of pedal travel)');
  });
});

describe('too little clearance', () => {
  it('is told with what is left, what is asked and where', () => {
    const { only } = checkFindings(`format: 1
levers:
  crank: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 30 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 120 deg}
keep_out:
  bonnet: {polygon: [[-60, 50], [60, 50], [60, 60], [-60, 60]], clearance: 6 mm}
#                                                                          ^^^^ warning[keep-out-clearance]: The arm crank.out comes within 4 mm of bonnet at 50 % of pedal travel, and 6 mm should stay free (from
`);
    const { ranges, worst } = only('keep-out-clearance');
    const before = (Math.asin(38 / 40) / DEGREE - 30) / 120;
    expect(ranges).toHaveLength(1);
    expect(ranges?.[0]?.from).toBeCloseTo(before, 6);
    expect(ranges?.[0]?.to).toBeCloseTo(1 - before, 6);
    expect(worst?.value).toBeCloseTo(0.004, 9);
  });

  const text = (width: string, rest = '', clearance = '6 mm'): string => `format: 1
levers:
  crank: {pivot: [0, 0], width: ${width}, arms: {out: {radius: 40 mm, angle: 30 deg}}${rest}}
pedal: {lever: crank, opens: counterclockwise, travel: 120 deg}
keep_out:
  bonnet: {polygon: [[-60, 50], [60, 50], [60, 60], [-60, 60]], clearance: ${clearance}}
`;

  it('goes with a narrower arm', () => {
    const { value, left } = applyMend(text('12 mm'), 'keep-out-clearance');
    expect(value).toBeCloseTo(0.008 - 1e-5, 9);
    expect(left).toEqual([]);
  });

  it('is not mended by an arm of less than half the breadth, nor where something else comes as near, nor by a figure that follows from others', () => {
    const mendOf = (given: string) => solve(given).findings.find(({ code }) => code === 'keep-out-clearance')?.mend;
    // 4 mm are left, and the breadth goes by twice what is wanting: 6.2 mm of 12 are enough, 5.8 are not.
    expect(mendOf(text('12 mm', '', '6.9 mm'))).toMatchObject({ unknown: 'levers.crank.width' });
    expect(mendOf(text('12 mm', '', '7.1 mm'))).toBeUndefined();
    expect(mendOf(text('12 mm', ', drums: {wheel: {radius: 45 mm, wraps: clockwise}}'))).toBeUndefined();
    expect(mendOf(text('"2 * 6 mm"'))).toBeUndefined();
  });
});

describe('parts that touch', () => {
  const levers = (layer: string, shaft = '') => `format: 1
levers:
  crank: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 0 deg}}}
  idler: {pivot: [53, 0], width: 12 mm, ${layer} arms: {tip: {radius: 30 mm, angle: 90 deg}}}
${shaft}pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
couplings: {pair: {from: crank, to: idler, ratio: 0.000001}}
`;

  it('are levers on one layer', () => {
    expect(clearanceFindings(levers(''))).toEqual([]);
    const near = levers('').replace('[53, 0]', '[51, 0]');
    expect(clearanceFindings(near)).toEqual(['parts-touch error crank']);
    expect(clearanceFindings(levers('layer: 1,').replace('[53, 0]', '[51, 0]'))).toEqual([]);
  });

  it('are not two levers on one shaft: that is told as not checked', () => {
    const text = levers('').replace('[53, 0]', '[0, 0]');
    expect(clearanceFindings(text)).toEqual([]);
    expect(notChecked(text)).toEqual(['crank: whether it touches idler, which turns about the same axis on the same layer']);
  });

  it('are not a pin and its fork, but other arms of the two', () => {
    const text = (rest: string): string => `format: 1
levers:
  crank: {pivot: [0, 0], width: 8 mm, arms: {tang: {radius: 30 mm, angle: 90 deg}${rest}}}
  fork: {pivot: [0, 60], width: 8 mm, arms: {tip: {radius: 20 mm, angle: 270 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 35 deg}
slots: {pair: {pin: crank.tang, fork: fork, angle: 270 deg, reach: [20 mm, 60 mm]}}
`;
    expect(clearanceFindings(text(''))).toEqual([]);
    expect(notChecked(text(''))).toEqual(['crank: whether it touches fork beside the slot that joins them']);
    expect(clearanceFindings(text(', other: {radius: 40 mm, angle: 100 deg}'))).toEqual(['parts-touch error crank']);
  });

  it('may be a rod and a lever that it passes: a warning, since it may pass beside it', () => {
    const text = (idler: string): string => `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 90 deg}}}
  shaft: {pivot: [120, 0], arms: {arm: {radius: 40 mm, angle: 90 deg}}}
  idler: {pivot: [60, 60], width: 8 mm, ${idler} arms: {tip: {radius: 20 mm, angle: 270 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
rods: {link: {from: crank.out, to: shaft.arm, width: 8 mm}}
couplings: {pair: {from: crank, to: idler, ratio: 0.000001}}
`;
    expect(clearanceFindings(text(''))).toEqual(['parts-touch warning link']);
    expect(solve(text('')).findings.find(({ code }) => code === 'parts-touch')?.message).toMatch(
      /^link reaches 8 mm into the arm idler.tip at 0 % of pedal travel \(.*\), if it does not pass beside it: a rod has no layer of its own$/,
    );
    expect(clearanceFindings(text('layer: 1,'))).toEqual([]);
    const between = text('').replace('shaft: {pivot: [120, 0],', 'shaft: {pivot: [120, 0], layer: 1,');
    expect(clearanceFindings(between)).toEqual([]);
    expect(notChecked(between)).toEqual([
      'crank: whether it touches other parts, for want of `width` or `outline`',
      'link: whether it touches idler, since a rod has no layer and the levers that it joins stand on two',
    ]);
  });

  it('are not a rod and the levers that it joins, nor two rods on one pin', () => {
    expect(
      clearanceFindings(`format: 1
levers:
  crank: {pivot: [0, 0], width: 10 mm, arms: {out: {radius: 40 mm, angle: 90 deg}}}
  front: {pivot: [120, 0], width: 10 mm, arms: {arm: {radius: 40 mm, angle: 90 deg}}}
  rear: {pivot: [-120, 0], width: 10 mm, arms: {arm: {radius: 40 mm, angle: 90 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
rods:
  one: {from: crank.out, to: front.arm, width: 8 mm}
  other: {from: crank.out, to: rear.arm, width: 8 mm}
`),
    ).toEqual([]);
  });
});

describe('layers of keep-outs', () => {
  const text = (keepOut: string, lever = ''): string => `format: 1
levers: {crank: {pivot: [0, 0], width: 12 mm, ${lever} arms: {out: {radius: 40 mm, angle: 90 deg}}}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
keep_out: {post: {circle: [0, 50], radius: 10 mm${keepOut}}}
`;

  it('keep them from levers on others; without one they stand on all', () => {
    expect(clearanceFindings(text(''))).toHaveLength(1);
    expect(clearanceFindings(text('', 'layer: 3,'))).toHaveLength(1);
    expect(clearanceFindings(text(', layer: 0'))).toHaveLength(1);
    expect(clearanceFindings(text(', layer: 1'))).toEqual([]);
    expect(clearanceFindings(text(', layer: 1', 'layer: 1,'))).toHaveLength(1);
  });
});

describe('what is not checked', () => {
  const text = (lever: string, rest = ''): string => `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 90 deg}}${lever}}
  shaft: {pivot: [100, 0], width: 10 mm, arms: {arm: {radius: 40 mm, angle: 90 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
rods: {link: {from: crank.out, to: shaft.arm}}
keep_out: {post: {circle: [50, 90], radius: 10 mm}}
${rest}`;

  it('is an arm without a breadth and a rod without one, where there is something to meet', () => {
    expect(notChecked(text(''))).toEqual([
      'crank: whether it clears the keep-outs, for want of `width` or `outline`',
      'link: whether it clears the keep-outs, for want of `width`',
    ]);
    expect(notChecked(text(', width: 8 mm'))).toEqual(['link: whether it clears the keep-outs, for want of `width`']);
    const alone = text('').replace(/keep_out.*\n/, '');
    expect(notChecked(alone)).toEqual([
      'crank: whether it touches other parts, for want of `width` or `outline`',
      'link: whether it touches other parts, for want of `width`',
    ]);
    expect(notChecked(alone.replace(' width: 10 mm,', ''))).toEqual([]);
  });

  it('is a lever about another axis, with the rods on it', () => {
    const spatial = text(', axis: [0, 1, 1]').replace('to: shaft.arm', 'to: shaft.arm, width: 8 mm');
    expect(notChecked(spatial)).toEqual([
      'crank: whether it clears the keep-outs, for want of `width` or `outline`',
      'link: whether it clears post: a lever on it does not turn about z, and without `from` and `to` that may stand anywhere along it',
    ]);
    const broad = spatial.replace('angle: 90 deg}}, axis', 'angle: 90 deg}}, width: 8 mm, axis');
    expect(notChecked(broad)).toEqual([
      'crank: whether it clears post: it does not turn about z, and without `from` and `to` that may stand anywhere along it',
      'crank: whether it touches other parts, since it does not turn about z',
      'link: whether it clears post: a lever on it does not turn about z, and without `from` and `to` that may stand anywhere along it',
    ]);
    // With an extent they are held against it; parts still are not.
    expect(notChecked(broad.replace('radius: 10 mm}}', 'radius: 10 mm, from: -20 mm, to: 20 mm}}'))).toEqual([
      'crank: whether it touches other parts, since it does not turn about z',
    ]);
  });

  it('is a drum or an outline about another axis, of which nothing says how thick it is', () => {
    const more = ', axis: [0, 1, 1], width: 8 mm, drums: {wheel: {radius: 20 mm, wraps: clockwise}}, outline: [[-5, 0], [5, 0], [0, 30]]';
    expect(notChecked(text(more).replace('radius: 10 mm}}', 'radius: 10 mm, from: -20 mm, to: 20 mm}}'))).toEqual(
      expect.arrayContaining([
        'crank: whether it clears the keep-outs with its drum crank.wheel, which does not turn about z, and of which the file does not say how thick it is',
        'crank: whether it clears the keep-outs with its outline, which does not turn about z, and of which the file does not say how thick it is',
      ]),
    );
  });

  it('is a drum that is not round', () => {
    const snail = ', width: 8 mm, drums: {snail: {profile: [[0 deg, 18 mm], [80 deg, 33 mm]], wraps: clockwise}}';
    expect(notChecked(text(snail))[0]).toBe(
      'crank: whether it clears the keep-outs with its drum crank.snail, which is not round, and of which no cable and profile tell the shape',
    );
  });

  it('are cables, springs and plates', () => {
    const given = text(', width: 8 mm', 'springs: {first: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}}\n');
    expect(notChecked(given)[0]).toBe('post: whether these clear it: the spring first wound about an axis');
  });

  it('is everything, where nothing is solved', () => {
    const lines = notChecked(text('').replace(/pedal:.*\n/, ''));
    expect(lines).toContain('post: clearance');
  });
});

describe('how near the linkage comes to each keep-out', () => {
  it('is a fact, of the part that comes nearest', () => {
    const { facts } = solve(`format: 1
levers: {crank: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 30 deg}, back: {radius: 30 mm, angle: 210 deg}}}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
keep_out:
  post: {circle: [0, 70], radius: 10 mm}
  floor: {polygon: [[-60, -34], [60, -34], [60, -60], [-60, -60]]}
  far: {circle: [500, 500], radius: 10 mm, layer: 2}
`);
    const told = facts.filter(({ key }) => key === 'keep-out-gap');
    expect(told.map(({ part, label, travel }) => [part, label, travel])).toEqual([
      ['post', 'least gap of post, to the arm crank.out', 1],
      ['floor', 'depth of the arm crank.back in floor', 1],
    ]);
    expect(told[0]?.figure?.value).toBeCloseTo(0.014, 12);
    expect(told[1]?.figure?.value).toBeCloseTo(0.002, 12);
  });
});
