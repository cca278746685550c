/** Words of the studies, with what is put together from them. */
import { STUDIES } from './english/studies.ts';
import { spoken, withPhrases } from './say.ts';

const TEXTS = spoken(STUDIES);

export const STUDY_WORDS = withPhrases(TEXTS, {
  /** @param left s; undefined where it is not known */
  working: (note: string, share: number, left: number | undefined) => {
    const percent = Math.floor(100 * share);
    return left === undefined ? TEXTS.soFar(note, percent) : TEXTS.soFarAndLeft(note, percent, Math.max(1, Math.round(left)));
  },
  diff: (title: string) => TEXTS.linesChanged(title.toLowerCase()),
});
