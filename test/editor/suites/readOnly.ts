/** Files that cannot be written: everything is told of them, what would change them says why not, and nothing of them is lost. */
import { commands, ConfigurationTarget, ViewColumn, workspace, type Uri } from 'vscode';
import type { Suite } from '../suite.ts';
import { openFile, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { expectSeen, seen } from '../support/page.ts';
import { makePlace } from '../support/places.ts';
import { untilProblem } from '../support/problems.ts';
import { fixesAt, hoverAt, positionOf } from '../support/requests.ts';
import { EXAMPLE } from '../support/solved.ts';
import { FOUR_BARREL, READY, textOf, untilViews } from '../support/views.ts';

const NAME = 'held.throttle.yaml';
const NOT_WRITTEN = `Not written: ${NAME} is read-only.`;

export const readOnly: Suite = {
  about: 'read-only files',
  tests: {
    'have their problems and hovers, and no fix that could be carried out': async () => {
      const place = makePlace('shut', { files: { [NAME]: EXAMPLE.replace('travel:', 'travle:') }, readonly: true });
      const { document } = await openFile(place.at(NAME));
      const { range } = await untilProblem(document.uri, 'unknown-key');
      expectEqual(document.getText(range), 'travle', 'where the problem stands');
      expectTrue((await hoverAt(document, positionOf(document, 'reach, angle'))).includes('40 mm'), 'hover says what reach is');
      // What is offered greyed, with the reason, is not among them.
      expectEqual(await fixesAt(document, range.start), [], 'fixes that can be carried out');
      place.ending.dispose();
    },

    'in a place that is so are drawn, and a drag says why it is not written': async () => {
      const place = makePlace('sealed', { files: { [NAME]: await textOf(FOUR_BARREL) }, readonly: true });
      await dragged(place.at(NAME));
      place.ending.dispose();
    },

    'by themselves are drawn, and a drag says why it is not written': async () => {
      const place = makePlace('kept', { files: { [NAME]: await textOf(FOUR_BARREL) }, readonly: [NAME] });
      await dragged(place.at(NAME));
      place.ending.dispose();
    },

    'that the person holds so get no change that could not be saved': async () => {
      const settings = workspace.getConfiguration('files');
      await settings.update('readonlyInclude', { [`**/${NAME}`]: true }, ConfigurationTarget.Global);
      try {
        await dragged(await writeFile(NAME, await textOf(FOUR_BARREL)));
      } finally {
        await settings.update('readonlyInclude', undefined, ConfigurationTarget.Global);
      }
    },
  },
};

/** Opens it with its view, drags a pivot there, and finds the text as it was. */
async function dragged(uri: Uri): Promise<void> {
  const { document } = await openFile(uri, { viewColumn: ViewColumn.One });
  const before = document.getText();
  await commands.executeCommand('pedalToPlate.openView');
  await untilViews(1);
  await expectSeen('views', [READY]);
  await seen('dragPivot');
  await expectSeen('views', [NOT_WRITTEN]);
  expectEqual([document.getText() === before, document.isDirty], [true, false], 'whether the text is as it was, and whether it is unsaved');
}
