import { describe, expect, test } from 'vitest';
import { isAnswered, isAsked, isToEditor, isToView } from '../../src/protocol/guards.ts';
import type { ToEditor, ToView } from '../../src/protocol/messages.ts';
import { handMadeReturns, handMadeTrace } from '../support/handMadeReturns.ts';
import { handMadeShow, handMadeShown } from '../support/handMadeShown.ts';

const source = { uri: 'file:///a.throttle.yaml', version: 3 };
const place = { start: 4, end: 9 };
const part = { kind: 'rod', name: 'link' } as const;
const { picture, charts, report, dials } = handMadeShown();
const [dial] = dials;
const trial = [
  { kind: 'value', path: 'let.reach', value: 38.5 },
  { kind: 'place', path: 'levers.crank.pivot', to: [0.1, 0.2, 0], fine: false, through: undefined },
] as const;

const TO_VIEW: readonly ToView[] = [
  { type: 'words', language: 'fr', texts: { 'Show all {count} {name}': 'Montrer les {count} {name}' } },
  { ...handMadeShow(), trial },
  { ...handMadeShow(), charts: [], coming: ['angles', 'facts'] },
  { ...handMadeShow(), charts: [], report: undefined, coming: ['report', 'angles', 'facts'] },
  { type: 'follows', source, trial, charts, without: ['margins'], report: undefined, facts: report.facts },
  { type: 'follows', source, trial: [], charts: [], without: [], report, facts: undefined },
  { type: 'broken', source, fileName: 'a.throttle.yaml', missing: [{ message: 'a pedal is missing', place }] },
  { type: 'refused', source, trial, reason: 'it follows from a formula' },
  { type: 'select', source, part, step: true, dial },
  { type: 'select', source, part: undefined, step: false, dial: undefined },
  {
    type: 'compare',
    source,
    label: 'HEAD',
    other: { picture, charts },
    changes: [{ path: 'let.reach', was: '36 mm', is: '38 mm', effects: ['opens 2° further'], place }],
    effects: ['opens fully: passes'],
  },
  { type: 'compare', source, label: 'HEAD', other: undefined, changes: [], effects: [] },
  { type: 'compare-ended', reason: 'the file is not in git' },
  { type: 'working', source, trial, done: 7, all: 24 },
  { type: 'gone', reason: 'deleted' },
];

const TO_EDITOR: readonly ToEditor[] = [
  { type: 'ready' },
  { type: 'reveal', source, place },
  { type: 'reveal-part', source, part },
  { type: 'try', source, trial },
  { type: 'in-sight', charts: ['progression', 'effort'] },
  { type: 'follow', source, trial, coming: ['facts', 'torques'] },
  { type: 'step', way: -1 },
  { type: 'compare-with', other: 'revision' },
];

const csv = 'pedal.travel\r\n';
const REQUESTS = [
  ['write', isAsked.write, { source, trial }],
  ['save', isAsked.save, { name: 'curve.svg', kind: 'svg', content: '<svg/>' }],
  ['save of bytes', isAsked.save, { name: 'curve.png', kind: 'png', content: new Uint8Array([137, 80]) }],
  ['table', isAsked.table, { source, trial }],
  ['written', isAnswered.write, { version: 4 }],
  ['saved', isAnswered.save, { saved: false }],
  ['the table', isAnswered.table, { csv }],
  ['returns', isAsked.returns, { source, trial }],
  ['a trace of a failure', isAsked.trace, { source, trial, failure: { kind: 'rod-lost', part: 'link' } }],
  ['a trace of no failure', isAsked.trace, { source, trial, failure: undefined }],
  ['the failures', isAnswered.returns, handMadeReturns()],
  ['the snap-back', isAnswered.trace, handMadeTrace()],
] as const;

const CASES: readonly (readonly [string, (value: unknown) => boolean, unknown])[] = [
  ...TO_VIEW.map((message, index) => [`${message.type} ${index}`, isToView, message] as const),
  ...TO_EDITOR.map((message) => [message.type, isToEditor, message] as const),
  ...REQUESTS,
];

type Container = Record<string, unknown>;
const isContainer = (value: unknown): value is Container => typeof value === 'object' && value !== null && !ArrayBuffer.isView(value);

/** Keys down to each value that holds no other; into lists no further than their first items, which are all alike. */
function leaves(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (!isContainer(value)) return [path];
  return Object.keys(value)
    .slice(0, Array.isArray(value) ? 10 : undefined)
    .flatMap((key) => leaves(value[key], [...path, key]));
}

const at = (value: unknown, path: readonly string[]) => path.reduce<unknown>((inner, key) => (inner as Container)[key], value);

function withValue(value: unknown, path: readonly string[], put: unknown): unknown {
  const copy = structuredClone(value);
  (at(copy, path.slice(0, -1)) as Container)[path.at(-1)!] = put;
  return copy;
}

