/**
 * What a person asks about the way back: the table of single failures, and how the levers move in a snap-back. Both take long enough to be
 * felt under the keys, so that they are worked out only when they are asked for, each in a turn of its own, and the newest of each alone.
 */
import { l10n } from 'vscode';
import type { TextDocument } from 'vscode';
import { showReturns } from '../../src/picture/returns.ts';
import { traceReturn } from '../../src/picture/returnTraces.ts';
import type { Requests } from '../../src/protocol/messages.ts';
import type { Tried, Working } from '../../src/protocol/returns.ts';
import type { Answers } from '../../src/solve.ts';
import type { DocumentAnswers } from '../answers.ts';
import { inTurns, nextTurn } from '../turns.ts';
import { askedAnswers } from './askedAnswers.ts';
import { isOf } from './livePicture.ts';

export interface Returning {
  /** Both reject with what the person is told. */
  returns(asks: Requests['returns']['asks']): Promise<Requests['returns']['answers']>;
  trace(asks: Requests['trace']['asks']): Promise<Requests['trace']['answers']>;
  /** What is under way is not begun any more. */
  dispose(): void;
}

/**
 * @param present throws what the person is told where the file is not there
 * @param told how far the table is that is being worked out, each time that more of it is done
 */
export function answerReturns(present: () => TextDocument, answers: DocumentAnswers, told: (working: Working) => void): Returning {
  /** What was asked of last: a table is followed by its traces. */
  let last: { readonly of: string; readonly answers: Answers } | undefined;
  const rounds = { returns: 0, trace: 0 };

  const solved = (asks: Tried): Answers => {
    const document = present();
    const of = JSON.stringify([asks.source, asks.trial]);
    // Of a text that is past there is nothing, though it is known.
    if (last?.of !== of || !isOf(asks.source, document)) last = { of, answers: askedAnswers(document, answers, asks) };
    return last.answers;
  };
  /** Lets the editor have its turn, in which a newer request may come, the text change or the view go. */
  const giveWay = async (which: keyof typeof rounds, mine: number): Promise<void> => {
    await nextTurn();
    demand(which, mine);
  };
  const demand = (which: keyof typeof rounds, mine: number): void => {
    if (mine !== rounds[which]) throw new Error(l10n.t('Something newer was asked for.'));
  };

  return {
    async returns(asks) {
      const mine = ++rounds.returns;
      await giveWay('returns', mine);
      solved(asks);
      await giveWay('returns', mine);
      // A few milliseconds at a time: what was worked out of it stays known, should it be asked for again.
      let before = 0;
      await inTurns(solved(asks).failures()?.work('times') ?? [], ({ done, all }) => {
        demand('returns', mine);
        solved(asks);
        if (done > before) told({ source: asks.source, trial: asks.trial, done, all });
        before = done;
      });
      const shown = showReturns(solved(asks));
      if (shown === undefined)
        throw new Error(l10n.t('The linkage is not solved, so nothing can be told of failures: see the problems of the file.'));
      return shown;
    },
    async trace(asks) {
      const mine = ++rounds.trace;
      await giveWay('trace', mine);
      const { failure, ...tried } = asks;
      solved(tried);
      await giveWay('trace', mine);
      const trace = traceReturn(solved(tried), failure);
      if ('why' in trace) throw new Error(trace.why);
      return trace;
    },
    dispose() {
      rounds.returns++;
      rounds.trace++;
      last = undefined;
    },
  };
}
