/** The words of the page that the editor hands over. */
import { afterEach, describe, expect, test } from 'vitest';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { loadPage } from '../../support/fakePage.ts';
import { openView, serveViews, turns } from '../../support/viewInEditor.ts';
import { env, l10n } from '../../support/vscode.ts';

serveViews();

afterEach(() => {
  l10n.bundle = undefined;
  env.language = 'en';
});

describe('the words of a page', () => {
  test('come before all else in the language of the editor, and again to a page that comes anew', async () => {
    l10n.bundle = { Close: 'Fermer', Findings: { message: 'Constats' }, 'Show all {count} {name}': 'Montrer les {count} {name}' };
    env.language = 'fr';
    const { panel, page: first } = await openView(FOUR_BARREL);
    const again = loadPage(panel);
    await turns();
    for (const page of [first, again]) {
      expect(page.told[0]).toEqual({
        type: 'words',
        language: 'fr',
        texts: { Close: 'Fermer', 'Show all {count} {name}': 'Montrer les {count} {name}' },
      });
      expect(page.types()).toContain('show');
    }
  });

  test('are the page’s own where the editor shows the extension in English', async () => {
    const { page } = await openView(FOUR_BARREL);
    expect(page.types()).toContain('show');
    expect(page.types()).not.toContain('words');
  });
});
