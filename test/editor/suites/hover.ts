/** What stands over a word when the pointer rests on it. */
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openFile, openUntitled, writeFile } from '../support/editor.ts';
import { expectTrue } from '../support/expect.ts';
import { hoverAt, positionOf } from '../support/requests.ts';
import { EXAMPLE } from '../support/solved.ts';

/** Where the pointer is, and what must be said there. */
const HOVERS = [
  ['reach: 40', ['40 mm']],
  ['40 mm ± 0.1 mm', ['±0.1 mm', '39.9 mm', '40.1 mm']],
  ['2 * reach', ['80 mm', '2 * 40 mm']],
  // A parallelogram: the shaft turns as the pedal does.
  ['shaft: #', ['60°']],
  ['link:', ['parallelogram', '60° at 0 %']],
  ['travel:', ['pedal']],
] as const;

export const hover: Suite = {
  about: 'hover',
  tests: {
    'says what a value comes to, what a part does and what a key means': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      for (const [at, wanted] of HOVERS) {
        const said = await hoverAt(document, positionOf(document, at, 1));
        for (const words of wanted) expectTrue(said.includes(words), `over ${at} there is no “${words}” in\n${said}`);
      }
    },

    'stands at the right word in a file with CRLF line ends': async () => {
      const { document } = await openFile(await writeFile('hover.throttle.yaml', EXAMPLE.replaceAll('\n', '\r\n')));
      const said = await hoverAt(document, positionOf(document, '2 * reach', 1));
      expectTrue(said.includes('80 mm'), said);
    },

    'says nothing over a comment': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const said = await hoverAt(document, positionOf(document, '# measured', 3));
      expectTrue(said === '', said);
    },
  },
};
