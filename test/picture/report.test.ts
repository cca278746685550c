/** The report: parts in the order of stepping with what goes in and out, marks, requirements, facts, in words. */
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../src/outputs/caution.ts';
import type { ReportedPart } from '../../src/protocol/report.ts';
import { FILES, fileNamed, shownOf } from './shown.ts';

const partOf = (parts: readonly ReportedPart[], key: string): ReportedPart => {
  const found = parts.find(({ kind, name }) => `${kind} ${name}` === key);
  if (found === undefined) throw new Error(`There is no part ${key}`);
  return found;
};

describe('the report of the four-barrel example', () => {
  const { report, answers } = shownOf(fileNamed('four-barrel'));

  it('is headed by title, verdict and caution', () => {
    expect(report.title).toBe('Four barrels, one shaft');
    expect(report.verdict).toMatch(/^no errors, no warnings, 1 note; 2 requirements passed/);
    expect(report.severity).toBe('note');
    expect(report.caution).toBe(CAUTION);
  });

  it('goes through the parts in load-path order', () => {
    expect(report.parts.map(({ kind, name, depth }) => `${depth} ${kind} ${name}`)).toEqual(
      answers.parts.map(({ kind, name, depth }) => `${depth} ${kind} ${name}`),
    );
  });

  it('says what goes into each part and what comes out', () => {
    const [pull] = answers.table([1], ['main.pull']).columns[0]!.values;
    const told = report.parts.map(({ name, takes, gives }) => `${name}: ${takes} → ${gives}`);
    expect(told[0]).toBe('pedal:  → pedal turns 27°');
    expect(told[1]).toMatch(new RegExp(`^main: pedal turns 27° → pulls ${pull!.toFixed(2)} mm at 100 %; bellcrank opens `));
    expect(told[2]).toMatch(/^bellcrank: main from pedal → opens [\d.]+° at [\d.]+ % of pedal travel$/);
    expect(told[3]).toMatch(/^link: bellcrank opens [\d.]+° at [\d.]+ % → shaft opens 82° at/);
    // 240 N·mm preload and 2.2 N·mm a degree over 82°.
    expect(told.find((line) => line.startsWith('return_front'))).toMatch(
      /^return_front: shaft opens 82° at [\d.]+ % → 240 N·mm at rest, 420 N·mm at full pedal, of closing torque$/,
    );
    expect(told.find((line) => line.startsWith('position'))).toMatch(/ → 0\.936 V at rest, 3\.918 V at full pedal$/);
  });

  it('tells the dimensions as they are written', () => {
    const { parts } = report;
    expect(partOf(parts, 'lever bellcrank').dimensions).toEqual([
      'pivot crank_pivot',
      'out radius crank_reach = 38 mm',
      'out angle 166 deg',
      'quadrant radius 22 mm',
      'quadrant groove 95 deg',
      'friction 12 N*mm',
    ]);
    expect(partOf(parts, 'cable main').dimensions.slice(0, 3)).toEqual(['leaves [96, 68]', 'enters [448, 186]', 'slack 1 mm']);
    expect(partOf(parts, 'pedal pedal').dimensions.slice(0, 2)).toEqual(['travel 27 deg', 'pivot [0, 0]']);
    const length = Math.hypot(...linkEnds());
    expect(partOf(parts, 'rod link').dimensions[0]).toBe(`length ${Number(length.toFixed(2))} mm as drawn`);
  });

  it('tells each limit that holds for a part with the figure that it judges', () => {
    const link = partOf(report.parts, 'rod link');
    expect(link.figures.flatMap(({ label, limit }) => (limit === undefined ? [] : [`${label}: ${limit}`]))).toEqual([
      'least transmission angle: warning below 40°, error below 25°',
      'least drive angle: warning below 20°, error below 10°',
      'greatest end tilt: error above 12°',
    ]);
    const main = partOf(report.parts, 'cable main');
    expect(main.figures.map(({ label, limit }) => [label, limit])).toEqual([
      ['pull', undefined],
      ['stretch', undefined],
      ['least drive angle', 'warning below 20°, error below 10°'],
      ['greatest lead, housing ends aimed midway', 'warning above 5°, error above 10°'],
    ]);
    expect(['rod link', 'cable main', 'plates bank'].flatMap((key) => partOf(report.parts, key).limits)).toEqual([]);
  });

  it('has every figure once with its place apart', () => {
    const [first] = partOf(report.parts, 'rod link').figures;
    expect(first!.label).toBe('least transmission angle');
    expect(first!.text).toMatch(/^[\d.]+°$/);
    expect(first!.travel).toBeGreaterThanOrEqual(0);
    const half = report.facts.find(({ label }) => label === 'shaft: pedal travel at 50 % of opening')!;
    expect(half.text).toBe(`${Number((half.travel! * 100).toFixed(1))} %`);
  });

  it('has the figures first that are looked for first, with the least angle of all joints', () => {
    expect(report.facts.slice(0, 6).map(({ label }) => label)).toEqual([
      'shaft: pedal travel at 50 % of opening',
      'pedal: effort as shaft meets its open stop',
      'effort at full pedal, pressed on beyond that stop',
      'pedal: greatest effort',
      'shaft: least closing torque',
      'link: least transmission angle',
    ]);
    const [own] = partOf(report.parts, 'rod link').figures;
    expect(report.facts[5]).toEqual({ label: 'link: least transmission angle', text: own!.text, travel: own!.travel });
  });

  it('tells each requirement with what is, what is demanded and where', () => {
    expect(report.requirements.map(({ name, outcome, travel }) => ({ name, outcome, travel }))).toEqual([
      { name: 'opens fully', outcome: 'passed', travel: 1 },
      { name: 'soft tip-in', outcome: 'passed', travel: 0.25 },
    ]);
    expect(report.requirements[0]!.text).toBe('82° ≥ 81° (1° to spare, at 100 %)');
  });
});

