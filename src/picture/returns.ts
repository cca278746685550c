/** Whether the plates come back, with nothing failed and after each single failure, as the view tells it. */
import type { FailureRow, PlatesLeft, Weakest } from '../failures/failure.ts';
import type { Statement } from '../failures/statements.ts';
import type { Failures } from '../findings/failures.ts';
import { bracketedRoot } from '../numeric/roots.ts';
import {
  failureName,
  failuresVerdict,
  freedWords,
  OUTCOME_WORDS,
  platesWords,
  secondsText,
  statementWords,
  stopWords,
} from '../outputs/failureWords.ts';
import { printable } from '../outputs/paint.ts';
import type { PartKey, PartKind } from '../protocol/report.ts';
import type { FailureKey, ReturnPlates, ReturnRow, Returns, ReturnStatement, ReturnWeakest } from '../protocol/returns.ts';
import type { Answers } from '../solve.ts';
import type { Travel } from '../travel/travel.ts';
import { reportFindings } from './marks.ts';

/** Undefined where nothing can be solved. Takes as long as solving the linkage several times over. Never throws. */
export function showReturns(answers: Answers): Returns | undefined {
  const failures = answers.failures();
  const travel = answers.study?.travel;
  if (failures === undefined || travel === undefined) return undefined;
  const { whole, rows, notChecked } = failures;
  return {
    verdict: printable(failuresVerdict(failures)),
    rows: notChecked === undefined ? [whole, ...rows].map((row) => rowOf(answers, travel, row)) : [],
    ...besidesOf(answers, failures),
  };
}

function besidesOf(
  { text }: Answers,
  { findings, statements, assumptions }: Failures,
): Pick<Returns, 'marks' | 'statements' | 'assumptions'> {
  return { marks: reportFindings(text, findings), statements: statements.map(statementOf), assumptions: assumptions.map(inWords) };
}

function rowOf({ parts }: Answers, travel: Travel, row: FailureRow): ReturnRow {
  const { failure, outcome, plates, freed } = row;
  const key = failure && partOf(failure);
  return {
    failure: failure && { kind: failure.kind, part: failure.part },
    name: failure === undefined ? '' : printable(failureName(row)),
    part: key && parts.some(({ kind, name }) => kind === key.kind && name === key.name) ? key : undefined,
    outcome,
    plates: plates.map((left) => platesOf(travel, left)),
    freed: freed && printable(freedWords(freed)),
  };
}

const KINDS: Readonly<Record<FailureKey['kind'], PartKind>> = {
  'spring-lost': 'spring',
  'rod-lost': 'rod',
  'cable-lost': 'cable',
  'slot-lost': 'slot',
  'coupling-lost': 'coupling',
  'cable-seized': 'cable',
};

function partOf({ kind, part }: FailureKey): PartKey {
  return { kind: KINDS[kind], name: part };
}

function platesOf(travel: Travel, left: PlatesLeft): ReturnPlates {
  const { levers, outcome, weakest, time } = left;
  return {
    levers: printable(levers.join(' + ')),
    outcome,
    outcomeText: OUTCOME_WORDS[outcome],
    weakest: weakest && weakestOf(travel, left, weakest),
    why: platesWords({ ...left, weakest: undefined, time: undefined }).map(printable),
    time: time?.seconds === undefined ? undefined : secondsText(time.seconds),
    isEstimated: time?.estimated === true,
    timeNote: timeNoteOf(left),
    stop: time?.stop && printable(stopWords(time.stop)),
  };
}

/** How the stop is met stands beside the time, not here. */
function timeNoteOf({ levers, outcome, time }: PlatesLeft): string | undefined {
  if (time?.why === undefined && time?.leftOut === undefined) return undefined;
  const { stop: _, ...alone } = time;
  return inWords(platesWords({ levers, outcome, weakest: undefined, why: undefined, heldAt: undefined, time: alone }).join(', '));
}

function weakestOf(travel: Travel, left: PlatesLeft, { opening }: Weakest): ReturnWeakest {
  const words = platesWords({ ...left, why: undefined, heldAt: undefined, time: undefined });
  return { text: printable(words.join(', ')), travel: travelOf(travel, left.levers[0] ?? '', opening) };
}

/** The first pedal travel at which a lever of the whole linkage is opened so far; undefined where it never is. */
function travelOf({ mechanism, samples, poseAt }: Travel, lever: string, opening: number): number | undefined {
  const index = mechanism.leverIndex.get(lever);
  if (index === undefined) return undefined;
  const lack = (at: number): number => mechanism.senses[index]! * poseAt(at).rotation[index]! - opening;
  let before = { at: NaN, lack: NaN };
  for (const at of samples) {
    const here = { at, lack: lack(at) };
    if (Math.abs(here.lack) <= SAME) return at;
    if (before.lack * here.lack < 0) return bracketedRoot(lack, before.at, before.lack, here.at, here.lack, CLOSE);
    before = here;
  }
  return undefined;
}

/** rad; less is rounding. */
const SAME = 1e-9;
/** Of the pedal's travel. */
const CLOSE = 1e-9;

function statementOf(statement: Statement): ReturnStatement {
  const { standing, figure } = statement;
  return { standing, text: printable(statementWords(statement)), note: figure.note === undefined ? undefined : printable(figure.note) };
}

/** Without the marks that a terminal and a page of text put about names. */
function inWords(text: string): string {
  return printable(text.replaceAll('`', ''));
}
