/** Shafts out of step: linkages that must raise it, its figures by hand, and near ones that must not. */
import { describe, expect, it } from 'vitest';
import { openArea, type PlateShape } from '../../src/plates/openArea.ts';
import { solve } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';
import { checkFindings } from '../support/checkFindings.ts';
import { markedAll, markedAt } from '../support/markedAt.ts';
import { degrees, fourBarAt, radians, type FourBarByHand } from './handGeometry.ts';

const BANKS =
  'plates: {fore: {lever: front, bore: 40, seat: 6 deg, idle: 4 deg}, aft: {lever: rear, bore: 40, seat: 6 deg, idle: 4 deg}}\n';

describe('shafts joined by a rod', () => {
  const joined = (length: string, more = ''): string => `format: 1
levers:
  front: {pivot: [0, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {open: 79.8 deg}}
  rear: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {open: 79.8 deg}}
pedal: {lever: front, opens: counterclockwise, travel: 79.8 deg}
rods: {link: {from: front.arm, to: rear.arm${length}}}
limits: {transmission: [30 deg, 20 deg]${more}}
${BANKS}`;
  const bar = (length: number): FourBarByHand => ({ from: [0, 0], driving: 40, start: 60, to: [100, 0], driven: 40, end: 60, length });
  const shape: PlateShape = { bore: 0.04, shaft: 0, seat: radians(6) };
  const area = (opening: number): number => openArea(shape, radians(10 + opening));

  it('are in step with the rod as drawn', () => {
    checkFindings(joined(''));
    checkFindings(joined(', length: 100 mm'));
  });

  it('stand apart at rest with the rod 0.2 mm short, which the message tells in degrees and in air', () => {
    const apart = fourBarAt(bar(99.8), 0)?.turned ?? NaN;
    expect(apart).toBeGreaterThan(0.3);
    // Over what the other passes, so that nothing can pass more than 100 % less.
    const air = (area(apart) - area(0)) / area(0);
    const answers = solve(joined(', length: 99.8 mm'));
    const found = answers.findings.find(({ code }) => code === 'out-of-step');
    expect(found).toMatchObject({ severity: 'warning', part: 'rear' });
    expect(found?.message).toContain(
      `rear stands ${apart.toFixed(2)}° further open than front at rest, with ${Number((100 * air).toFixed(1))} % more air`,
    );
    expect(found?.message).toContain('the engine idles unevenly');
    expect(found?.ranges?.[0]?.from).toBe(0);
    expect(found?.limit?.value).toBeCloseTo(radians(0.1), 12);
  });

  it('are mended at rest by the length of that rod', () => {
    const mended = applyMend(joined(', length: 99.8 mm'), 'out-of-step');
    expect(mended.mend).toEqual({ unknown: 'rods.link.length', outcome: { kind: 'at', column: 'rear.opening', travel: 0 }, target: 0 });
    expect(mended.value).toBeCloseTo(0.1, 8);
    expect(mended.left).toEqual([]);
  });

  it('are mended also where the rod holds the first of them open', () => {
    const { findings } = solve(joined(', length: 100.2 mm'));
    expect(findings.find(({ code }) => code === 'out-of-step')?.message).toMatch(
      /rear stands [\d.]+° less open than front at rest, with [\d.]+ % less air/,
    );
    const mended = applyMend(joined(', length: 100.2 mm'), 'out-of-step');
    expect(mended.mend.outcome).toMatchObject({ column: 'front.opening' });
    expect(mended.left).toEqual([]);
  });

  it('are an error with more than half a degree at rest', () => {
    const at = (length: number): string | undefined =>
      solve(joined(`, length: ${length} mm`)).findings.find(({ code }) => code === 'out-of-step')?.severity;
    expect(fourBarAt(bar(99.72), 0)?.turned).toBeLessThan(0.5);
    expect(fourBarAt(bar(99.6), 0)?.turned).toBeGreaterThan(0.5);
    expect([at(99.96), at(99.72), at(99.6)]).toEqual([undefined, 'warning', 'error']);
  });

  it('are held to the limits of the file instead', () => {
    const wide = solve(joined(', length: 99.8 mm', ', step: [0.6 deg, 3 deg]'));
    expect(wide.findings.map(({ code }) => code)).not.toContain('out-of-step');
    expect(wide.notChecked.map(({ message }) => message).filter((message) => message.includes('limit'))).toEqual([]);
    const tight = solve(joined(', length: 99.96 mm', ', step: [0.02 deg, 0.05 deg]')).findings.find(({ code }) => code === 'out-of-step');
    expect(tight).toMatchObject({ severity: 'error', limit: { from: 'limits of this file' } });
    // One figure is for both, and sets the warning alone.
    const one = solve(joined(', length: 99.6 mm', ', step: 0.3 deg')).findings.find(({ code }) => code === 'out-of-step');
    expect(one?.severity).toBe('warning');
  });
});

