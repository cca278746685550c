/**
 * Every word of the page: the texts of `words/english.ts`, in the editor's language where it has handed one over, and what is put together
 * from them. What comes from the core stays as it came.
 */
import type { LimitBand } from '../src/protocol/charts.ts';
import type { ReportedFigure, ReportedMark, ReportedPart } from '../src/protocol/report.ts';
import type { TypedNumber } from './panels/numberText.ts';
import { DRAWING_WORDS } from './words/drawing.ts';
import { ENGLISH } from './words/english.ts';
import { spoken, withPhrases } from './words/say.ts';
import { STUDY_WORDS } from './words/studies.ts';

const { drawing: _, studies: __, ...OWN } = ENGLISH;
const TEXTS = spoken(OWN);

const percent = (fraction: number) => `${(100 * fraction).toFixed(1)} %`;

/** Not of any language: the file that is shown where there is none yet. */
const FIRST_EXAMPLE =
  'format: 1\nlevers:\n  pedal:\n    pivot: [0, 0]\n    arms:\n      pad: {radius: 220 mm, angle: 270 deg}\npedal: {lever: pedal, opens: counterclockwise, travel: 20 deg, pad: pad}';

export const WORDS = withPhrases(TEXTS, {
  drawing: DRAWING_WORDS,
  studies: STUDY_WORDS,
  firstExample: FIRST_EXAMPLE,
  noFigure: '–',

  brokenAnnounced: (count: number) => (count === 1 ? TEXTS.oneBroken(count) : TEXTS.manyBroken(count)),

  // Findings and parts
  findingCount: (count: number) => (count === 1 ? TEXTS.oneFinding(count) : TEXTS.manyFindings(count)),
  figureAt: ({ label, text, travel }: ReportedFigure) =>
    `${label} ${text}${travel === undefined ? '' : ` ${TEXTS.toTravel(percent(travel))}`}`,
  atWorst: (mark: ReportedMark, at: number) =>
    TEXTS.pedalAtWorst(percent(at), `${mark.part === undefined ? '' : `${mark.part}: `}${mark.message}`),
  partTitle: ({ kind, name }: ReportedPart, at: number, count: number) => TEXTS.partOf(DRAWING_WORDS.part(kind, name), at, count),

  // Dials
  dialNumber: (label: string, unit: string) => (unit === '' ? TEXTS.dialBareNumber(label) : TEXTS.dialNumberIn(label, unit)),
  trialDoes: (before: string, after: string) =>
    before === after ? TEXTS.verdictAsBefore(after) : TEXTS.verdictBeforeAndWith(before, after),
  written: (count: number) => (count === 1 ? TEXTS.oneWritten : TEXTS.manyWritten(count)),
  wrongNumber: (typed: Exclude<TypedNumber, { number: number }>, unit: string) => {
    if (typed.wrong === 'comma') return TEXTS.wrongComma(typed.meant);
    return unit === '' ? TEXTS.wrongBareNumber : TEXTS.wrongNumberIn(unit);
  },
  writeTrial: (count: number) => (count === 1 ? TEXTS.writeOne : TEXTS.writeMany(count)),

  // Compare
  ghostCompared: (label: string) => label,
  wasIs: (was: string | undefined, is: string | undefined) =>
    was === undefined ? TEXTS.isNew(is ?? '') : is === undefined ? TEXTS.isGone(was) : TEXTS.wasAndIs(was, is),

  // Pedal
  ofTravelMm: (mm: string, where: 'pad' | 'cable') => (where === 'pad' ? TEXTS.ofTravelAtPad(mm) : TEXTS.ofTravelAtCable(mm)),
  throttlesUnknown: (without: number, count: number) =>
    without === 1 ? TEXTS.oneThrottleUnknown(without, count) : TEXTS.throttlesAreUnknown(without, count),
  effort: (where: 'pad' | 'cable') => (where === 'pad' ? TEXTS.effortAtPad : TEXTS.pullAtCable),
  speedOf: (speed: number) => `${speed} ×`,

  // Single failures and snap-back
  ofPlates: (levers: string, text: string) => `${levers}: ${text}`,
  /** @param name e.g. `rod link`, `cable main seized`; empty where nothing fails, and so is what comes of it */
  after: (name: string, isSeized: boolean) => (name === '' ? '' : isSeized ? TEXTS.withSeized(name) : TEXTS.without(name)),
  snapTitle: (after: string, times: number) => {
    const motion = after === '' ? TEXTS.snapBack : TEXTS.snapBackAfter(after);
    return times === 1 ? TEXTS.atOwnSpeed(motion) : TEXTS.slower(motion, times);
  },
  snapAt: (time: string, openings: readonly string[]) => `${time} s${openings.length === 0 ? '' : `: ${openings.join(', ')}`}`,
  opened: (lever: string, degrees: string) => `${lever} ${degrees}°`,
  snapDone: (after: string, outcome: string) => (after === '' ? TEXTS.snapEnded(outcome) : TEXTS.snapEndedAfter(after, outcome)),

  // Charts
  valuesAt: (travel: string, texts: readonly string[]) => TEXTS.valuesAt(travel, texts.join(', ')),
  extremes: (label: string, [least, leastAt]: readonly [string, string], [greatest, greatestAt]: readonly [string, string]) =>
    TEXTS.leastAndGreatest(label, least, leastAt, greatest, greatestAt),
  stretch: (from: string, to: string) => (to.startsWith(`${from}\u00a0`) ? TEXTS.stretchAt(to) : TEXTS.stretchFrom(from, to)),
  beyondShown: (upTo: string, curves: readonly string[]) => TEXTS.drawnAtEdge(upTo, curves.join('; ')),
  limitsShaded: (bands: readonly Pick<LimitBand, 'label' | 'severity'>[]) =>
    TEXTS.shaded(bands.map(({ label, severity }) => (severity === 'error' ? TEXTS.errorBand(label) : TEXTS.warningBand(label))).join(', ')),
  chartDrawn: (title: string, curves: number) => (curves === 1 ? TEXTS.drawnOne(title, curves) : TEXTS.drawnMany(title, curves)),
  chartInWords: (curves: readonly string[], others: number) =>
    `${curves.join('; ')}.${others === 0 ? '' : ` ${others === 1 ? TEXTS.oneOther(others) : TEXTS.manyOthers(others)}`}`,

  keys: keyList,
});

/** What is on each key, and what it does. */
function keyList(): readonly (readonly [readonly string[], string])[] {
  const { keyNames: key, keyActs: act } = TEXTS;
  return [
    [[key.space], act.play],
    [['←', '→'], act.small],
    [[key.pageUp, key.pageDown], act.large],
    [[key.home, key.end], act.ends],
    [[',', '.'], act.worst],
    [[key.escape], act.escape],
    [['+', '−'], act.zoom],
    [['0', 'E', 'F'], act.fit],
    [['←', '→', '↑', '↓'], act.move],
    [[key.enter, key.escape], act.hold],
    [['N'], act.names],
    [['?'], act.list],
  ];
}
