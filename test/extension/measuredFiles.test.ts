/** CSV files of readings beside a throttle file: read through the editor, looked after, and a problem where they are missing or wrong. */
import { describe, expect, test, vi } from 'vitest';
import { Disposable } from 'vscode';
import { publishProblems } from '../../extension/features/liveProblems.ts';
import { keepMeasuredFiles } from '../../extension/measuredFiles.ts';
import { nextTurn } from '../../extension/turns.ts';
import { LARGEST_CSV } from '../../src/studies/fit/csvReadings.ts';
import { openThrottle, serveEach, textIn } from '../support/editorRequests.ts';
import { disk, diskAccess, emptyDisk, shownProblems, writeFile } from '../support/vscode.ts';
import { failuresGoTo } from '../../extension/logFailure.ts';

serveEach((answers) => {
  const measured = keepMeasuredFiles(answers);
  return Disposable.from(measured, publishProblems(answers, measured), new Disposable(emptyDisk));
});

const FILE = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 220 mm, angle: 270 deg}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 20 deg, pad: pad}
measured:
  runs:
    bench: {file: bench.csv}
`;
const URI = 'file:///folder/a.throttle.yaml';
const CSV = 'file:///folder/bench.csv';
const GOOD = 'pedal.travel [%],pedal.opening [deg]\n0,0\n50,10\n';

const messages = (uri = URI): readonly string[] => (shownProblems.get(uri) ?? []).map(({ message }) => message);
const ofCsv = (uri = URI): readonly string[] => messages(uri).filter((message) => message.includes('bench.csv'));

/** Lets reading and what comes of it have their turns. */
async function turns(): Promise<void> {
  for (let turn = 0; turn < 10; turn++) await nextTurn();
}

describe('a file of readings', () => {
  test('that is not there is a problem at its name, until it comes, and again once it goes', async () => {
    const document = openThrottle(FILE, URI);
    await turns();
    expect(ofCsv()).toEqual([
      'There is no file `bench.csv` beside this one. Put it into the same folder, or write the name of one that is there.',
    ]);
    const [problem] = shownProblems.get(URI)!.filter(({ message }) => message.includes('bench.csv'));
    expect(textIn(document, problem!.range as never)).toBe('bench.csv');
    writeFile(CSV, GOOD);
    await turns();
    expect(ofCsv()).toEqual([]);
    writeFile(CSV, undefined);
    await turns();
    expect(ofCsv()).toHaveLength(1);
  });

  test('that cannot be understood is a problem with the place in it, and read anew when it changes', async () => {
    writeFile(CSV, GOOD.replace('50,10', '50,ten'));
    openThrottle(FILE, URI);
    await turns();
    expect(ofCsv()).toEqual([expect.stringMatching(/^`bench.csv`, line 3, column 4: /)]);
    writeFile(CSV, GOOD);
    await turns();
    expect(ofCsv()).toEqual([]);
  });

  test('that changes while it is read is read anew', async () => {
    writeFile(CSV, GOOD.replace('50,10', '50,ten'));
    disk.milliseconds = 100;
    openThrottle(FILE, URI);
    await turns();
    expect(diskAccess).toContain(`read ${CSV}`);
    // What is being read is what stood there before.
    writeFile(CSV, GOOD);
    await vi.waitFor(() => expect(diskAccess.filter((each) => each === `read ${CSV}`).length).toBeGreaterThan(1));
    await new Promise((resolve) => setTimeout(resolve, 3 * disk.milliseconds));
    expect(ofCsv()).toEqual([]);
    expect(messages()).not.toEqual([]);
  });

  test('that cannot be read for another reason is not said to be missing, and what the editor says of it is in the log', async () => {
    const logged: unknown[] = [];
    const logging = failuresGoTo({ failed: (error, during) => void logged.push([during, error]) });
    writeFile(CSV, GOOD);
    disk.failing.set(CSV, 'Unavailable');
    openThrottle(FILE, URI);
    await turns();
    expect(ofCsv()).toEqual(['`bench.csv` could not be read; why is in the log: “Show Log” of Pedal to Plate']);
    expect(logged).toEqual([[`Reading ${CSV}`, expect.objectContaining({ code: 'Unavailable' })]]);
    logging.dispose();
  });

  test('that is too large is not read', async () => {
    writeFile(CSV, 'x'.repeat(4 * LARGEST_CSV + 1));
    openThrottle(FILE, URI);
    await turns();
    expect(ofCsv()).toEqual([expect.stringContaining('has more than 16 million bytes')]);
    expect(diskAccess).not.toContain(`read ${CSV}`);
  });

  test('of a text that was never saved says that it stands beside nothing', async () => {
    openThrottle(FILE, 'untitled:Untitled-1');
    await turns();
    expect(ofCsv('untitled:Untitled-1')).toEqual([expect.stringContaining('save this one first')]);
  });

  test('is not asked for where no run names one', async () => {
    openThrottle(FILE.replace(/measured:[\s\S]*$/, ''), URI);
    await turns();
    expect(diskAccess.filter((each) => each.startsWith('read'))).toEqual([]);
    expect(disk.milliseconds).toBe(0);
  });
});
