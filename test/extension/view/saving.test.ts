import { describe, expect, test } from 'vitest';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { openView, serveViews, turns } from '../../support/viewInEditor.ts';
import { changeDocument, chosenFile, dialogs, disk, textOnDisk, Uri } from '../../support/vscode.ts';
import { failuresGoTo } from '../../../extension/logFailure.ts';
import { saveExport } from '../../../extension/view/saveExport.ts';
import { solve } from '../../../src/solve.ts';

serveViews();

/** What came of a request, in words where it was refused. */
async function outcome(asked: Promise<unknown>): Promise<unknown> {
  const settled = asked.catch((error: unknown) => (error as Error).message);
  await turns();
  return settled;
}

describe('an export', () => {
  test('is saved where the person chooses, beside the file unless they say otherwise', async () => {
    const { page } = await openView(FOUR_BARREL);
    const asks = { name: 'a ../drawing.svg', kind: 'svg', content: '<svg>ä</svg>' } as const;
    expect(await outcome(page.request('save', asks, undefined))).toEqual({ saved: false });
    expect(dialogs[0]?.defaultUri?.toString()).toBe('file:///folder/a .._drawing.svg');
    chosenFile.uri = Uri.parse('file:///folder/out.svg');
    expect(await outcome(page.request('save', asks, undefined))).toEqual({ saved: true });
    expect(textOnDisk('file:///folder/out.svg')).toBe('<svg>ä</svg>');
    const bytes = new Uint8Array([137, 80, 78, 71]);
    chosenFile.uri = Uri.parse('file:///folder/out.png');
    expect(await outcome(page.request('save', { name: 'out.png', kind: 'png', content: bytes }, undefined))).toEqual({ saved: true });
    expect(textOnDisk('file:///folder/out.png')).toBe(new TextDecoder().decode(bytes));
  });

  test('that cannot be written where the person chooses says so, and what the editor says of it is in the log', async () => {
    const logged: unknown[] = [];
    const logging = failuresGoTo({ failed: (error, during) => void logged.push([during, error]) });
    const { page } = await openView(FOUR_BARREL);
    chosenFile.uri = Uri.parse('file:///folder/kept.csv');
    disk.readonly.add('file:///folder/kept.csv');
    expect(await outcome(page.request('save', { name: 'x.csv', kind: 'csv', content: '' }, undefined))).toBe(
      'kept.csv could not be written; why is in the log: “Show Log” of Pedal to Plate.',
    );
    expect(logged).toEqual([['Writing file:///folder/kept.csv', expect.objectContaining({ code: 'NoPermissions' })]]);
    logging.dispose();
  });

  test('of an older version that git has is offered beside the file itself', async () => {
    const old = Uri.parse('git:///folder/a.throttle.yaml?%7B%22ref%22%3A%22HEAD%22%7D');
    await saveExport(old as never, { name: 'x.csv', kind: 'csv', content: '' });
    expect(dialogs[0]?.defaultUri?.toString()).toBe('file:///folder/x.csv');
  });

  test('of a file that was never saved is offered in the open folder', async () => {
    const { page } = await openView(FOUR_BARREL, 'untitled:Untitled-1');
    await outcome(page.request('save', { name: 'x.csv', kind: 'csv', content: '' }, undefined));
    expect(dialogs[0]?.defaultUri?.toString()).toBe('file:///folder/x.csv');
  });
});

describe('the table', () => {
  test('has all columns of the text as shown, with the figures that are tried', async () => {
    const { page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const csvOf = async (trial: Parameters<typeof page.try>[0]): Promise<readonly string[]> => {
      const answer = (await outcome(page.request('table', { source, trial }, 1000))) as { readonly csv: string };
      return answer.csv.split('\r\n');
    };
    const lines = await csvOf([]);
    expect(lines).toHaveLength(103);
    expect(lines[0]?.split(',')).toHaveLength(solve(FOUR_BARREL).columns.length);
    const tried = await csvOf([{ kind: 'value', path: 'let.crank_reach', value: 30 }]);
    expect(tried[0]).toBe(lines[0]);
    expect(tried[52]).not.toBe(lines[52]);
  });

  test('is refused of an older text, and of one that is not solved', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    changeDocument(document, 'format: 1\n');
    expect(await outcome(page.request('table', { source, trial: [] }, 1000))).toBe('The text has changed meanwhile: try again.');
    const now = { ...source, version: 2 };
    expect(await outcome(page.request('table', { source: now, trial: [] }, 1000))).toMatch(/there is no table/);
  });
});
