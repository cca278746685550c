/** When the extension wakes up, and for what. */
import { extensions } from 'vscode';
import type { Suite } from '../suite.ts';
import { inWorkspace, LANGUAGE_ID, openFile, ourExtension, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { ours, untilProblem } from '../support/problems.ts';

export const activation: Suite = {
  about: 'activation',
  tests: {
    'no other YAML file wakes the extension, whatever stands in it': async () => {
      const { document } = await openFile(await writeFile('other.yaml', 'format: 1\nnonsense: 2\n'));
      await allAreAwake();
      expectEqual(document.languageId, 'yaml', 'the language of other.yaml');
      expectTrue(!ourExtension().isActive, 'the extension woke up for other.yaml');
      expectEqual(ours(document.uri), [], 'problems of other.yaml');
    },

    'the manifest names no event that a workspace without throttle files could bring': () => {
      const general = activationEvents().filter(
        (event) => !/^on(?:Language:throttle-linkage|Command:|WebviewPanel:|Walkthrough:|TaskType:)/.test(event),
      );
      expectEqual(general, [], 'activation events that others could bring');
      return Promise.resolve();
    },

    'a throttle file is of our language and wakes it': async () => {
      const { document } = await openFile(inWorkspace('binding-broken.throttle.yaml'));
      expectEqual(document.languageId, LANGUAGE_ID, 'the language of a throttle file');
      await untilProblem(document.uri, 'toggle-opening');
      expectTrue(ourExtension().isActive, 'there are problems, but the extension is not active');
    },

    'once awake it still leaves other YAML files alone': async () => {
      const { document } = await openFile(await writeFile('other.yaml', 'format: 1\nnonsense: 2\n'));
      const broken = await openFile(await writeFile('broken.throttle.yaml', 'format: 1\nnonsense: 2\n'));
      // Opened after the other one, so read after it.
      await untilProblem(broken.document.uri, 'unknown-key');
      expectEqual(ours(document.uri), [], 'problems of other.yaml');
    },
  },
};

/**
 * Comes back after every extension that an editor opened before has woken: one that takes longer than ours is asked for last, and
 * awaited.
 */
async function allAreAwake(): Promise<void> {
  const slow = extensions.getExtension('vscode.typescript-language-features');
  if (slow === undefined) throw new Error('the editor has no TypeScript');
  await slow.activate();
}

/** Those that the manifest names; the editor adds that of the language by itself. */
function activationEvents(): readonly string[] {
  const manifest = ourExtension().packageJSON as { readonly activationEvents?: readonly string[] };
  return manifest.activationEvents ?? [];
}
