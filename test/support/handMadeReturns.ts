/** Single failures and a snap-back as no solver made them, for the picture of `handMadeShown`: every kind of row is there. */
import type { ReturnPlates, Returns, ReturnTrace } from '../../src/protocol/returns.ts';

const closing: ReturnPlates = {
  levers: 'shaft',
  outcome: 'closes',
  outcomeText: 'closes',
  weakest: { text: '2.4 × friction at 0° of opening: 480 N·mm against 200 N·mm', travel: 0.25 },
  why: [],
  time: '0.09 s',
  isEstimated: true,
  timeNote: 'closed in 0.09 s, but for friction of shaft',
  stop: 'onto the stop at 1240 deg/s, 2 bounces',
};

export function handMadeReturns(): Returns {
  return {
    verdict: 'of 3 parts lost in turn, 1 part would leave plates open, 1 part not checked',
    rows: [
      { failure: undefined, name: '', part: undefined, outcome: 'closes', plates: [closing], freed: undefined },
      {
        failure: { kind: 'rod-lost', part: 'link' },
        name: 'rod link',
        part: { kind: 'rod', name: 'link' },
        outcome: 'stays-open',
        plates: [
          closing,
          {
            levers: 'rear',
            outcome: 'stays-open',
            outcomeText: 'stays open',
            weakest: { text: 'closing torque 0 N·mm at 30° of opening', travel: undefined },
            why: ['nothing brings rear back'],
            time: undefined,
            isEstimated: false,
            timeNote: 'time not known: rear stands still before it is closed',
            stop: undefined,
          },
        ],
        freed: 'rear is let go, and no spring turns it',
      },
      {
        failure: { kind: 'cable-seized', part: 'main' },
        name: 'cable main seized',
        part: { kind: 'cable', name: 'main' },
        outcome: 'not-checked',
        plates: [
          {
            ...closing,
            outcome: 'not-checked',
            outcomeText: 'not checked',
            weakest: undefined,
            why: ['its friction is not given'],
            time: undefined,
            isEstimated: false,
            timeNote: undefined,
            stop: undefined,
          },
        ],
        freed: undefined,
      },
    ],
    marks: [
      {
        severity: 'warning',
        code: 'held-open',
        part: 'link',
        message: 'without link the rear plates stay open',
        following: [],
        isMendable: false,
        cure: 'Put a spring on rear',
        place: { start: 3, end: 7 },
        ranges: [{ from: 0, to: 1 }],
        worst: 0.5,
      },
    ],
    statements: [
      { standing: 'meets', text: 'meets the figure of a rule (from memory): two springs', note: 'as read here' },
      { standing: 'does-not-meet', text: 'does not meet the figure of another rule (read): every plate closes', note: undefined },
      { standing: 'not-checked', text: 'not checked: a third rule (read): in time', note: undefined },
    ],
    assumptions: ['Weight is left out', 'The inertia of shaft is estimated from its arms'],
  };
}

/** Pedal, crank and shaft come back from the full pedal of `handMadeShown` in a tenth of a second, evenly; the shaft is first. */
export function handMadeTrace(): ReturnTrace {
  const times = Float64Array.of(0, 0.05, 0.1);
  return {
    times,
    rotations: [Float64Array.of(-0.4, -0.2, 0), Float64Array.of(-1.2, -0.6, 0), Float64Array.of(-1.4, 0, 0)],
    shafts: [2],
    closed: 0.05,
    outcome: 'closed after 0.05 s',
  };
}
