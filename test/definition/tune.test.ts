/** The block `tune`: what it reads, what it refuses and where, and that it never stops the linkage from being solved. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { checkOneProblem } from '../support/checkOneProblem.ts';
import { checkProblems } from '../support/checkProblems.ts';

const LINKAGE = `format: 1
let:
  reach: 30 mm ± 0.1 mm
  half: reach / 2
  spare: 4 mm
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 220, angle: -75}, clevis: {radius: 70, angle: 100}}}
  shaft: {pivot: [320, 80], arms: {arm: {radius: reach, angle: 200}}, stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 15, pad: pad}
rods:
  link: {from: pedal.clevis, to: shaft.arm}
plates:
  bank: {lever: shaft, bore: 40 mm}
require:
  opens: at(100%, shaft.opening) >= 20 deg
  drive: at(100%, shaft.opening) >= 20 deg
`;
const CURVE = `  curve: {of: shaft.opening, slopes: {tip_in: 0.4, end: 1.4}}
`;
const FREE = `  free: {reach: {from: 20 mm, to: 40 mm}}
`;
const tuneOf = (text: string) => {
  const tune = checkProblems(text).definition?.tune;
  if (tune === undefined) throw new Error('There is no tune');
  return tune;
};

describe('a sound block', () => {
  it('is read with its figures in SI and their places', () => {
    const text = `${LINKAGE}tune:
  free:
    reach: {from: 2 cm, to: 40, step: 0.5 mm}
  curve:
    of: shaft.opening
    through: [[0 %, 0 deg], [25 %, 8], [100 %, 45 deg, 2]]
  keep: [transmission, full_opening, opens]
`;
    const tune = tuneOf(text);
    expect(tune.unread).toEqual([]);
    const [free] = tune.free;
    expect([free?.name, free?.let]).toEqual(['reach', 0]);
    expect(free?.from.nominal).toBeCloseTo(0.02, 15);
    expect(free?.to.nominal).toBeCloseTo(0.04, 15);
    expect(free?.step?.nominal).toBeCloseTo(0.0005, 15);
    expect(text.slice(free?.to.span.start, free?.to.span.end)).toBe('40');
    const { curve } = tune;
    if (curve?.kind !== 'through') throw new Error('There are no points');
    expect(curve.points.map(({ travel, value, weight }) => [travel.nominal, (value.nominal * 180) / Math.PI, weight?.nominal])).toEqual([
      [0, 0, undefined],
      [0.25, expect.closeTo(8, 12), undefined],
      [1, expect.closeTo(45, 12), 2],
    ]);
    expect([curve.of.owner, curve.of.column, curve.of.dimension]).toEqual(['shaft', 'opening', 'angle']);
    expect(tune.keep?.map((kept) => kept.kind)).toEqual(['limit', 'word', 'requirement']);
  });

  it('takes slopes, and leaves what to keep open where it is not said', () => {
    const tune = tuneOf(`${LINKAGE}tune:\n${FREE}${CURVE}`);
    if (tune.curve?.kind !== 'slopes') throw new Error('There are no slopes');
    expect([tune.curve.tipIn.nominal, tune.curve.end.nominal]).toEqual([0.4, 1.4]);
    expect(tune.keep).toBeUndefined();
  });
});

describe('free values', () => {
  it('have bounds without tolerances', () => {
    for (const bounds of [
      'from: 20 mm «± 1 mm», to: 40 mm',
      'from: 20 mm, to: 40 mm «+1/-0 mm»',
      'from: 20 mm, to: 40 mm, step: 1 mm «± 0.1 mm»',
    ]) {
      checkOneProblem(`${LINKAGE}tune:\n  free: {reach: {${bounds}}}\n${CURVE}`, 'warning[bad-tolerance]', 'of no use here');
    }
  });

  it('are plain values of `let` that the linkage rests on', () => {
    const tune = tuneOf(`${LINKAGE}tune:
  free:
    reech: {from: 20 mm, to: 40 mm}
#   ^^^^^ error[unknown-name]: Did you mean \`reach\`?
    half: {from: 10 mm, to: 20 mm}
#   ^^^^ error[not-free]: Free \`reach\`, from which it follows
    spare: {from: 1 mm, to: 5 mm}
#   ^^^^^ error[not-free]: No dimension of the linkage rests on \`spare\`
    shaft: {from: 1 mm, to: 5 mm}
#   ^^^^^ error[unknown-name]: \`shaft\` is a lever
    reach: {from: 20 mm, to: 40 mm}
${CURVE}`);
    expect(tune.free.map(({ name }) => name)).toEqual(['reach']);
    expect(tune.unread.map(({ path }) => path)).toEqual(['tune.free.reech', 'tune.free.half', 'tune.free.shaft', 'tune.free.spare']);
  });

  it('are not called idle while a part that may use them cannot be read', () => {
    checkProblems(`${LINKAGE}springs:
  back: {lever: shaft, rate: spare, preload: 3 N*mm}
#                            ^^^^^ error[formula-dimension]: \`spare\`
tune:
  free: {spare: {from: 1 mm, to: 5 mm}}
${CURVE}`);
  });

  it('have bounds in order, of the kind of the value, and a step that fits between them', () => {
    checkProblems(`${LINKAGE}tune:
  free:
    reach: {from: 40 mm, to: 20 mm}
#                            ^^^^^ error[out-of-range]: reversed
${CURVE}`);
    checkProblems(`${LINKAGE}tune:
  free:
    reach: {from: 20 mm, to: 2 cm}
#                            ^^^^ error[out-of-range]: equal
${CURVE}`);
    checkProblems(`${LINKAGE}tune:
  free:
    reach: {from: 20 mm, to: 40 deg}
#                               ^^^ error[wrong-unit]: a length
${CURVE}`);
    checkProblems(`${LINKAGE}tune:
  free:
    reach: {from: 20 mm, to: 40 mm, step: 21 mm}
#                                         ^^^^^ error[out-of-range]: larger than the distance
${CURVE}`);
    checkProblems(`${LINKAGE}tune:
  free:
    reach: {from: 20 mm, to: 40 mm, step: 0 mm}
#                                         ^^^^ error[out-of-range]: greater than 0
${CURVE}`);
    expect(tuneOf(`${LINKAGE}tune:\n  free: {reach: {from: 20 mm, to: 40 mm, step: 20 mm}}\n${CURVE}`).free.length).toBe(1);
  });

  it('must be there, as must the curve', () => {
    checkOneProblem(`${LINKAGE}«tune»:\n${CURVE}`, 'error[missing-key]', 'has no `free`');
    checkOneProblem(`${LINKAGE}tune:\n  «free»: {}\n${CURVE}`, 'error[missing-key]', 'names no value');
    checkOneProblem(`${LINKAGE}«tune»:\n${FREE}`, 'error[missing-key]', 'has no `curve`');
    expect(solve(`${LINKAGE}tune:\n${FREE}`).definition?.tune?.free.length).toBe(1);
  });
});

describe('the curve', () => {
  it('is of an opening, of plates or of the pedal’s force', () => {
    checkProblems(`${LINKAGE}tune:
${FREE}  curve: {of: link.drive, slopes: {tip_in: 1, end: 1}}
#             ^^^^^^^^^^ error[wrong-value]: no column that can be given a curve
`);
    checkProblems(`${LINKAGE}tune:
${FREE}  curve: {of: shaft.opning, slopes: {tip_in: 1, end: 1}}
#                   ^^^^^^ error[unknown-name]: Did you mean \`opening\`?
`);
    checkProblems(`${LINKAGE}tune:
${FREE}  curve: {of: shft.opening, slopes: {tip_in: 1, end: 1}}
#             ^^^^ error[unknown-name]: Did you mean \`shaft\`?
`);
    checkProblems(`${LINKAGE}tune:
${FREE}  curve: {of: shaft, slopes: {tip_in: 1, end: 1}}
#             ^^^^^ error[wrong-value]: \`shaft.opening\`
`);
    checkProblems(`${LINKAGE}tune:
${FREE}  curve: {of: pedal.effort, slopes: {tip_in: 1, end: 1}}
#                           ^^^^^^ error[wrong-shape]: does not go with \`pedal.effort\`
`);
    expect(tuneOf(`${LINKAGE}tune:\n${FREE}  curve: {of: pedal.effort, through: [[0 %, 40 N], [100 %, 20 N]]}\n`).curve?.kind).toBe(
      'through',
    );
  });

  it('rises where it must not fall, with its travels in order and within the pedal’s', () => {
    const through = (points: string): string => `${LINKAGE}tune:\n${FREE}  curve: {of: shaft.opening, through: ${points}}\n`;
    checkOneProblem(through('[[0 %, 0 deg], [50 %, 30 deg], [100 %, «20 deg»]]'), 'error[out-of-range]', 'turns back here');
    checkOneProblem(through('[[0 %, 0 deg], [50 %, 30 deg], [«50 %», 40 deg]]'), 'error[out-of-range]', 'must rise from point to point');
    checkOneProblem(through('[[0 %, 0 deg], [«50», 30 deg]]'), 'error[out-of-range]', 'Write `50 %`');
    checkOneProblem(through('[[«-1 %», 0 deg], [50 %, 30 deg]]'), 'error[out-of-range]', '0 or more');
    checkOneProblem(through('[[0 %, 0 deg], [50 %, 30 deg, «-1»]]'), 'error[out-of-range]', '0 or more');
    checkOneProblem(through('[[0 %, 0 deg], «[50 %]»]'), 'error[wrong-shape]', 'two or three figures');
    checkOneProblem(through('«[[0 %, 0 deg]]»'), 'error[wrong-shape]', '2');
    checkOneProblem(through('[[0 %, 0 deg], [50 %, «.nan»]]'), 'error[bad-quantity]', 'not a quantity');
  });

  it('is told of a decimal comma that makes a weight of decimals', () => {
    const point = (written: string): string =>
      `${LINKAGE}tune:\n${FREE}  curve: {of: shaft.opening, through: [[0 %, 0 deg], ${written}]}\n`;
    checkOneProblem(point('[50 %, «29,5 deg»]'), 'error[bad-quantity]', 'Write `[50 %, 29.5 deg]`');
    checkOneProblem(point('[50 %,«29,5 deg»]'), 'error[bad-quantity]', 'Write `[50 %, 29.5 deg]`');
    checkOneProblem(point('[«12,5 %», 30 deg]'), 'error[bad-quantity]', 'Write `[12.5 %, 30 deg]`');
    checkOneProblem(point('[50 %, «29,5»]'), 'error[bad-quantity]', 'or `[50 %, 29, 5]` where the last figure is a weight');
    // Nothing tells the two commas apart, and the point may be meant as it stands.
    checkOneProblem(point('[50 %,«29,5»]'), 'warning[bad-quantity]', 'may have a decimal comma');
    for (const sound of ['[50 %, 29, 5]', '[50 %, 29 deg, 0.5]', '[0.5,29 deg,2]']) checkProblems(point(sound));
  });

  it('has a weight that counts, and no figure with a tolerance', () => {
    const curve = (points: string): string => `${LINKAGE}tune:\n${FREE}  curve: {of: shaft.opening, ${points}}\n`;
    const none = curve('«through»: [[0 %, 0 deg, 0], [50 %, 30 deg, 0 %]]');
    checkOneProblem(none, 'error[out-of-range]', 'no point counts');
    expect(solve(none.replace(/[«»]/g, '')).definition?.tune?.unread).not.toEqual([]);
    checkProblems(curve('through: [[0 %, 0 deg, 0], [50 %, 30 deg]]'));
    checkOneProblem(curve('through: [[0 %, 0 deg], [50 %, 30 deg «± 1 deg»]]'), 'warning[bad-tolerance]', 'of no use here');
    checkOneProblem(curve('through: [[0 %, 0 deg], [50 %, «1e300»]]'), 'error[out-of-range]', '`shaft.opening` is larger');
  });

  it('given by slopes does not turn back: the cubic from 0 to 1 is followed at a thousand places beside', () => {
    const falls = (a: number, b: number): boolean => {
      // The cubic Hermite polynomials, from memory.
      const y = (t: number): number => (t ** 3 - 2 * t ** 2 + t) * a + (3 * t ** 2 - 2 * t ** 3) + (t ** 3 - t ** 2) * b;
      return Array.from({ length: 1000 }, (_, i) => y((i + 1) / 1000) < y(i / 1000) - 1e-9).includes(true);
    };
    for (const [a, b] of [
      [0, 0],
      [0.4, 1.4],
      [3, 3],
      [0, 4],
      [4, 0],
      [5, 1],
      [0, 3.01],
      [1, 3.9],
      [2.5, 3.8],
      [6, 6],
    ] as const) {
      const text = `${LINKAGE}tune:\n${FREE}  curve: {of: shaft.opening, slopes: {tip_in: ${a}, end: ${b}}}\n`;
      const refused = solve(text).problems.some(({ code, message }) => code === 'out-of-range' && message.includes('turns back'));
      expect([a, b, refused]).toEqual([a, b, falls(a, b)]);
    }
  });
});

describe('what to keep', () => {
  const keeping = (list: string): string => `${LINKAGE}tune:\n${FREE}${CURVE}  keep: [${list}]\n`;

  it('is limits, three words and requirements, each once', () => {
    checkOneProblem(keeping('transmission, «clearence», opens'), 'error[unknown-name]', 'Did you mean `clearance`?');
    checkOneProblem(keeping('opens, «opens»'), 'error[wrong-value]', 'stands twice');
    expect(solve(keeping('opens, opens')).definition?.tune?.unread).toHaveLength(1);
    checkOneProblem(keeping('«nothing such»'), 'error[unknown-name]', 'There is no limit');
    const tune = solve(keeping('transmission, clearence, opens')).definition?.tune;
    expect(tune?.keep?.length).toBe(2);
    expect(tune?.unread.map(({ path }) => path)).toEqual(['tune.keep.1']);
  });

  it('says which is meant where a requirement is named like a limit', () => {
    checkOneProblem(keeping('«drive»'), 'warning[duplicate-name]', 'is the limit here');
    expect(solve(keeping('drive')).definition?.tune?.keep?.[0]?.kind).toBe('limit');
  });
});

it.each([
  'tune: 3',
  'tune:',
  'tune: []',
  'tune: {free: 2, curve: [], keep: {}}',
  'tune: {free: {reach: 3}}',
  'tune: {curve: {of: [], through: {}}}',
])('does not stop the linkage from being solved: %s', (block) => {
  const answers = solve(`${LINKAGE}${block}\n`);
  const without = solve(LINKAGE);
  expect(answers.problems.length).toBeGreaterThan(0);
  expect(answers.table([0, 0.5, 1]).columns.map(({ values }) => values)).toEqual(
    without.table([0, 0.5, 1]).columns.map(({ values }) => values),
  );
  expect(answers.requirements.map(({ outcome }) => outcome)).toEqual(without.requirements.map(({ outcome }) => outcome));
});
