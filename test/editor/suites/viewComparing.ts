/** Comparing in the view: with git where the editor has it, what is said where it has not, and with a file that is picked. */
import { commands } from 'vscode';
import type { Suite } from '../suite.ts';
import { chooseFile, doInWindow, exactly } from '../support/acts.ts';
import { folderPath, inWorkspace, replaceText, writeFile } from '../support/editor.ts';
import { expectTrue } from '../support/expect.ts';
import { commit, editorsGit, makeRepository, type Repository, switchTo } from '../support/git.ts';
import { expectSeen } from '../support/page.ts';
import { FOUR_BARREL, openView, READY, untilText } from '../support/views.ts';

const REV_A = 'open: 82 deg';
const REV_B = 'open: 60 deg';
/** What the view says of the stop between two texts. */
const stopWas = (was: number, is: number): string => `levers.shaft.stops.open was ${was} deg, is ${is} deg`;
const EQUAL = 'no difference';

export const viewComparing: Suite = {
  about: 'view, comparing',
  tests: {
    'with git says so of a file that lies in no repository, by command and by button': async () => {
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const why = `${FOUR_BARREL} is in no git repository that the editor knows.`;
      await commands.executeCommand('pedalToPlate.compareWithHead');
      await expectSeen('views', [why]);
      await doInWindow(['press', 'With a revision…']);
      await expectSeen('views', [why]);
    },

    'with a file that is picked shows what differs, live': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const other = await writeFile('rev-b.throttle.yaml', document.getText().replace(REV_A, REV_B));
      await doInWindow(['press', 'With a file…'], chooseFile(exactly(folderPath()), other));
      await expectSeen('views', ['Compared with rev-b.throttle.yaml', stopWas(60, 82)]);
      await replaceText(document, REV_A, REV_B);
      await expectSeen('views', [EQUAL]);
      await doInWindow(['press', 'Stop comparing']);
      await expectSeen('views', ['Compare']);
    },
  },
};

/** In an editor that has git. They make a repository of the open folder, step by step. */
export const viewComparingWithGit: Suite = {
  about: 'view, comparing with git',
  tests: {
    'says so while nothing has been committed, and of a file that is not in the last commit': async () => {
      repository = await makeRepository(await git());
      await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.compareWithHead');
      await expectSeen('views', ['Nothing has been committed yet.']);
      await commands.executeCommand('pedalToPlate.compareWithRevision');
      await expectSeen('views', [`No commit has ${FOUR_BARREL}.`]);
      await commit(repository, inWorkspace('two-banks.throttle.yaml'), 'Another file');
      await commands.executeCommand('pedalToPlate.compareWithHead');
      await expectSeen('views', [`The last commit has no ${FOUR_BARREL}.`]);
    },

    'with the last commit shows what changed, live, and goes on with the next commit': async () => {
      await commit(known(), inWorkspace(FOUR_BARREL), 'Rev A');
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await commands.executeCommand('pedalToPlate.compareWithHead');
      await expectSeen('views', ['Compared with HEAD', EQUAL]);
      await replaceText(document, REV_A, REV_B);
      await expectSeen('views', [stopWas(82, 60)]);
      await known().createBranch('rev-b', true);
      await document.save();
      await commit(known(), document.uri, 'Rev B');
      await expectSeen('views', [EQUAL]);
      await commands.executeCommand('pedalToPlate.stopComparing');
      await expectSeen('views', ['Compare']);
    },

    'goes on when another branch is checked out': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      await replaceText(document, 'crank_reach: 38 mm', 'crank_reach: 37 mm');
      await document.save();
      await commands.executeCommand('pedalToPlate.compareWithHead');
      await expectSeen('views', ['Compared with HEAD', 'let.crank_reach was 38 mm ± 0.1 mm, is 37 mm ± 0.1 mm']);
      await replaceText(document, 'crank_reach: 37 mm', 'crank_reach: 38 mm');
      await document.save();
      await expectSeen('views', [EQUAL]);
      await known().createBranch('rev-c', true);
      await replaceText(document, REV_B, 'open: 70 deg');
      await expectSeen('views', [stopWas(60, 70)]);
      await document.save();
      await commit(known(), document.uri, 'Rev C');
      await expectSeen('views', [EQUAL]);
      await switchTo(known(), 'rev-b');
      await untilText(document, (text) => text.includes(REV_B));
      // The text is another, and so is the last commit: between them there is no difference again.
      await expectSeen('views', ['Compared with HEAD', EQUAL]);
      await replaceText(document, REV_B, 'open: 70 deg');
      await expectSeen('views', [stopWas(60, 70)]);
    },

    'with a revision that is picked stays with it, whatever is checked out': async () => {
      const { document } = await openView(FOUR_BARREL);
      await expectSeen('views', [READY]);
      const comparing = commands.executeCommand('pedalToPlate.compareWithRevision');
      const [rows = ''] = await doInWindow(['pickRow', 'Rev A']);
      await comparing;
      expectTrue(/^rows Rev B.*\| Rev A/.test(rows), `the newest commits of the file come first: ${rows}`);
      expectTrue(!rows.includes('Another file'), `no commit without the file is offered: ${rows}`);
      await expectSeen('views', [stopWas(82, 60)]);
      await switchTo(known(), 'rev-c');
      await untilText(document, (text) => text.includes('open: 70 deg'));
      await expectSeen('views', [stopWas(82, 70)]);
    },
  },
};

let repository: Repository | undefined;

function known(): Repository {
  if (repository === undefined) throw new Error('there is no repository, because an earlier test failed');
  return repository;
}

async function git(): Promise<NonNullable<Awaited<ReturnType<typeof editorsGit>>>> {
  const found = await editorsGit();
  if (found === undefined) throw new Error('the editor has no git');
  return found;
}