describe('the guards', () => {
  test.each(CASES)('take %s, as it comes out of a clone', (_, guard, message) => {
    expect(guard(structuredClone(message))).toBe(true);
  });

  test.each(CASES)('take %s where what is undefined was left out on the way', (_, guard, message) => {
    const left = structuredClone(message);
    for (const path of leaves(left))
      if (at(left, path) === undefined) Reflect.deleteProperty(at(left, path.slice(0, -1)) as object, path.at(-1)!);
    expect(guard(left)).toBe(true);
  });

  test.each(CASES)('refuse %s with any one value of another type', (_, guard, message) => {
    for (const path of leaves(message)) {
      expect({ path, isTaken: guard(withValue(message, path, { of: 'another type' })) }).toEqual({ path, isTaken: false });
    }
  });

  test.each(CASES)('refuse %s with an infinite number, or one that is none', (_, guard, message) => {
    for (const path of leaves(message).filter((leaf) => typeof at(message, leaf) === 'number')) {
      for (const figure of [Number.NaN, Number.POSITIVE_INFINITY])
        expect([path, guard(withValue(message, path, figure))]).toEqual([path, false]);
    }
  });

  test.each([
    [0, 0],
    [25, 24],
    [-1, 24],
    [1.5, 24],
  ])('refuse progress of %s of %s', (done, all) => {
    expect(isToView({ type: 'working', source, trial, done, all })).toBe(false);
  });

  test('refuse a picture that points at a lever that is not there, whatever points', () => {
    const show = handMadeShow();
    const pointing = leaves(show).filter((path) => path.at(-1) === 'lever' || /^picture couplings \d+ (?:from|to)$/.test(path.join(' ')));
    // Pedal, 2 ends of a rod, of a cable, of a slot and of a coupling, plates, sensor, 2 springs, a handle.
    expect(pointing).toHaveLength(14);
    for (const path of pointing) expect([path, isToView(withValue(show, path, show.picture.levers.length))]).toEqual([path, false]);
  });

  const refused: readonly (readonly [string, readonly string[], unknown])[] = [
    ['a series that is too short', ['picture', 'levers', '0', 'rotation'], new Float64Array(100)],
    ['a rim that is too short', ['picture', 'cables', '0', 'enters', 'inner', 'rim'], new Float64Array(101)],
    ['a curve that is too short', ['charts', '0', 'curves', '0', 'values'], new Float64Array(3)],
    ['a plain list for a series', ['picture', 'levers', '0', 'rotation'], Array.from({ length: 101 }, () => 0)],
    ['stations that do not rise', ['picture', 'stations'], new Float64Array(101)],
    ['a single station', ['picture', 'stations'], new Float64Array(1)],
    ['a lever that is not there', ['picture', 'rods', '0', 'from', 'lever'], 3],
    ['a handle on a lever that is not there', ['picture', 'handles', '1', 'at', 'lever'], 3],
    ['a place of two figures', ['picture', 'levers', '0', 'pivot'], [0, 0]],
    ['a place with a hole', ['picture', 'levers', '0', 'pivot'], [0, null, 0]],
    ['an unknown form of spring', ['picture', 'springs', '0', 'form', 'kind'], 'constructor'],
    ['a chart without a curve', ['charts', '0', 'curves'], []],
    ['a chart to come that there is not', ['coming'], ['angles', 'constructor']],
    ['a list of what is to come that is none', ['coming'], undefined],
    ['a travel beyond full', ['report', 'marks', '0', 'worst'], 1.01],
    ['a place in the text that ends before it starts', ['report', 'marks', '0', 'place'], { start: 5, end: 4 }],
    ['a dial without a step', ['dials', '0', 'step'], 0],
    ['a dial that ends before it starts', ['dials', '0', 'greatest'], 18],
    ['a text of a megabyte', ['report', 'verdict'], 'x'.repeat(1_000_000)],
    ['a list of a million', ['report', 'notChecked'], Array.from({ length: 1_000_000 }, () => '')],
    ['more digits than a number has', ['charts', '0', 'curves', '0', 'digits'], 101],
  ];
  test.each(refused)('refuse %s', (_, path, put) => {
    expect(isToView(withValue(handMadeShow(), path, put))).toBe(false);
  });

  const motion = (length: number) => Float64Array.from({ length }, (_, i) => i);
  const refusedTraces: readonly (readonly [string, readonly string[], unknown])[] = [
    ['that begins later', ['times'], Float64Array.of(0.01, 0.05, 0.1)],
    ['whose times stand still', ['times'], Float64Array.of(0, 0.05, 0.05)],
    ['with a time that is none', ['times'], Float64Array.of(0, NaN, 0.1)],
    ['with a rotation that is none', ['rotations', '1'], Float64Array.of(0, NaN, 0.1)],
    ['with a lever that has fewer moments', ['rotations', '1'], motion(2)],
    ['of plain lists', ['times'], [0, 0.05, 0.1]],
    ['of a lever that is not there', ['shafts', '0'], 3],
  ];
  test.each(refusedTraces)('refuse a snap-back %s', (_, path, put) => {
    expect(isAnswered.trace(withValue(handMadeTrace(), path, put))).toBe(false);
  });

  test('take a snap-back of 240 moments, and refuse one of more and one of a single one', () => {
    const taken = [1, 2, 240, 241].map((moments) =>
      isAnswered.trace({ ...handMadeTrace(), times: motion(moments), rotations: [0, 1, 2].map(() => motion(moments)) }),
    );
    expect(taken).toEqual([false, true, true, false]);
  });

  test('refuse failures with a kind, an outcome or a standing that is none, and a place beyond the pedal', () => {
    const wrong: readonly (readonly [readonly string[], unknown])[] = [
      [['rows', '1', 'failure', 'kind'], 'lever-lost'],
      [['rows', '1', 'outcome'], 'passes'],
      [['rows', '1', 'plates', '0', 'outcome'], 'constructor'],
      [['rows', '1', 'plates', '0', 'weakest', 'travel'], 1.01],
      [['statements', '0', 'standing'], 'complies'],
      [['marks', '0', 'place'], { start: 5, end: 4 }],
    ];
    for (const [path, put] of wrong) expect([path, isAnswered.returns(withValue(handMadeReturns(), path, put))]).toEqual([path, false]);
    expect(isAsked.trace({ source, trial, failure: { kind: 'rod', part: 'link' } })).toBe(false);
  });

  test.each([undefined, null, 7, 'show', [], {}, { type: 'toString' }, { type: 'reveal' }])('refuse %o at either end', (message) => {
    expect([isToView(message), isToEditor(message)]).toEqual([false, false]);
  });
});
