/** What springs are wound from, as it is read and refused. */
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';
import { solve } from '../../src/solve.ts';
import { checkProblems } from '../support/checkProblems.ts';

const springs = (lines: string): string => `format: 1
levers:
  shaft: {pivot: [0, 0], arms: {tail: {radius: 30 mm, angle: 200 deg}}}
pedal: {lever: shaft, opens: counterclockwise, travel: 60 deg}
springs:
${lines}
`;

describe('wire', () => {
  it('is read with all that a kind of spring can say of it', () => {
    const { definition } = checkProblems(
      springs(`  a: {lever: shaft, wire: {diameter: 2 mm, mean_coil: 18 mm, active_turns: 5.25, material: music_wire, arbor: 12 mm}}
  b: {from: [9, 9], to: shaft.tail, free_length: 40, wire: {diameter: 1, mean_coil: 8, active_turns: 9, material: stainless_302, hook_bend: 3}}
  c: {from: [9, 9], to: shaft.tail, kind: compression, free_length: 40, wire: {diameter: 1, mean_coil: 8, active_turns: 9, total_turns: 11, material: chrome_silicon}}
  d: {lever: shaft, strip: {width: 6, thickness: 0.8, length: 600, material: carbon_steel}}`),
    );
    const [a, b, c, d] = definition?.springs ?? [];
    expect([a?.wire?.arbor?.nominal, b?.wire?.hookBend?.nominal, c?.wire?.totalTurns?.nominal]).toEqual([0.012, 0.003, 11]);
    expect([a, b, c].map((each) => each?.wire?.material.name)).toEqual(['music_wire', 'stainless_302', 'chrome_silicon']);
    expect(d?.kind === 'torsion' && d.strip?.thickness.nominal).toBeCloseTo(0.8e-3, 12);
  });

  it('is refused where it cannot be', () => {
    checkProblems(
      springs(
        `  a: {lever: shaft, wire: {diameter: 0 mm, mean_coil: 18, active_turns: 5, material: music_wire}}
  #                                  ^^^^ error[out-of-range]: must be greater than 0
  b: {lever: shaft, wire: {diameter: 2, mean_coil: 1.5, active_turns: 5, material: music_wire}}
  #                                                ^^^ error[out-of-range]: greater than the wire
  c: {lever: shaft, wire: {diameter: 2, mean_coil: 18, active_turns: -5, material: music_wire}}
  #                                                                  ^^ error[out-of-range]: must be greater than 0
  d: {lever: shaft, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wir}}
  #                                                                               ^^^^^^^^^ error[wrong-value]: Did you mean \`music_wire\`
  e: {lever: shaft, wire: {diameter: 2, mean_coil: 5, active_turns: 5, material: music_wire}}
  #                                                ^ error[out-of-range]: is 2.5 times the wire
  f: {lever: shaft, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wire, arbor: 16}}
  #                                                                                                  ^^ error[out-of-range]: does not go into the coil
  gg: {from: [9, 9], to: shaft.tail, free_length: 40, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wire, hook_bend: 1}}
  #                                                                                                                                        ^ error[out-of-range]: half the wire
  h: {from: [9, 9], to: shaft.tail, kind: compression, free_length: 40, wire: {diameter: 2, mean_coil: 18, active_turns: 5, total_turns: 4, material: music_wire}}
  #                                                                                                                                      ^ error[out-of-range]: fewer turns
`,
      ),
    );
  });

  it('names every material that it knows', () => {
    const [found] = readDefinition(
      springs('  a: {lever: shaft, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: unobtainium}}'),
    ).problems;
    for (const known of ['music_wire', 'hard_drawn', 'oil_tempered', 'chrome_vanadium', 'chrome_silicon', 'stainless_302']) {
      expect(found?.message).toContain(`\`${known}\``);
    }
  });

  it('is wound three times its own thickness just as well', () => {
    checkProblems(springs('  a: {lever: shaft, wire: {diameter: 0.1 in, mean_coil: 7.62 mm, active_turns: 5, material: music_wire}}'));
  });

  it('says of a spring only what its kind has', () => {
    checkProblems(
      springs(`  a: {lever: shaft, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wire, total_turns: 7}}
  #                                                                                                        ^ error[wrong-shape]: of a compression spring, and this is a torsion spring
  b: {from: [9, 9], to: shaft.tail, free_length: 40, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wire, arbor: 9}}
  #                                                                                                                                   ^ error[wrong-shape]: of a torsion spring, and this is an extension spring
  c: {from: [9, 9], to: shaft.tail, free_length: 40, rate: 2, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wire}}
  #                                                           ^^^^ error[wrong-shape]: does not go with \`rate\`
  d: {from: [9, 9], to: shaft.tail, free_length: 40, strip: {width: 6, thickness: 0.8, length: 600, material: carbon_steel}}
  #                                                  ^^^^^ error[unknown-key]
# ^ error[missing-key]: does not say its rate`),
    );
  });

  it('that cannot be read leaves what closes the plates unknown', () => {
    const text = `${springs('  a: {lever: shaft, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: steel}}')}plates: {bank: {lever: shaft, bore: 40}}\n`;
    const answers = solve(text);
    expect(answers.notChecked.map(({ message }) => message).join('\n')).toContain('a spring of the file is not understood');
  });
});
