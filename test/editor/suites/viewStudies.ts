/** Studies of the view: that they run beside the editor, are cancelled, found, shown and written. */
import { commands, ViewColumn } from 'vscode';
import type { Suite } from '../suite.ts';
import { doInWindow } from '../support/acts.ts';
import { inWorkspace, openFile, replaceText, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { expectSeen, seen, untilSeen } from '../support/page.ts';
import { untilNoProblem, untilProblem } from '../support/problems.ts';
import { fixesAt, lensesOf, positionOf } from '../support/requests.ts';
import { WITH_READINGS } from '../support/solved.ts';
import { openView, READY, undoOnce, untilText } from '../support/views.ts';
import { untilLogged } from './log.ts';

const TUNE = 'tune-a-bellcrank.throttle.yaml';
const RUNNING = 'Cancel: Dimensions for the curve';

export const viewStudies: Suite = {
  about: 'view, studies',
  tests: {
    'one that goes on is cancelled by its button': async () => {
      await openView(TUNE);
      await expectSeen('views', [READY]);
      const running = commands.executeCommand('pedalToPlate.findDimensions');
      await doInWindow(['press', RUNNING]);
      await expectSeen('views', ['Cancelled; nothing was found out.']);
      await running;
    },

    'the editor answers while dimensions are looked for': async () => {
      const { document } = await openView(TUNE);
      await expectSeen('views', [READY]);
      let isOver = false;
      const running = Promise.resolve(commands.executeCommand('pedalToPlate.findDimensions')).then(() => (isOver = true));
      const began = Date.now();
      await replaceText(document, 'open: 82 deg', 'open: 60 deg');
      await untilProblem(document.uri, 'opening-early');
      const actions = await fixesAt(document, positionOf(document, '38 mm'), 'refactor', 0);
      expectTrue(!isOver, 'all of this came before the study was over');
      console.log(`# answered within ${Date.now() - began} ms`);
      expectTrue(
        actions.some(({ title }) => title === 'Solve for crank_reach…'),
        'the figure under the cursor can be solved for',
      );
      await running;
      await expectSeen('views', ['Of the text before the last change, not as it stands. Run again']);
    },

    'they run in a thread of its own in every host, and the log says so': async () => {
      await openView(TUNE);
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.fitMeasurements');
      await untilToldInLog('Study fit, in a thread of its own: found after ');
    },

    'dimensions are found, and an answer is written as one undo step that keeps every comment': async () => {
      const { document } = await openView(TUNE);
      await expectSeen('views', [READY]);
      const before = document.getText();
      const lenses = await lensesOf(document);
      const titles = lenses.map(({ command }) => command?.title);
      for (const title of ['Find dimensions', 'What tolerances do', 'Fit to the measurements']) {
        expectTrue(titles.includes(title), `there is a lens “${title}”`);
      }
      await commands.executeCommand('pedalToPlate.findDimensions');
      await untilSeen('viewButtons', 'an answer to write', (buttons) => buttons.includes('Write this: Answer 1'));
      await doInWindow(['press', 'Write this: Answer 1']);
      await untilText(document, (text) => text !== before);
      const after = document.getText();
      const figures = /(?:(?:crank|shaft)_reach|spread): [\d.]+ mm/g;
      expectEqual(after.replaceAll(figures, ''), before.replaceAll(figures, ''), 'all but the free values');
      await expectSeen('views', ['Written: one undo takes it back.']);
      await undoOnce(document, before);
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
    },

    'what tolerances do stands in the view, with bands in the charts': async () => {
      await openView(TUNE);
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.showTolerances');
      await expectSeen('views', ['What varies, and how far', BANDS]);
      expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
    },

    'a CSV file of readings that is missing is a problem at its name, until it is there': async () => {
      const { document } = await openFile(await writeFile('measured.throttle.yaml', WITH_READINGS), { viewColumn: ViewColumn.One });
      const problem = await untilProblem(document.uri, 'unknown-name');
      expectEqual(document.getText(problem.range), 'bench.csv', 'where the problem stands');
      await writeFile('bench.csv', 'pedal.travel [%],pedal.effort [N]\n0,1\n50,2\n');
      await untilNoProblem(document.uri, 'unknown-name');
      expectTrue(inWorkspace('bench.csv').path.endsWith('/bench.csv'), 'it stands beside the file');
    },

    // Last: once a thread was refused, none is asked for again.
    'where the host refuses a thread they run in the host, which answers an edit with problems meanwhile': async () => {
      const { document } = await openView(TUNE);
      await expectSeen('views', [READY]);
      // A thread that is kept from before ends with the study that is cancelled in it: one that takes long, for it must not be over before.
      await replaceText(document, 'open: 82 deg', 'open: 60 deg');
      const cancelled = commands.executeCommand('pedalToPlate.findDimensions');
      await doInWindow(['press', RUNNING]);
      await cancelled;
      await replaceText(document, 'open: 60 deg', 'open: 82 deg');
      const before = global.Worker;
      global.Worker = function refused(): never {
        throw new Error('refused, as by a policy');
      };
      try {
        let isOver = false;
        const running = Promise.resolve(commands.executeCommand('pedalToPlate.findDimensions')).then(() => (isOver = true));
        const began = Date.now();
        await replaceText(document, 'open: 82 deg', 'open: 100 deg');
        await untilProblem(document.uri, 'opening-missed');
        expectTrue(!isOver, 'the problem came before the study was over');
        console.log(`# answered within ${Date.now() - began} ms`);
        await running;
        const lines = await untilToldInLog('Study tune, in the extension host: found after ');
        expectTrue(lines.includes('run in the host instead: Error: refused, as by a policy'), `the log says why:\n${lines}`);
      } finally {
        global.Worker = before;
      }
    },
  },
};

const BANDS =
  'Shaded beside a curve: 5 % of 1000 random builds within the tolerances lie below, as many above. Effort counts the friction that the file gives.';

/** What a host has for threads; a web host has it by itself. */
const global = globalThis as { Worker?: unknown };

/** Shows the log until a line begins so after its time. @returns all of it */
async function untilToldInLog(begins: string): Promise<string> {
  await commands.executeCommand('pedalToPlate.showLog');
  const lines = await untilLogged(begins);
  console.log(`# ${lines.split('\n').find((line) => line.includes(begins)) ?? ''}`);
  await commands.executeCommand('workbench.action.closePanel');
  return lines;
}
