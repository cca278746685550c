/** The view in every kind of theme, changed while it stands open. */
import { ColorThemeKind, ConfigurationTarget, window, workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { expectEqual } from '../support/expect.ts';
import { expectSeen, seen, untilSeen } from '../support/page.ts';
import { FOUR_BARREL, openView, READY } from '../support/views.ts';
import { until } from '../support/wait.ts';

interface Theme {
  /** As the setting has it, the same in the oldest editor and the newest. */
  readonly id: string;
  readonly kind: ColorThemeKind;
  /** What the page is told. */
  readonly named: string;
  /** WCAG 2.2, success criteria 1.4.3 and, where a person asks for more contrast, 1.4.6. */
  readonly least: number;
}

const THEMES: readonly Theme[] = [
  { id: 'Default Light Modern', kind: ColorThemeKind.Light, named: 'vscode-light', least: 4.5 },
  { id: 'Default High Contrast', kind: ColorThemeKind.HighContrast, named: 'vscode-high-contrast', least: 7 },
  { id: 'Default High Contrast Light', kind: ColorThemeKind.HighContrastLight, named: 'vscode-high-contrast-light', least: 7 },
  { id: 'Default Dark Modern', kind: ColorThemeKind.Dark, named: 'vscode-dark', least: 4.5 },
];

export const viewThemes: Suite = {
  about: 'view, themes',
  tests: Object.fromEntries(
    THEMES.map((theme) => [
      `follows ${theme.id}, in which every text can be read`,
      async () => {
        await openView(FOUR_BARREL);
        await expectSeen('views', [READY]);
        await withTheme(theme, async () => {
          await untilSeen(
            'viewContrast',
            `${theme.named} with a contrast of ${theme.least}`,
            (lines) => lines.includes(`kind ${theme.named}`) && figure('texts ', lines) > 100 && figure('contrast ', lines) >= theme.least,
          );
          expectEqual(await seen('viewTroubles'), [], 'what went wrong in the page');
        });
      },
    ]),
  ),
};

/** The number that follows a word at the start of a line. */
function figure(word: string, lines: readonly string[]): number {
  return Number(lines.find((line) => line.startsWith(word))?.slice(word.length));
}

/** The person's theme is what it was afterwards. */
async function withTheme({ id, kind }: Theme, work: () => Promise<void>): Promise<void> {
  const setTheme = (value: string | undefined): Thenable<void> =>
    workspace.getConfiguration().update('workbench.colorTheme', value, ConfigurationTarget.Global);
  await setTheme(id);
  try {
    await until(
      `a theme of kind ${ColorThemeKind[kind]}`,
      window.onDidChangeActiveColorTheme,
      () => (window.activeColorTheme.kind === kind ? true : undefined),
      () => `it is of kind ${ColorThemeKind[window.activeColorTheme.kind]}`,
    );
    await work();
  } finally {
    await setTheme(undefined);
  }
}
