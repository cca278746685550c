/**
 * CSV files of readings beside a throttle file, read through the editor and looked after: each is read anew when it changes, comes or goes,
 * and what is wrong with it is a problem at its name in the throttle file.
 */
import { Disposable, EventEmitter, FileType, l10n, RelativePattern, Uri, workspace } from 'vscode';
import type { Event, TextDocument } from 'vscode';
import type { Problem } from '../src/definition/problem.ts';
import type { Answers } from '../src/solve.ts';
import { csvNames, gatherReadings, type BesideFile } from '../src/studies/fit/gather.ts';
import { LARGEST_CSV } from '../src/studies/fit/csvReadings.ts';
import type { DocumentAnswers, SolvedDocument } from './answers.ts';
import { logFailure, noteFailure } from './logFailure.ts';

export interface MeasuredFiles {
  /** What stands beside a file under the names of its runs, each once. */
  beside(document: TextDocument, answers: Pick<Answers, 'definition'>): Promise<readonly (readonly [string, BesideFile])[]>;
  /** Of the files of the text as it stands; empty while they are not read yet. */
  problems(document: TextDocument): readonly Problem[];
  /** They are others than before: these are the answers about the text that they are of. */
  readonly onDidChange: Event<SolvedDocument>;
  /** A file that a run of this text names was written, came or went: what was found from it is old, though its problems may be the same. */
  readonly onDidTouch: Event<TextDocument>;
  dispose(): void;
}

export function keepMeasuredFiles({ onDidSolve, onDidForget, latest }: DocumentAnswers): MeasuredFiles {
  const kept = new Map<TextDocument, Kept>();
  const changed = new EventEmitter<SolvedDocument>();
  const touched = new EventEmitter<TextDocument>();

  const look = async (document: TextDocument, answers: Answers): Promise<void> => {
    const { definition } = answers;
    const names = definition === undefined ? [] : csvNames(definition);
    const before = kept.get(document);
    if (definition === undefined || names.length === 0) {
      before?.watching.dispose();
      kept.delete(document);
      if ((before?.problems.length ?? 0) > 0) changed.fire({ document, answers });
      return;
    }
    const known: Kept = before ?? {
      watching: watch(document),
      files: new Map(),
      changes: new Map(),
      version: document.version,
      problems: [],
    };
    kept.set(document, known);
    const { version } = document;
    await readInto(known.files, document.uri, names, known.changes);
    if (kept.get(document) !== known || document.version !== version) return;
    const { problems } = gatherReadings(definition, (name) => known.files.get(name) ?? { kind: 'missing' });
    const isOther = JSON.stringify(problems) !== JSON.stringify(known.problems) || known.version !== version;
    known.version = version;
    known.problems = problems;
    if (isOther) changed.fire({ document, answers });
  };
  /** Whatever happens to a file of the folder, it is read anew where a run names it. */
  const watch = (document: TextDocument): Disposable => {
    if (document.isUntitled) return new Disposable(() => undefined);
    const watcher = workspace.createFileSystemWatcher(new RelativePattern(folderOf(document.uri), '*'));
    const again = (uri: Uri): void => {
      const known = kept.get(document);
      const name = [...(known?.changes.keys() ?? [])].find((each) => besideOf(document.uri, each).toString() === uri.toString());
      if (known === undefined || name === undefined) return;
      known.files.delete(name);
      known.changes.set(name, known.changes.get(name)! + 1);
      touched.fire(document);
      const answers = latest(document);
      if (answers !== undefined) logFailure(look(document, answers));
    };
    return Disposable.from(watcher, watcher.onDidCreate(again), watcher.onDidChange(again), watcher.onDidDelete(again));
  };
  const listening = Disposable.from(
    changed,
    touched,
    onDidSolve(({ document, answers }) => logFailure(look(document, answers))),
    onDidForget((document) => {
      kept.get(document)?.watching.dispose();
      kept.delete(document);
    }),
  );

  return {
    async beside(document, { definition }) {
      const names = definition === undefined ? [] : csvNames(definition);
      const files = new Map<string, BesideFile>();
      await readInto(files, document.uri, names);
      return [...files];
    },
    problems(document) {
      const known = kept.get(document);
      return known?.version === document.version ? known.problems : [];
    },
    onDidChange: changed.event,
    onDidTouch: touched.event,
    dispose() {
      listening.dispose();
      for (const { watching } of kept.values()) watching.dispose();
      kept.clear();
    },
  };
}

interface Kept {
  readonly watching: Disposable;
  /** As they were read last; one that has changed since is not there. */
  readonly files: Map<string, BesideFile>;
  /** Of every name that was ever asked for: how often it has changed. */
  readonly changes: Map<string, number>;
  /** Of the text that the problems are of. */
  version: number;
  problems: readonly Problem[];
}

/** @param changes of a file that is looked after, by name; one that changes while it is read is read anew */
async function readInto(
  files: Map<string, BesideFile>,
  uri: Uri,
  names: readonly string[],
  changes: Map<string, number> = new Map<string, number>(),
): Promise<void> {
  for (const name of names) {
    while (!files.has(name)) {
      const before = changes.get(name) ?? 0;
      changes.set(name, before);
      const file = await readBeside(uri, name);
      if (changes.get(name) === before) files.set(name, file);
    }
  }
}

async function readBeside(uri: Uri, name: string): Promise<BesideFile> {
  if (uri.scheme === 'untitled') return { kind: 'unreadable', reason: l10n.t('stands beside no file yet: save this one first') };
  const beside = besideOf(uri, name);
  try {
    const { type, size } = await workspace.fs.stat(beside);
    if ((type & FileType.Directory) !== 0) return { kind: 'unreadable', reason: l10n.t('is a folder, not a file') };
    if (size > READ_LIMIT) return { kind: 'unreadable', reason: l10n.t('has more than {0} million bytes', READ_LIMIT / 1e6) };
    return { kind: 'text', text: new TextDecoder().decode(await workspace.fs.readFile(beside)) };
  } catch (error) {
    const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;
    if (code === 'NoPermissions') return { kind: 'unreadable', reason: l10n.t('may not be read: check its permissions') };
    if (code === 'FileNotFound') return { kind: 'missing' };
    noteFailure(`Reading ${beside.toString()}`, error);
    return { kind: 'unreadable', reason: l10n.t('could not be read; why is in the log: “Show Log” of Pedal to Plate') };
  }
}

/** Enough for the largest that is read, whatever its characters. */
const READ_LIMIT = 4 * LARGEST_CSV;

function folderOf(uri: Uri): Uri {
  return Uri.joinPath(uri, '..');
}

/** A name has no folder in it, which the reader of the file sees to. */
function besideOf(uri: Uri, name: string): Uri {
  return Uri.joinPath(folderOf(uri), name);
}
