/** Units that the file does not know: converted where that is exact, else what is wanted instead. Never the nearest word. */
import { describe, expect, it } from 'vitest';
import { foreignUnit } from '../../../src/definition/quantity/foreignUnits.ts';
import { readQuantity } from '../../../src/definition/quantity/quantity.ts';
import { parseUnit, UNITS } from '../../../src/definition/quantity/units.ts';
import type { Dimension } from '../../../src/definition/dimensions.ts';
import { nearestWord } from '../../../src/definition/names.ts';
import { solve } from '../../../src/solve.ts';
import { checkFix } from '../../support/checkFix.ts';

/** What a text is told at a place: message, cure, and the text with the cure carried out. */
function told(expected: Dimension | undefined, text: string): readonly [message: string, cure: string, mended: string | undefined] {
  const reading = readQuantity(text, 0, expected);
  if (reading.form !== 'quantity' || reading.problems.length !== 1) throw new Error(JSON.stringify(reading));
  const [problem] = reading.problems;
  expect(problem?.code).toBe('unknown-unit');
  const [edit] = problem?.replacements ?? [];
  const mended = edit && text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end);
  return [problem?.message ?? '', problem?.cure ?? '', mended];
}

describe('a unit that can be converted', () => {
  it.each([
    // 133.322 Pa to the millimetre of mercury; 25.4 of them to the inch. NIST SP 811, from memory.
    ['pressure', '70 mmHg', 70 * 0.133322, 'kPa', 1e-3],
    ['pressure', '20 inHg', 20 * 3.386389, 'kPa', 1e-4],
    ['pressure', '1 atm', 101.325, 'kPa', 0],
    ['pressure', '760 Torr', 101.325, 'kPa', 0],
    ['pressure', '650 mbar', 65, 'kPa', 0],
    ['pressure', '650 hPa', 65, 'kPa', 0],
    ['pressure', '0.1 MPa', 100, 'kPa', 0],
    ['length', '40 thou', 1.016, 'mm', 0],
    ['length', '-40 mil', -1.016, 'mm', 0],
    ['length', '0.1 yd', 91.44, 'mm', 0],
    ['length', '0.001 km', 1000, 'mm', 0],
    ['angle', '0.25 turn', 90, 'deg', 0],
    ['angle', '100 grad', 90, 'deg', 0],
    ['angle', '30 arcmin', 0.5, 'deg', 0],
    ['force', '16 ozf', 1, 'lbf', 0],
    ['torque', '2 mNm', 2, 'N*mm', 0],
    ['torque', '2 Ncm', 20, 'N*mm', 0],
    ['voltage', '0.005 kV', 5, 'V', 0],
  ] as const)('%s %s', (expected, text, value, unit, tolerance) => {
    const [message, cure, mended] = told(expected, text);
    expect(message).toContain('in a unit that the file does not know');
    const [, figure = '', written = ''] = /^(\S+) (.*)$/.exec(mended ?? '') ?? [];
    expect(written).toBe(unit);
    expect(Math.abs(Number(figure) - value)).toBeLessThanOrEqual(tolerance + 1e-12 * Math.abs(value));
    expect(cure).toBe(`Write \`${(mended ?? '').replace(/^-/, '')}\``);
    expect(readQuantity(mended ?? '', 0, expected)).toMatchObject({ form: 'quantity', problems: [] });
  });

  it('says what one is where it is a factor of another unit', () => {
    expect(told('torsional-rate', '2 mNm/deg')).toEqual([
      '`mNm` is a torque in a unit that the file does not know',
      'Write it in N*mm: 1 mNm is 1 N*mm',
      undefined,
    ]);
  });

  it('is not converted where something else is wanted', () => {
    expect(told('angle', '70 mmHg')).toEqual(['`mmHg` is a pressure, but an angle is wanted here', 'Write deg, ° or rad', undefined]);
  });

  it('is converted by the quick fix', () => {
    const text = (vacuum: string): string => `format: 1\nplates: {bank: {lever: shaft, bore: 45 mm, vacuum: ${vacuum}}}\n`;
    checkFix(text('760 To$0rr'), text('101.325 kPa'), 'Write `101.325 kPa`');
  });
});

describe('what has no place in a throttle file', () => {
  it.each([
    ['voltage', '5 A', '`A` is a current, which has no place in a throttle file; a voltage is wanted here', 'Write V or mV'],
    ['angle', '1.5 °C', '`°C` is a temperature, which has no place in a throttle file; an angle is wanted here', 'Write deg, ° or rad'],
    ['angle', '1.5°F', '`°F` is a temperature, which has no place in a throttle file; an angle is wanted here', 'Write deg, ° or rad'],
    [
      'length',
      '3 s',
      '`s` is a time, which has no place in a throttle file; a length is wanted here',
      'Write mm, cm, m, um, inch, in or ft',
    ],
    ['voltage', '5 kΩ', '`kΩ` is a resistance, which has no place in a throttle file; a voltage is wanted here', 'Write V or mV'],
    [
      'angle',
      '90 rpm',
      '`rpm` is a speed of rotation, which has no place in a throttle file; an angle is wanted here',
      'Write deg, ° or rad',
    ],
  ] as const)('%s %s', (expected, text, message, cure) => {
    expect(told(expected, text)).toEqual([message, cure, undefined]);
  });

  it('is told so in a `let` too, where anything the file knows may stand', () => {
    expect(told(undefined, '5 A')).toEqual([
      '`A` is a current, which has no place in a throttle file',
      'Leave it out; a file knows lengths, angles, forces, torques, masses, voltages and pressures',
      undefined,
    ]);
  });

  it('leaves the sign of degrees alone', () => {
    expect(readQuantity('25°', 0, 'angle')).toMatchObject({ form: 'quantity', problems: [] });
    expect(readQuantity('25 °', 0, 'angle')).toMatchObject({ form: 'quantity', problems: [] });
  });
});

it('reads a name of `let` as that name', () => {
  const { problems } = solve('format: 1\nlet: {turn: 90 deg, half: 0.5 * turn}\n');
  expect(problems.filter(({ code }) => code === 'unknown-unit')).toEqual([]);
});

it('knows each of them as none of the file’s own, and what it is converted into as one', () => {
  for (const word of ['mmHg', 'hPa', 'thou', 'oz', 'kp', 'kV', 'mNm']) {
    const foreign = foreignUnit(word);
    expect(UNITS.has(word)).toBe(false);
    expect(foreign !== undefined && 'unit' in foreign && parseUnit(foreign.unit)).toBeTruthy();
  }
  // The nearest word would be another quantity, or a hundredth of it.
  expect([nearestWord('mA', UNITS.keys()), nearestWord('hPa', UNITS.keys())]).toEqual(['mm', 'Pa']);
  expect(foreignUnit('mm')).toBeUndefined();
});
