/** Facts about open area and signal, by hand. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/findings/finding.ts';
import { openArea, greatestOpenArea, type PlateShape } from '../../src/plates/openArea.ts';
import { solve } from '../../src/solve.ts';
import { bisect } from './handGeometry.ts';

const DEGREE = Math.PI / 180;

interface Given {
  readonly travel?: number;
  readonly plates?: string;
  readonly sensor?: string;
  readonly stops?: string;
}

const facts = ({
  travel = 40,
  plates = 'bank: {lever: shaft, bore: 45, shaft: 8, seat: 6 deg, idle: 1.5 deg}',
  sensor = 'tps: {lever: rotor, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], supply: 5 V, bits: 10}',
  stops = '',
}: Given = {}): readonly Fact[] =>
  solve(`format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]${stops}}
  rotor: {pivot: [200, 0]}
  loose: {pivot: [300, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
couplings: {gear: {from: pedal, to: shaft, ratio: 2}, on: {from: shaft, to: rotor, ratio: -0.5}}
${plates === '' ? '' : `plates: {${plates}}\n`}sensors: {${sensor}}
`).facts;

function only(key: string, of: readonly Fact[], part?: string): Fact {
  const found = of.filter((fact) => fact.key === key && (part === undefined || fact.part === part));
  const [first] = found;
  if (first === undefined || found.length > 1) throw new Error(`${found.length} facts ${key}`);
  return first;
}

const shape: PlateShape = { bore: 0.045, shaft: 0.008, seat: 6 * DEGREE };
const share = (travel: number): number => openArea(shape, (7.5 + 80 * travel) * DEGREE) / greatestOpenArea(shape);

describe('pedal travel at shares of the open area', () => {
  it.each([10, 25, 50, 90])('is where the plates have opened %d %% of their greatest area', (percent) => {
    const fact = only(`area-travel-at-${percent}`, facts());
    expect(fact).toMatchObject({ part: 'bank', label: `pedal travel at ${percent} % of open area` });
    expect(fact.figure?.value).toBeCloseTo(
      bisect((travel) => share(travel) - percent / 100, 0, 1),
      9,
    );
    expect(fact.figure).toEqual({ value: fact.travel, dimension: 'number' });
  });

  it('is the first place where the plates pass it twice', () => {
    // ψ = 41.5° + 160° t goes past 90° and far down again.
    const passed = facts({ travel: 60, plates: 'bank: {lever: shaft, bore: 45, shaft: 8, seat: 6 deg, idle: 35.5 deg}' });
    const { travel = NaN } = only('area-travel-at-50', passed);
    const opened = openArea(shape, (41.5 + 120 * travel) * DEGREE) / greatestOpenArea(shape);
    expect(opened).toBeCloseTo(0.5, 9);
    expect(41.5 + 120 * travel).toBeLessThan(90);
    expect(openArea(shape, (41.5 + 120) * DEGREE)).toBeLessThan(0.5 * greatestOpenArea(shape));
    expect(only('area-travel-at-10', passed)).toMatchObject({ why: 'open that far at rest' });
  });

  it('finds a plate that is wide open for a moment between two stations', () => {
    // No shaft: fully open at 90° alone, which is passed fast.
    const fast = facts({ travel: 80, plates: 'bank: {lever: shaft, bore: 45, seat: 6 deg, idle: 0 deg}' });
    const { travel = NaN } = only('area-travel-at-90', fast);
    expect(1 - Math.cos((6 + 160 * travel) * DEGREE) / Math.cos(6 * DEGREE)).toBeCloseTo(0.9, 9);
  });

  it('says what is never reached, and tells each set of plates apart', () => {
    const two = facts({
      travel: 20,
      plates: 'bank: {lever: shaft, bore: 45, shaft: 8, seat: 6 deg}, more: {lever: rotor, bore: 40, seat: 6 deg}',
    });
    expect(only('area-travel-at-90', two, 'bank')).toMatchObject({ why: 'never reached' });
    expect(only('area-travel-at-90', two, 'bank').figure).toBeUndefined();
    expect(only('area-travel-at-10', two, 'bank').figure).toBeDefined();
    expect(only('area-travel-at-10', two, 'more')).toMatchObject({ why: 'never reached' });
  });

  it('is not told of plates on a lever that the pedal does not move', () => {
    expect(facts({ plates: 'bank: {lever: loose, bore: 45}' }).filter(({ part }) => part === 'bank')).toEqual([]);
  });
});

describe('what a sensor tells', () => {
  it('is its signal at rest and at full pedal', () => {
    expect(only('signal-at-rest', facts())).toMatchObject({ part: 'tps', label: 'signal at rest', figure: { dimension: 'voltage' } });
    expect(only('signal-at-rest', facts()).figure?.value).toBeCloseTo(0.5 + 48 / 110, 12);
    expect(only('signal-at-full', facts()).figure?.value).toBeCloseTo(0.5 + (4 * 52) / 110, 12);
    expect(only('signal-at-full', facts())).not.toHaveProperty('travel');
  });

  it('is its signal where the pedal stops, where a stop holds that', () => {
    const stopped = only('signal-at-full', facts({ stops: ', stops: {open: 60 deg}' }));
    expect(stopped).toMatchObject({ label: 'signal where the pedal stops', travel: expect.closeTo(0.75, 12) as unknown });
    expect(stopped.figure?.value).toBeCloseTo(0.5 + (4 * 42) / 110, 12);
  });

  it('is volts and counts for a degree and a percent of the plates', () => {
    const told = facts();
    const volts = (4 / 110) * 0.5;
    for (const where of ['tip-in', 'overall']) {
      expect(only(`volts-per-degree-${where}`, told).figure?.value).toBeCloseTo(volts, 12);
      expect(only(`volts-per-percent-${where}`, told).figure?.value).toBeCloseTo(volts * 0.825, 12);
      expect(only(`counts-per-degree-${where}`, told).figure?.value).toBeCloseTo((volts * 1024) / 5, 10);
      expect(only(`counts-per-percent-${where}`, told).figure?.value).toBeCloseTo((volts * 0.825 * 1024) / 5, 10);
    }
    expect(only('volts-per-degree-tip-in', told).label).toBe('signal for 1° of shaft, at tip-in');
  });

  it('is a size also of a falling signal, and no counts without supply or bits', () => {
    const told = facts({ sensor: 'tps: {lever: rotor, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [4.5 V, 0.5 V], supply: 5 V}' });
    expect(only('volts-per-degree-overall', told).figure?.value).toBeCloseTo(2 / 110, 12);
    expect(told.filter(({ key }) => key.startsWith('counts'))).toEqual([]);
  });

  it('says so where the pedal does not move its lever, or it cannot be assembled', () => {
    const loose = facts({ sensor: 'tps: {lever: loose, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}' });
    expect(loose.filter(({ part }) => part === 'tps')).toEqual([
      { key: 'signal-at-rest', part: 'tps', label: 'signal at rest', why: 'the pedal does not move loose' },
    ]);
    const { facts: far } = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 20, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 120}
rods: {link: {from: pedal.out, to: shaft.arm}}
sensors: {tps: {lever: shaft, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}
`);
    expect(only('signal-at-full', far)).toMatchObject({ why: 'it cannot be assembled there' });
    expect(only('volts-per-degree-overall', far).why).toContain('cannot be assembled');
    expect(only('volts-per-degree-tip-in', far).figure).toBeDefined();
  });
});
