/** Every word of the page that does not come from the editor; the drawing's own stand beside it. */
import type { LimitBand } from '../src/protocol/charts.ts';
import type { PartKind, ReportedFigure, ReportedMark, ReportedPart, ReportedRequirement, Severity } from '../src/protocol/report.ts';
import { DRAWING_WORDS } from './drawing/words.ts';
import { STUDY_WORDS } from './panels/studies/words.ts';
import type { TypedNumber } from './panels/numberText.ts';

const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;

const percent = (fraction: number) => `${(100 * fraction).toFixed(1)} %`;

export const WORDS = {
  drawing: DRAWING_WORDS,

  // The page
  waiting: 'Waiting for the throttle file…',
  stage: 'Mechanism',
  sections: 'Sections of this page',
  close: 'Close',
  otherProtocol: 'This view is of another version of the extension. Close it and open it again.',
  atRest: 'At rest, pedal at 0 %',
  firstTitle: 'Nothing to draw yet',
  firstHint: 'A linkage is drawn as soon as one lever has a pivot. Begin with the pedal:',
  firstExample:
    'format: 1\nlevers:\n  pedal:\n    pivot: [0, 0]\n    arms:\n      pad: {radius: 220 mm, angle: 270 deg}\npedal: {lever: pedal, opens: counterclockwise, travel: 20 deg, pad: pad}',

  // A broken file
  brokenAnnounced: (number: number) => `The file cannot be solved: ${count(number, 'thing is', 'things are')} missing or wrong`,
  lastPicture: 'Last picture that could be drawn. Missing or wrong:',
  nothingYet: 'Missing or wrong:',
  missingName: 'mistakes',
  verdictIsTried: 'With what is tried; none of it is written yet.',
  verdictIsOld: 'What follows is of the last picture, not of the text as it stands.',

  // Lists
  showAll: (number: number, name: string) => `Show all ${number} ${name}`,
  showFirst: (number: number) => `Show the first ${number}`,
  findingsName: 'findings',
  requirementsName: 'requirements',
  figuresName: 'figures',
  partsName: 'parts',
  changesName: 'changes',
  dialsName: 'values',

  // Verdict, findings, requirements, facts
  findings: 'Findings',
  noFindings: 'Nothing found.',
  noFindingsHere: 'Nothing found at this part.',
  findingCount: (number: number) => count(number, 'finding', 'findings'),
  severity: { error: 'Error', warning: 'Warning', note: 'Note' } satisfies Record<Severity, string>,
  cure: (cure: string) => `Cure: ${cure}`,
  toText: 'Show in text',
  toFixes: 'Fixes…',
  toWorst: (at: string) => `Go to the worst, at ${at}`,
  toTravel: (at: string) => `at ${at}`,
  setPedal: 'Set the pedal',
  figureAt: ({ label, text, travel }: ReportedFigure) => `${label} ${text}${travel === undefined ? '' : ` at ${percent(travel)}`}`,
  atWorst: (mark: ReportedMark, at: number) => `Pedal at ${percent(at)}: ${mark.part === undefined ? '' : `${mark.part}: `}${mark.message}`,
  noPlacedFinding: 'No finding has a worst place along the pedal',
  requirements: 'Requirements',
  outcome: { passed: 'Passed', failed: 'Failed', undecided: 'Not decidable' } satisfies Record<ReportedRequirement['outcome'], string>,
  facts: 'Figures',
  notChecked: 'Not checked',

  // Load path and stepping
  loadPath: 'Load path',
  kind: {
    pedal: 'pedal',
    cable: 'cable',
    rod: 'rod',
    slot: 'slot',
    coupling: 'coupling',
    lever: 'lever',
    plates: 'plates',
    sensor: 'sensor',
    spring: 'spring',
    'keep-out': 'keep-out',
  } satisfies Record<PartKind, string>,
  stepThrough: 'Step through',
  stopStepping: 'Stop stepping',
  noPart: 'No part chosen',
  partTitle: ({ kind, name }: ReportedPart, at: number, of: number) => `${name === kind ? name : `${kind} ${name}`}, ${at} of ${of}`,
  previousPart: 'Previous',
  nextPart: 'Next',
  takes: 'Goes in',
  gives: 'Comes out',
  limits: 'Limits',
  asWrittenTitle: 'As written',
  changedAgainst: (label: string) => `Changed against ${label}`,
  nothingChangedHere: 'Nothing changed at this part.',

  // Dials
  dials: 'Try values',
  dialsHint: 'Nothing is written until you say so.',
  atCursor: 'at the cursor',
  dialSlider: (label: string) => `${label}, slider`,
  dialNumber: (label: string, unit: string) => (unit === '' ? `${label}, number` : `${label}, number in ${unit}`),
  was: (text: string) => `was ${text}`,
  trialWaiting: 'Solving…',
  trialDoes: (before: string, after: string) =>
    before === after ? `Verdict as before: ${after}` : `Before: ${before}. With this: ${after}`,
  trialMoves: { came: 'New', went: 'Gone', moved: 'Now' },
  written: (number: number) => (number === 1 ? 'The value stands in the text.' : `The ${number} values stand in the text.`),
  undo: 'Undo',
  trialUnsolved: 'Not checked: the file cannot be solved with this. What is missing or wrong stands above.',
  wrongNumber: (typed: Exclude<TypedNumber, { number: number }>, unit: string) => {
    if (typed.wrong === 'comma') return `Not taken: write ${typed.meant}, with a point.`;
    return unit === '' ? 'Not taken: write a number.' : `Not taken: write a number in ${unit}.`;
  },
  writeTrial: (number: number) => (number === 1 ? 'Write this value' : `Write these ${number} values`),
  dropTrial: 'Drop',
  trialLost: 'The editor does not answer. Nothing was written; try again, or close this view and open it again.',
  notWritten: (why: string) => `Not written: ${why}`,

  // Compare
  compare: 'Compare',
  comparedWith: (label: string) => `Compared with ${label}`,
  compareWays: { head: 'With the last commit', revision: 'With a revision…', file: 'With a file…' },
  stopComparing: 'Stop comparing',
  otherNotDrawn: 'The other state cannot be drawn.',
  nothingChanged: 'No value differs.',
  wasIs: (was: string | undefined, is: string | undefined) =>
    was === undefined ? `is new: ${is ?? ''}` : is === undefined ? `was ${was}, is gone` : `was ${was}, is ${is}`,

  // Pedal
  pedal: 'Pedal',
  pedalSlider: 'Pedal travel',
  pedalNumber: 'Pedal travel in %, number',
  ofTravel: '% of pedal travel',
  ofTravelMm: (mm: string, where: 'pad' | 'cable') =>
    `% of pedal travel, ${mm}\u00a0mm at the ${where === 'pad' ? 'pad' : "cable's pedal end"}`,
  wrongTravel: 'Not taken: write a number from 0 to 100.',
  throttle: 'throttle',
  throttleOpen: (shaft: string, percent: string, degrees: string) => `${shaft} ${percent}\u00a0% open (${degrees}°)`,
  throttleClosed: (shaft: string) => `${shaft} closed`,
  throttleUnknown: (shaft: string) => `${shaft} has no position`,
  throttlesOpen: (shafts: number, least: string, most: string) => `${shafts} throttle shafts ${least} to ${most}\u00a0% open`,
  throttlesUnknown: (without: number, shafts: number) =>
    `${without} of ${shafts} throttle shafts ${without === 1 ? 'has no position' : 'have no position'}`,
  effort: (where: 'pad' | 'cable') => (where === 'pad' ? 'effort' : 'pull at the cable'),
  comingBack: 'coming back',
  beyondSolved: (last: string) => `no position here: the last that could be solved is at ${last}`,
  play: 'Play',
  pause: 'Pause',
  speed: 'Speed',
  speedOf: (speed: number) => `${speed} ×`,
  previousWorst: 'Previous finding, at its worst place',
  nextWorst: 'Next finding, at its worst place',
  worstShort: 'finding',
  keysButton: 'Keys',

  // Single failures and snap-back
  failures: 'If one part fails',
  failuresHint: 'Each spring, rod, cable, slot pin and coupling lost in turn, each cable seized: do the plates still close, and how fast?',
  workOut: 'Work out',
  workOutAgain: 'Work out again',
  beingWorkedOut: 'Being worked out…',
  workedOut: (done: number, all: number) => `${done} of ${all}`,
  failuresOld: 'Of the text and figures before the last change, not as they stand.',
  failuresName: 'failures',
  failuresNotCome: (why: string) => `Not worked out: ${why}`,
  failuresAnnounced: (verdict: string) => `Single failures: ${verdict}`,
  noLine: 'The editor does not answer.',
  fails: 'Fails',
  nothingFails: 'nothing',
  platesOf: 'On',
  outcomeColumn: 'Plates',
  least: 'Least left to close',
  timeColumn: 'Closed in',
  estimated: 'inertia estimated',
  ofPlates: (levers: string, text: string) => `${levers}: ${text}`,
  playReturn: 'Play the snap-back',
  stepReturn: 'Step through the snap-back',
  snapNotCome: (why: string) => `No snap-back to play. ${why}.`,
  ruleFigures: 'Figures of rules',
  takenForGranted: 'Taken for granted',
  snapTitle: (after: string, slower: number) =>
    `Snap-back from full pedal${after}, ${slower === 1 ? 'at its own speed' : `${slower} × slower`}`,
  snapBar: 'Snap-back',
  snapTime: 'Time since the foot came off',
  snapPlay: 'Play snap-back',
  snapPause: 'Pause snap-back',
  earlier: 'Earlier',
  later: 'Later',
  backToPedal: 'Back to the pedal',
  snapAt: (time: string, openings: readonly string[]) => `${time} s${openings.length === 0 ? '' : `: ${openings.join(', ')}`}`,
  opened: (lever: string, degrees: string) => `${lever} ${degrees}°`,
  snapDone: (after: string, outcome: string) => `Snap-back${after}: ${outcome}`,
  /** @param name e.g. `rod link`, `cable main seized`; empty where nothing fails */
  after: (name: string, isSeized: boolean) => (name === '' ? '' : ` ${isSeized ? 'with' : 'without'} ${name}`),
  sliderIdle: 'does not drive the drawing now',

  // Studies
  studies: STUDY_WORDS,
  buildsWithin: (low: string, high: string) => `most builds ${low} to ${high}`,

  // Charts
  charts: 'Charts',
  noFigure: '–',
  asWritten: 'as written',
  ghostBefore: 'as written, before the trial',
  ghostCompared: (label: string) => label,
  over: (figure: string) => `over ${figure}`,
  extremes: (label: string, [least, leastAt]: readonly [string, string], [greatest, greatestAt]: readonly [string, string]) =>
    `${label}: least ${least} at ${leastAt}, greatest ${greatest} at ${greatestAt}`,
  level: (label: string, figure: string) => `${label}: ${figure} all along`,
  noFigures: (label: string) => `${label}: no figure`,
  stretch: (from: string, to: string) => (to.startsWith(`${from}\u00a0`) ? `at ${to}` : `from ${from} to ${to}`),
  beyondShown: (upTo: string, curves: readonly string[]) => `Over ${upTo}, drawn at the upper edge: ${curves.join('; ')} of pedal travel`,
  saveWholeTable: 'All columns as CSV',
  save: 'Save',
  drawingAs: (kind: string) => `Drawing as ${kind}`,
  limitsShaded: (bands: readonly Pick<LimitBand, 'label' | 'severity'>[]) =>
    `Shaded: ${bands.map(({ label, severity }) => `${label} (${severity === 'error' ? 'error, hatched' : 'warning'})`).join(', ')}`,
  othersShaded: (drawn: number, others: number) =>
    `Drawn are the ${drawn} curves that matter most; grey, what the other ${others} lie between: each stands in the table, and is drawn while its part is lit.`,
  table: 'Table',
  tableOf: (title: string) => `${title} as a table`,
  tableFrame: (title: string) => `Table of ${title}`,
  saveAs: (kind: string, title: string) => `Save ${title} as ${kind}`,
  chartDrawn: (title: string, curves: number) => `${title} over the pedal's travel, ${count(curves, 'curve', 'curves')}`,
  chartInWords: (curves: readonly string[], others: number) =>
    `${curves.join('; ')}.${others === 0 ? '' : ` ${count(others, 'other curve stands', 'other curves stand')} in the table.`}`,
  pedalAxis: '% pedal',
  pedalColumn: 'pedal, %',
  valuesAt: (at: string, texts: readonly string[]) => `At ${at}: ${texts.join(', ')}`,
  notSaved: (why: string) => `Not saved: ${why}`,
  notDrawn: 'The picture could not be made. Save it as SVG instead.',

  // Keys
  keysTitle: 'Keys',
  keys: [
    [['Space'], 'play one stroke, or pause'],
    [['←', '→'], 'pedal by 1 %; with Shift by 0.1 %'],
    [['Page Up', 'Page Down'], 'pedal by 10 %, with the focus on the drawing or the slider'],
    [['Home', 'End'], 'foot off, full pedal, with the focus on the drawing or the slider'],
    [[',', '.'], 'previous and next finding, at its worst place'],
    [['Esc'], 'end the snap-back; drop what is tried'],
    [['+', '−'], 'closer, further, with the focus on the drawing'],
    [['0', 'E', 'F'], 'show all, the engine side, the chosen part, with the focus on the drawing'],
    [['←', '→', '↑', '↓'], 'move the drawing; with the focus on a part or a handle, go to the next'],
    [['Enter', 'Esc'], 'take hold of a handle, to move it with the arrows, and write it; let it go'],
    [['N'], 'names of all parts, with the focus on the drawing'],
    [['?'], 'this list'],
  ] as readonly (readonly [readonly string[], string])[],
} as const;
