/**
 * What of the view is there before any throttle file is: its commands, which a person may give at once, and the panel that the editor brings
 * back when it starts. Each waits until the rest is loaded.
 */
import { commands, Disposable, window } from 'vscode';
import { SETTINGS } from './language.ts';
import { VIEW_COMMANDS, VIEW_TYPE } from './view/names.ts';
import type { Views } from './view/views.ts';

/** @param views loads them, where that has not happened; undefined where the extension ends */
export function offerView(views: () => Promise<Views | undefined>): Disposable {
  return Disposable.from(
    ...VIEW_COMMANDS.map((name) =>
      commands.registerCommand(`${SETTINGS}.${name}`, async (argument: unknown) => (await views())?.run(name, argument)),
    ),
    window.registerWebviewPanelSerializer(VIEW_TYPE, {
      async deserializeWebviewPanel(panel, state: unknown) {
        (await views())?.revive(panel, state);
      },
    }),
  );
}