describe('shafts driven apart', () => {
  const geared = (rear: string, { plates = BANKS, limits = '', open = 80 } = {}): string => `format: 1
levers:
  crank: {pivot: [0, 0]}
  front: {pivot: [100, 0], stops: {open: 80 deg}}
  rear: {pivot: [200, 0], stops: {open: ${open} deg}}
pedal: {lever: crank, opens: counterclockwise, travel: 79.95 deg}
couplings: {one: {from: crank, to: front}, two: {from: crank, to: rear${rear}}}
${limits}${plates}`;

  it('are told of where they differ by more than 0.1° below 5°', () => {
    const text = (ratio: number): string =>
      geared(`, ratio: ${ratio}`, { open: 79.95 * ratio, limits: 'limits: {step: [0.1 deg, 5 deg]}\n' });
    // In the mean 5° where the crank stands at 5 · 2 / (1 + ratio).
    const edge = (ratio: number): number => (10 * (1 - ratio)) / (1 + ratio);
    expect(edge(0.976)).toBeGreaterThan(0.12);
    const { only } = checkFindings(
      markedAt(
        text(0.976),
        '  |rear|: {',
        'warning[out-of-step]: rear stands up to 0.12° less open than front below 5° of opening (mean of both), at 6.3 % of pedal travel, with up to',
      ),
    );
    expect(degrees(only('out-of-step').worst?.value ?? NaN)).toBeCloseTo(edge(0.976), 7);
    expect(only('out-of-step').mend).toBeUndefined();
    expect(edge(0.981)).toBeLessThan(0.1);
    checkFindings(text(0.981));
  });

  it('are told of where they differ by more than half a degree above', () => {
    const text = (ratio: number): string => geared(`, ratio: ${ratio}`, { open: 79.95 * ratio });
    const { only } = checkFindings(
      markedAt(
        text(0.99),
        '  |rear|: {',
        'warning[out-of-step]: rear stands up to 0.8° less open than front above 5° of opening (mean of both), at 100 % of pedal travel',
      ),
    );
    expect(degrees(only('out-of-step').worst?.value ?? NaN)).toBeCloseTo(0.7995, 7);
    // From where a hundredth of the crank's rotation is half a degree.
    expect(only('out-of-step').ranges?.[0]?.from).toBeCloseTo(50 / 79.95, 6);
    checkFindings(text(0.994));
  });

  it('are told of once with all that is beyond', () => {
    const { only } = checkFindings(
      markedAt(
        geared(', ratio: 0.95', { open: 79.95 * 0.95 }),
        '  |rear|: {',
        'warning[out-of-step]: rear stands up to 0.26° less open than front below 5°',
      ),
    );
    expect(only('out-of-step').message).toContain(
      '; stands up to 4° less open above 5° of opening (mean of both), at 100 % of pedal travel',
    );
  });

  it('do not lag behind each other unseen, though a declared stage is a note without a cure', () => {
    const lag = geared(', ratio: 1.003, lag: 0.2 deg');
    const words = 'note[out-of-step]: rear and front open in stages, by the coupling two: rear stands up to 0.2° less open than front, at';
    const { only } = checkFindings(markedAt(lag, '  |rear|: {', words));
    expect(only('out-of-step')).not.toHaveProperty('cure');
    expect(only('out-of-step')).not.toHaveProperty('mend');
    checkFindings(geared(', lag: 0.05 deg'));
  });

  it('are told of their air where seat or idle differ at the same opening, by the opening that would make it', () => {
    const unlike = (aft: string): string =>
      geared('', { plates: BANKS.replace('aft: {lever: rear, bore: 40, seat: 6 deg, idle: 4 deg', `aft: {lever: rear, ${aft}`) });
    const shape: PlateShape = { bore: 0.04, shaft: 0, seat: radians(6) };
    const area = (angle: number): number => openArea(shape, radians(angle));
    // 10° against 9°: a plate of 40 mm, seated at 6°.
    const [fore, aft] = [area(10), area(9)];
    const { only } = checkFindings(
      markedAt(unlike('bore: 40, seat: 6 deg, idle: 3 deg'), '  |rear|: {', 'error[out-of-step]: rear passes'),
    );
    const { message, cure } = only('out-of-step');
    expect(message).toContain(
      `less air than front at rest, ${(aft * 1e6).toFixed(1)} mm² against ${(fore * 1e6).toFixed(1)} mm² a plate: as much as`,
    );
    expect(message).toContain(`${Number(((100 * (fore - aft)) / fore).toFixed(1))} % less air`);
    expect(cure).toContain('same `seat` and `idle`');
    const slope = (area(9.0001) - area(8.9999)) / radians(0.0002);
    expect(message).toContain(`as much as ${Number(degrees((fore - aft) / slope).toFixed(2))}° of opening`);
    const seated = unlike('bore: 40, seat: 4 deg, idle: 4 deg');
    expect(solve(seated).findings.map(({ code, part }) => `${code} ${part}`)).toEqual(['out-of-step rear']);
    checkFindings(unlike('bore: 40, seat: 6 deg, idle: 3.91 deg'));
    checkFindings(unlike('bore: 44, seat: 6 deg, idle: 3 deg'));
    checkFindings(unlike('bore: 40, shaft: 8, seat: 6 deg, idle: 3 deg'));
  });

  it('are told no air of plates of another size, and not compared where they sit on one shaft', () => {
    const plates = BANKS.replace('aft: {lever: rear, bore: 40', 'aft: {lever: rear, bore: 44');
    const { only } = checkFindings(
      markedAt(geared(', ratio: 0.99', { open: 79.95 * 0.99, plates }), '  |rear|: {', 'warning[out-of-step]'),
    );
    expect(only('out-of-step').message).not.toContain('air');
    checkFindings(geared(', ratio: 0.5', { open: 40, plates: BANKS.replace('lever: rear', 'lever: front') }));
  });

  it('are each compared with that of the first plates', () => {
    const plates =
      'plates: {aft: {lever: rear, bore: 40, seat: 6 deg, idle: 4 deg}, fore: {lever: front, bore: 40, seat: 6 deg, idle: 4 deg}, mid: {lever: crank, bore: 40, seat: 6 deg, idle: 4 deg}}\n';
    const text = geared(', ratio: 0.99', { open: 79.95 * 0.99, plates }).replace(
      'crank: {pivot: [0, 0]}',
      'crank: {pivot: [0, 0], stops: {open: 80 deg}}',
    );
    checkFindings(
      markedAll(text, [
        ['  |front|: {', 'warning[out-of-step]: front stands up to 0.8° further open than rear'],
        ['  |crank|: {', 'warning[out-of-step]: crank stands up to 0.8° further open than rear'],
      ]),
    );
  });
});
