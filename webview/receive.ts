/** What the editor has said, written into the page's state. What is of an older text than what is known is left aside. */
import { batch } from '@preact/signals';
import type { Source, ToView } from '../src/protocol/messages.ts';
import { isReportLate, taken, withFollowed, type ShownInParts } from './page/follows.ts';
import { tellWorking } from './page/returns.ts';
import { tellStudy } from './page/studies.ts';
import { askAnew, isSameTrial, trialBroken, trialRefused, trialShown } from './send.ts';
import {
  announcement,
  compared,
  complaint,
  dialAtCursor,
  gone,
  isStepping,
  missing,
  newest,
  selected,
  shown,
  shownTrial,
  trial,
  written,
} from './state.ts';
import { WORDS } from './words.ts';
import { takeTranslations } from './words/say.ts';

export function receive(message: ToView): void {
  batch(() => {
    switch (message.type) {
      case 'words':
        document.documentElement.lang = message.language;
        return takeTranslations(message.texts);
      case 'show':
        return isCurrent(message.source) ? show(message) : undefined;
      case 'follows':
        return follow(message);
      case 'broken':
        if (!isCurrent(message.source)) return;
        gone.value = undefined;
        missing.value = message.missing;
        announcement.value = WORDS.brokenAnnounced(message.missing.length);
        return trialBroken();
      case 'refused':
        return trialRefused(message.trial, message.reason);
      case 'select':
        if (!isCurrent(message.source)) return;
        selected.value = message.part;
        dialAtCursor.value = message.dial;
        if (message.step) isStepping.value = true;
        return;
      case 'compare':
        if (isCurrent(message.source)) compared.value = message;
        return;
      case 'compare-ended':
        compared.value = undefined;
        if (message.reason !== undefined) complaint.value = message.reason;
        return;
      case 'working':
        return tellWorking(message);
      case 'study':
        return tellStudy(message);
      case 'gone':
        newest.value = undefined;
        gone.value = message.reason;
        trial.value = [];
        return trialBroken();
    }
  });
}

function show(message: ToView & { type: 'show' }): void {
  const { source, trial: of } = message;
  const now = taken(message, shown.value);
  if (now === undefined) return askAnew();
  isVerdictDue ||= missing.value !== undefined;
  gone.value = undefined;
  missing.value = undefined;
  announceVerdict(now);
  shown.value = now;
  if (of.length === 0) written.value = now;
  trialShown(of, source);
}

/** Whether the verdict is to be said though it is the one said before: in between the text had none. */
let isVerdictDue = false;

/** @param now what is about to be shown */
function announceVerdict(now: ShownInParts): void {
  if (isReportLate(now)) return;
  if (isVerdictDue || now.report.verdict !== shown.value?.report.verdict) announcement.value = now.report.verdict;
  isVerdictDue = false;
}

/** Of the picture that is shown, or of the written text behind it; of any other it comes too late, or too early to be of use. */
function follow(message: ToView & { type: 'follows' }): void {
  const [now, before] = [shown.value, written.value];
  const isOfText = (picture: typeof now): picture is NonNullable<typeof now> =>
    picture?.source.uri === message.source.uri && picture.source.version === message.source.version;
  if (isOfText(now) && isSameTrial(message.trial, shownTrial.value)) {
    const whole = withFollowed(now, message);
    announceVerdict(whole);
    shown.value = whole;
  }
  if (!isOfText(before) || message.trial.length > 0) return;
  written.value = before === now ? shown.value : withFollowed(before, message);
}

/** Not older than what has come before of the same file. */
function isCurrent(source: Source): boolean {
  const known = newest.value;
  const isNewer = source.uri !== known?.uri || source.version >= known.version;
  if (isNewer) newest.value = source;
  return isNewer;
}