describe('a figure that is told with its limit', () => {
  // A bank that runs ahead of the other, and rods that leave the plane.
  const { report, answers } = shownOf(fileNamed('two-banks').replace('angle: 300 deg}', 'angle: 303 deg}'));
  const stations = Array.from({ length: 2001 }, (_, i) => i / 2000);
  const { columns } = answers.table(stations, ['front.opening', 'rear.opening', 'rear_link.misalignment', 'main.lead']);
  const columnOf = (name: string): readonly number[] => columns.find((column) => column.name === name)!.values.map((value) => value ?? NaN);
  const [front, rear] = [columnOf('front.opening'), columnOf('rear.opening')];
  const [tilt, lead] = [columnOf('rear_link.misalignment'), columnOf('main.lead')];
  const figureOf = (key: string, label: string) => {
    const found = partOf(report.parts, key).figures.find((figure) => figure.label === label);
    if (found === undefined) throw new Error(`${key} has no figure ${label}`);
    return found;
  };
  const angleOf = ({ text }: { readonly text: string }) => Number(text.replace('°', ''));
  /** Of the table: how far the openings are apart where their mean is on one side of 5°. */
  const apart = (isNear: boolean) =>
    Math.max(...front.map((one, i) => ((one + rear[i]!) / 2 < 5 === isNear ? Math.abs(one - rear[i]!) : 0)));

  it('is the greatest that the table has', () => {
    const checked = [
      [figureOf('rod rear_link', 'greatest end tilt'), Math.max(...tilt)],
      [figureOf('cable main', 'greatest lead'), Math.max(...lead)],
      [figureOf('plates rear_bank', 'out of step with front near idle'), apart(true)],
      [figureOf('plates rear_bank', 'out of step with front further up'), apart(false)],
    ] as const;
    for (const [figure, wanted] of checked) {
      expect(wanted).toBeGreaterThan(0.05);
      // Half a hundredth is rounding; as much at most comes of a peak between two stations, of which one is 0.0024° on from the other.
      expect(Math.abs(angleOf(figure) - wanted), figure.label).toBeLessThan(0.008);
      expect(figure.travel).toBeGreaterThanOrEqual(0);
    }
  });

  it('has the same step at both banks, with the name of the other', () => {
    const { text, limit } = figureOf('plates front_bank', 'out of step with rear near idle');
    expect(text).toBe(figureOf('plates rear_bank', 'out of step with front near idle').text);
    expect(limit).toMatch(/^at most [\d.]+°$/);
  });

  it('leaves the limit by itself where there is no such figure', () => {
    const { report: unsolved } = shownOf(fileNamed('two-banks').replace('to: front.arm\n', 'to: front.arm\n    length: 10 mm\n'));
    expect(partOf(unsolved.parts, 'rod front_link').limits).toEqual(['end tilt: error above 12°']);
  });
});

