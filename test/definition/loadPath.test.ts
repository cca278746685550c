import { describe, expect, it } from 'vitest';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { applyEdits } from '../../src/definition/edit.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { checkProblems } from '../support/checkProblems.ts';

/** Levers `pedal`, `a` … `e`, each with an arm `p`. */
const file = (rods: string): string => `format: 1
levers:
${['pedal', 'a', 'b', 'c', 'd', 'e']
  .filter((name) => name === 'pedal' || new RegExp(`\\b${name}\\.p`).test(rods))
  .map((name) => `  ${name}: {pivot: [0, 0], arms: {p: {radius: 3, angle: 4}}}\n`)
  .join('')}pedal: {lever: pedal, opens: clockwise, travel: 20}
rods:
${rods}`;

const order = (text: string): string => {
  const { definition } = readDefinition(text);
  return definition === undefined
    ? ''
    : (findLoadPath(definition)
        .path?.steps.map((step) => `${step.from ?? ''}>${step.to}`)
        .join(' ') ?? 'none');
};

describe('the load path', () => {
  it('follows each joint to its lever and all that hangs on it, in file order', () => {
    const rods = [
      '  r1: {from: a.p, to: b.p}',
      '  r2: {from: pedal.p, to: a.p}',
      '  r3: {from: pedal.p, to: c.p}',
      '  r4: {from: b.p, to: d.p}',
    ];
    expect(order(file(`${rods.join('\n')}\n`))).toBe('pedal>a a>b b>d pedal>c');
    expect(order(file(`${[...rods].reverse().join('\n')}\n`))).toBe('pedal>c pedal>a a>b b>d');
  });

  it('begins with the cable where that is the pedal', () => {
    const { definition } = checkProblems(`format: 1
levers: {a: {pivot: [0, 0], arms: {p: {radius: 3, angle: 4}}}, b: {pivot: [0, 0]}}
pedal: {cable: main, pull: 40 mm}
cables: {main: {enters: [1, 2], to: a.p}}
couplings: {k: {from: a, to: b}}
`);
    expect(definition && findLoadPath(definition).path).toEqual({
      root: { kind: 'cable', cable: 'main' },
      steps: [
        { joint: { kind: 'cable', name: 'main' }, from: undefined, to: 'a' },
        { joint: { kind: 'coupling', name: 'k' }, from: 'a', to: 'b' },
      ],
    });
  });

  it('is a loop where it comes back', () => {
    checkProblems(
      file(`  r1: {from: pedal.p, to: a.p}
  r2: {from: a.p, to: b.p}
  r3: {from: b.p, to: a.p}
  #                   ^^^ error[load-path-loop]: \`a\` → \`b\` → \`a\`
`),
    );
    checkProblems(
      file(`  r1: {from: pedal.p, to: a.p}
  r2: {from: a.p, to: pedal.p}
  #                   ^^^^^^^ error[load-path-loop]: \`pedal\` → \`a\` → \`pedal\`
`),
    );
  });

  it('is a loop away from the pedal, told once', () => {
    checkProblems(
      file(`  r1: {from: a.p, to: b.p}
  r2: {from: b.p, to: c.p}
  r3: {from: c.p, to: a.p}
  #                   ^^^ error[load-path-loop]: \`a\` → \`b\` → \`c\` → \`a\`
  r4: {from: c.p, to: d.p}
`),
    );
  });

  it('has one driver for each lever', () => {
    const { problems } = checkProblems(
      file(`  r1: {from: pedal.p, to: a.p}
  r2: {from: pedal.p, to: b.p}
  r3: {from: b.p, to: a.p}
  #                   ^^^ error[driven-twice]: \`r3\` drives \`a\`, which \`r1\` drives already
`),
    );
    expect(problems[0]?.related).toHaveLength(1);
  });

  it('has the foot as the only driver of the pedal', () => {
    checkProblems(
      file(`  r1: {from: a.p, to: pedal.p}
  #                   ^^^^^^^ error[driven-twice]: so that \`pedal\` drives \`a\`
`),
    );
  });

  it('is mended by turning a rod round', () => {
    const text = file('  r1: {from: pedal.p, to: a.p}\n  r2: {from: b.p, to: a.p}\n');
    const { problems } = readDefinition(text);
    expect(problems.map((problem) => problem.code)).toEqual(['driven-twice']);
    const mended = applyEdits(text, problems[0]?.replacements ?? []);
    expect(readDefinition(mended).problems).toEqual([]);
    expect(order(mended)).toBe('pedal>a a>b');
  });

  it('leaves levers standing that nothing drives', () => {
    checkProblems(`format: 1
levers:
  pedal: {pivot: [0, 0]}
  idler: {pivot: [0, 0]}
# ^^^^^ warning[not-driven]: so it stands still
pedal: {lever: pedal, opens: clockwise, travel: 20}
`);
  });

  it('is an error where plates stand still with such a lever, at it or behind it, and names them', () => {
    checkProblems(`format: 1
levers:
  pedal: {pivot: [0, 0]}
  idler: {pivot: [0, 0], arms: {p: {radius: 3, angle: 4}}}
# ^^^^^ error[not-driven]: Nothing drives \`idler\`, so it stands still, and the plates \`near\`, \`far\` never open
  shaft: {pivot: [9, 0], arms: {p: {radius: 3, angle: 4}}}
  alone: {pivot: [9, 0]}
# ^^^^^ warning[not-driven]: Nothing drives \`alone\`, so it stands still
pedal: {lever: pedal, opens: clockwise, travel: 20}
rods: {link: {from: idler.p, to: shaft.p}}
plates:
  near: {lever: idler, bore: 40}
  far: {lever: shaft, bore: 40}
  moved: {lever: pedal, bore: 40}
`);
  });

  it('does not blame a lever whose joint could not be read', () => {
    checkProblems(
      file(`  r1: {from: pedal.p, to: a.p, length: 0}
  #                                    ^ error[out-of-range]
`),
    );
    checkProblems(
      file(`  r1: {from: pedal.p, to: }
  #                   ^^ error[wrong-shape]
  r2: {from: a.p, to: b.p}
`),
    );
  });

  it('is found for thousands of levers in a chain without overflowing', () => {
    const names = Array.from({ length: 4_000 }, (_, k) => (k === 0 ? 'pedal' : `l${k}`));
    const text = `format: 1\nlevers:\n${names.map((name) => `  ${name}: {pivot: [0, 0]}\n`).join('')}pedal: {lever: pedal, opens: clockwise, travel: 20}
couplings:\n${names
      .slice(1)
      .map((name, k) => `  c${k}: {from: ${names[k]}, to: ${name}}\n`)
      .join('')}`;
    expect(text.length).toBeLessThan(256 * 1024);
    const { definition, problems } = readDefinition(text);
    expect(problems).toEqual([]);
    expect(definition && findLoadPath(definition).path?.steps).toHaveLength(3_999);
  });
});
