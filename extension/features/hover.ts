/** Hover: the value behind what is written, what a part does over the travel, and what a key means. */
import { Hover, languages, MarkdownString } from 'vscode';
import type { Disposable } from 'vscode';
import { hoverAt } from '../../src/language/hover.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';
import { asChosen } from './severities.ts';

export function provideHover({ names, solved }: DocumentAnswers): Disposable {
  return languages.registerHoverProvider(THROTTLE_FILES, {
    async provideHover(document, position, token): Promise<Hover | undefined> {
      const answers = await solved(document, token);
      const hover = answers && hoverAt(asChosen(document, answers), document.offsetAt(position), names(document));
      return hover && new Hover(new MarkdownString(hover.markdown), rangeOf(document, hover.span));
    },
  });
}