/** From the pin of the bellcrank to that of the shaft, by the figures of the file, mm. */
function linkEnds(): readonly [number, number] {
  const pin = (x: number, y: number, radius: number, degrees: number): readonly [number, number] => [
    x + radius * Math.cos((degrees * Math.PI) / 180),
    y + radius * Math.sin((degrees * Math.PI) / 180),
  ];
  const [from, to] = [pin(512, 148, 38, 166), pin(604, 172, 32, 140)];
  return [to[0] - from[0], to[1] - from[1]];
}

describe('marks', () => {
  it('put mistakes in the text before findings, the worst of each first', () => {
    const text = `${fileNamed('binding')}colour: red\n`;
    const { marks } = shownOf(text).report;
    expect(marks[0]).toMatchObject({ code: 'unknown-key', part: undefined, ranges: [], worst: undefined });
    expect(marks[1]).toMatchObject({ code: 'toggle-opening', part: 'link', severity: 'error' });
    expect(marks[1]!.worst).toBeCloseTo(0.5457621758, 8);
    expect(marks[1]!.ranges).toHaveLength(1);
  });

  it('tell with a cause what only follows from it, and at which part', () => {
    const { answers, report } = shownOf(fileNamed('binding'));
    const told = report.marks.find(({ code }) => code === 'toggle-opening')!;
    const { following } = answers.findings.find(({ code }) => code === 'toggle-opening')!;
    expect(following!.map(({ code, part }) => [code, part])).toContainEqual(['opening-missed', 'shaft']);
    expect(told.following).toEqual(following!.map(({ part, message }) => ({ part, message })));
    expect(report.marks.some(({ code }) => code === 'opening-missed')).toBe(false);
  });

  it.each(FILES)('of $name are all there is', ({ text }) => {
    const { report, answers } = shownOf(text);
    expect(report.marks).toHaveLength(answers.problems.length + answers.findings.length);
    expect(report.notChecked).toHaveLength(answers.notChecked.length);
    const hasAngle = answers.parts.some(({ figures }) =>
      figures.some(({ label, figure }) => label === 'least transmission angle' && figure !== undefined),
    );
    expect(report.facts).toHaveLength(answers.facts.length + (hasAngle ? 1 : 0));
    // What is about a part is told at the part too, so that its card never reads like a pass.
    const told = report.parts.flatMap(({ name, notChecked }) => notChecked.map((words) => `${name}: ${words}`));
    const about = report.notChecked.filter((words) => report.parts.some(({ name }) => new RegExp(`^${name}[.:]`).test(words)));
    expect(told.map((words) => words.replace(/^.*?: /, '')).sort()).toEqual(about.map((words) => words.replace(/^.*?: /, '')).sort());
    const rank = { error: 0, warning: 1, note: 2 };
    const ranks = report.marks.filter(({ part }) => part !== undefined).map(({ severity }) => rank[severity]);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });
});

it('counts a requirement that is not met as an error', () => {
  const { report } = shownOf(fileNamed('four-barrel').replace('>= 81 deg', '>= 89 deg'));
  expect(report.severity).toBe('error');
  expect(report.requirements[0]).toMatchObject({ outcome: 'failed', travel: 1 });
});

it('keeps markup of the file as the text that it is', () => {
  const title = '<img src=x onerror=alert(1)> **bold** &amp; [a](https://b)';
  const name = '<b>opens</b> `fully`';
  const text = fileNamed('four-barrel')
    .replace(/title: .*/, `title: '${title}'`)
    .replace('opens fully:', `'${name}':`);
  const { report } = shownOf(text);
  expect(report.title).toBe(title);
  expect(report.requirements[0]!.name).toBe(name);
});

it('shows what turns the direction of writing as one mark each', () => {
  const { report } = shownOf(fileNamed('four-barrel').replace(/title: .*/, 'title: "\\u202eback \\u0007bell"'));
  expect(report.title).toBe('\ufffdback \ufffdbell');
});
