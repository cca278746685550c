/** The view when the window is loaded anew: in two halves, the first with the old window and the second with the new one. */
import { commands, ViewColumn } from 'vscode';
import type { Suite } from '../suite.ts';
import { doInWindow } from '../support/acts.ts';
import { expectEqual } from '../support/expect.ts';
import { expectSeen, seen } from '../support/page.ts';
import { FOUR_BARREL, openView, READY, untilViews, viewTabs } from '../support/views.ts';

/** The pedal at 40 %, one chart as its table, names in the drawing, and the card of the first part. */
const TABLE = 'Opening and open area as a table';
const CHOICES = ['pedal 40', TABLE, 'Names'];
const CARD = 'pedal, 1 of 9';

export const beforeReload: Suite = {
  about: 'view, before the window is loaded anew',
  leavesOpen: true,
  tests: {
    'hands over what is chosen in it to be kept': async () => {
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.nextPart');
      await expectSeen('views', [CARD]);
      await doInWindow(['setPedal', '40'], ['press', TABLE], ['press', 'Names']);
      await expectSeen('viewChoices', CHOICES);
      await doInWindow(['untilStored', '"travel":0.4,', '"tables":["progression"]', '"stepping":true', '"names":true']);
    },
  },
};

export const afterReload: Suite = {
  about: 'view, once the window was loaded anew',
  leavesOpen: true,
  tests: {
    'is there again beside its text, and once, with what was chosen in it': async () => {
      await untilViews(1);
      expectEqual(viewTabs(), [{ label: `Mechanism: ${FOUR_BARREL}`, column: ViewColumn.Two }], 'tabs of views');
      await expectSeen('views', [READY, CARD]);
      await expectSeen('viewChoices', CHOICES);
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
      await commands.executeCommand('pedalToPlate.openView');
      expectEqual(viewTabs().length, 1, 'views after the command was given');
    },
  },
};
