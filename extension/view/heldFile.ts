/**
 * The file that a view is of. It is kept open while the view is, found again where it was renamed or saved under a name, and missed where it
 * is gone.
 */
import { Disposable, EventEmitter, l10n, RelativePattern, TabInputText, Uri, window, workspace } from 'vscode';
import type { Event, TextDocument } from 'vscode';
import { isThrottleFile } from '../language.ts';
import { noteFailure } from '../logFailure.ts';
import { fileNameOf } from './fileName.ts';

export interface HeldFile {
  uri(): Uri;
  /** Undefined while it is not there. */
  document(): TextDocument | undefined;
  /** Once it was first looked for. */
  ready(): Promise<void>;
  /** Why it is not there, in words. */
  reason(): string;
  /** It came, went, or is another one. */
  readonly onDidChange: Event<void>;
  dispose(): void;
}

export function holdFile(start: Uri): HeldFile {
  let uri = start;
  let document: TextDocument | undefined;
  let reason = l10n.t('The file is being opened.');
  /** Set while the disk has no such file, though its text may still be on the screen. */
  let isDeleted = false;
  let isDisposed = false;
  /** Of a text that was never saved: the documents that came or were saved since it was last changed, the newest last. */
  const newer = new Set<TextDocument>();
  const changed = new EventEmitter<void>();

  const settle = (found: TextDocument | undefined, why: string): void => {
    const isThere = found !== undefined && isThrottleFile(found);
    document = isThere ? found : undefined;
    reason = found === undefined || isThere ? why : l10n.t('{0} is not a throttle file any more.', fileNameOf(uri));
    changed.fire();
  };
  const missing = (): string => l10n.t('{0} cannot be found. It is shown again once it is back.', fileNameOf(uri));
  const load = async (): Promise<void> => {
    const wanted = uri;
    let found = openDocument(wanted);
    // Of a text that was never saved there is nothing to be opened but an empty one.
    if (found === undefined && !isUntitled(wanted)) found = await opened(wanted);
    if (!isDisposed && wanted === uri) settle(found, missing());
  };
  const follow = (to: Uri): void => {
    uri = to;
    isDeleted = false;
    newer.clear();
    watch();
    void load();
  };

  let watching: Disposable | undefined;
  const watch = (): void => {
    watching?.dispose();
    if (isUntitled(uri)) return;
    const wanted = uri.toString();
    // A name may have what a pattern reads as more than itself, as `[`, `{` and `*`.
    const watcher = workspace.createFileSystemWatcher(new RelativePattern(Uri.joinPath(uri, '..'), '*'), false, true);
    watching = Disposable.from(
      watcher,
      watcher.onDidCreate((created) => {
        if (created.toString() !== wanted) return;
        isDeleted = false;
        if (document === undefined) void load();
      }),
      watcher.onDidDelete((deleted) => {
        if (deleted.toString() !== wanted) return;
        isDeleted = true;
        missIfNobodyShowsIt();
      }),
    );
  };
  /** What is in a tab or not saved can be saved again. */
  const missIfNobodyShowsIt = (): void => {
    if (isDeleted && document !== undefined && !document.isDirty && !isInTab(uri)) settle(undefined, missing());
  };

  const note = (each: TextDocument): void => {
    if (!isUntitled(uri) || each.isUntitled) return;
    newer.delete(each);
    newer.add(each);
  };
  const listening = Disposable.from(
    changed,
    workspace.onDidChangeTextDocument(({ document: each, contentChanges }) => {
      if (each === document && contentChanges.length > 0) newer.clear();
    }),
    workspace.onDidSaveTextDocument(note),
    workspace.onDidOpenTextDocument((opening) => {
      note(opening);
      if (opening.uri.toString() === uri.toString() && opening !== document) settle(opening, missing());
    }),
    workspace.onDidCloseTextDocument((closing) => {
      if (closing.isClosed) newer.delete(closing);
      if (closing !== document) return;
      document = undefined;
      // A document that is given another language is closed and opened.
      if (!closing.isClosed) return;
      if (!isUntitled(uri)) return void load();
      // One that was saved under a name goes on as that; a copy that was open before is another file.
      const saved = [...newer].findLast((each) => isThrottleFile(each) && each.getText() === closing.getText());
      if (saved !== undefined) return follow(saved.uri);
      settle(undefined, l10n.t('{0} was closed without being saved.', fileNameOf(uri)));
    }),
    workspace.onDidRenameFiles(({ files }) => {
      for (const { oldUri, newUri } of files) {
        const rest = restBelow(oldUri, uri);
        if (rest !== undefined) return follow(rest === '' ? newUri : Uri.joinPath(newUri, rest));
      }
    }),
    window.tabGroups.onDidChangeTabs(missIfNobodyShowsIt),
  );
  watch();
  const loaded = load();

  return {
    uri: () => uri,
    document: () => (document?.isClosed === true ? undefined : document),
    ready: () => loaded,
    reason: () => reason,
    onDidChange: changed.event,
    dispose() {
      isDisposed = true;
      watching?.dispose();
      listening.dispose();
    },
  };
}

function isUntitled({ scheme }: Uri): boolean {
  return scheme === 'untitled';
}

function openDocument(uri: Uri): TextDocument | undefined {
  return workspace.textDocuments.find((each) => each.uri.toString() === uri.toString() && !each.isClosed);
}

async function opened(uri: Uri): Promise<TextDocument | undefined> {
  try {
    return await workspace.openTextDocument(uri);
  } catch (error) {
    noteFailure(`Opening ${uri.toString()} for its view`, error);
    return undefined;
  }
}

function isInTab(uri: Uri): boolean {
  return window.tabGroups.all.some(({ tabs }) =>
    tabs.some(({ input }) => input instanceof TabInputText && input.uri.toString() === uri.toString()),
  );
}

/** What of a path lies below a folder: empty for the same path, undefined where it does not. */
function restBelow(folder: Uri, uri: Uri): string | undefined {
  if (folder.scheme !== uri.scheme || folder.authority !== uri.authority) return undefined;
  if (folder.path === uri.path) return '';
  return uri.path.startsWith(`${folder.path}/`) ? uri.path.slice(folder.path.length + 1) : undefined;
}
