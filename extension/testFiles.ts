/**
 * Throttle files and their requirements as items of the test view: a file, and below it each line of `require`. Items keep their identity,
 * and with it what they last came to, for as long as the name of the requirement stays.
 */
import { l10n, Range, workspace } from 'vscode';
import type { CancellationToken, TestController, TestItem, Uri } from 'vscode';
import type { Problem } from '../src/definition/problem.ts';
import { indexLines, type Span } from '../src/definition/span.ts';
import { requirementTests, type RequirementTest } from '../src/language/requirementTests.ts';
import { solve, type Answers } from '../src/solve.ts';
import type { DocumentAnswers } from './answers.ts';
import { isThrottleFile } from './language.ts';
import { nextTurn } from './turns.ts';

/** A throttle file as it stood when it was looked at, and what its requirements came to. */
export interface CheckedFile {
  readonly tests: readonly RequirementTest[];
  /** The text is so broken that nothing is known of what it requires. */
  readonly isUnusable: boolean;
  /** The first mistake of the text within a stretch of it: why what stands there is not understood. */
  mistakeIn(span: Span): Problem | undefined;
  rangeOf(span: Span): Range;
}

export interface TestFiles {
  /** Shows what a text requires, of a document that is open. */
  place(uri: Uri, answers: Answers): TestItem | undefined;
  /**
   * Reads a file, as it stands in the editor where it is open and else from the disk, and shows what it requires.
   *
   * @returns undefined where it cannot be read: then it is shown no more
   */
  check(uri: Uri): Promise<CheckedFile | undefined>;
  /** A document was closed: what is on the disk counts again, if the workspace has it at all. */
  leave(uri: Uri): Promise<void>;
  /** Lists the throttle files of the workspace, without reading one, and drops what is gone. */
  scan(token?: CancellationToken): Promise<void>;
  /**
   * A file of the workspace has come, has changed or is gone.
   *
   * @returns its item where it was read anew; what is open counts as it stands in the editor, whatever the disk has
   */
  touched(uri: Uri, what: 'created' | 'changed' | 'deleted'): Promise<TestItem | undefined>;
}

export const GLOB = '**/*.throttle.yaml';

export function keepTestFiles(controller: TestController, answers: DocumentAnswers): TestFiles {
  const { items } = controller;
  /** Files that the workspace is known to have, by uri. */
  const listed = new Set<string>();
  /** The newest reading of each file that is not done: what was read before something newer is dropped. */
  const readings = new Map<string, object>();

  /** @returns ends it; whether nothing newer has come meanwhile */
  const beginReading = (uri: Uri): (() => boolean) => {
    const key = uri.toString();
    const mine = {};
    readings.set(key, mine);
    return () => readings.get(key) === mine && readings.delete(key);
  };
  const dropReading = (uri: Uri): void => {
    readings.delete(uri.toString());
  };
  const itemOf = (uri: Uri): TestItem => {
    const key = uri.toString();
    const known = items.get(key);
    if (known !== undefined) return known;
    const item = controller.createTestItem(key, workspace.asRelativePath(uri), uri);
    item.canResolveChildren = true;
    items.add(item);
    return item;
  };
  const remove = (uri: Uri): void => {
    dropReading(uri);
    listed.delete(uri.toString());
    items.delete(uri.toString());
  };
  const show = (uri: Uri, { tests, isUnusable, rangeOf }: CheckedFile): TestItem | undefined => {
    const key = uri.toString();
    if (tests.length === 0 && !isUnusable && !listed.has(key)) {
      items.delete(key);
      return undefined;
    }
    const item = itemOf(uri);
    item.canResolveChildren = tests.length > 0;
    item.error = isUnusable ? unusableText() : undefined;
    item.description = tests.length > 0 || isUnusable ? '' : l10n.t('requires nothing');
    item.children.replace(
      tests.map((test, index) => {
        const child = item.children.get(test.id) ?? controller.createTestItem(test.id, test.label, uri);
        child.label = test.label;
        child.range = rangeOf(test.span);
        child.sortText = String(index).padStart(SORTED_DIGITS, '0');
        return child;
      }),
    );
    return item;
  };
  const check = async (uri: Uri): Promise<CheckedFile | undefined> => {
    const isNewest = beginReading(uri);
    const checked = await readFile(uri, answers);
    if (!isNewest()) return checked;
    if (checked === undefined) remove(uri);
    else show(uri, checked);
    return checked;
  };

  return {
    place(uri, solved) {
      if (!isTestable(uri)) return undefined;
      dropReading(uri);
      return show(uri, checkedFile(solved));
    },
    check,
    async leave(uri) {
      if (listed.has(uri.toString())) await check(uri);
      else remove(uri);
    },
    async scan(token) {
      const found = await workspace.findFiles(GLOB, '**/node_modules/**', undefined, token);
      if (isCancelled(token)) return;
      listed.clear();
      for (const uri of found) listed.add(uri.toString());
      const gone = uris(controller).filter((uri) => !listed.has(uri.toString()) && openDocument(uri) === undefined);
      gone.forEach(remove);
      for (const uri of found) {
        if (isCancelled(token)) return;
        const item = itemOf(uri);
        if (item.children.size > 0) await check(uri);
      }
    },
    async touched(uri, what) {
      const isOpen = openDocument(uri) !== undefined;
      if (what === 'deleted') {
        listed.delete(uri.toString());
        // What is open is still on the screen, and can be saved again.
        if (!isOpen) remove(uri);
        return undefined;
      }
      listed.add(uri.toString());
      if (isOpen) return undefined;
      if (itemOf(uri).children.size === 0 && what === 'created') return undefined;
      await check(uri);
      return items.get(uri.toString());
    },
  };
}

/** What is told of a file of which nothing can be understood. */
export function unusableText(): string {
  return l10n.t('The file cannot be used as it stands: see its problems.');
}

function isCancelled(token: CancellationToken | undefined): boolean {
  return token?.isCancellationRequested === true;
}

/** Orders more tests than a file may hold. */
const SORTED_DIGITS = 6;

async function readFile(uri: Uri, answers: DocumentAnswers): Promise<CheckedFile | undefined> {
  await nextTurn();
  const document = openDocument(uri);
  if (document !== undefined) return checkedFile(answers.solveNow(document));
  // Open as another language: nothing solves it as it is typed, yet what is on the screen counts.
  const other = workspace.textDocuments.find((each) => !each.isClosed && each.uri.toString() === uri.toString());
  if (other !== undefined) return checkedFile(solve(other.getText()));
  try {
    return checkedFile(solve(new TextDecoder().decode(await workspace.fs.readFile(uri))));
  } catch {
    // It is gone, or never was on a disk.
    return undefined;
  }
}

function checkedFile(answers: Answers): CheckedFile {
  const lines = indexLines(answers.text);
  const rangeOf = ({ start, end }: Span): Range => {
    const [from, to] = [lines.positionAt(start), lines.positionAt(end)];
    return new Range(from.line, from.character, to.line, to.character);
  };
  const mistakeIn = ({ start, end }: Span): Problem | undefined =>
    answers.problems.find(({ severity, span }) => severity === 'error' && span.start >= start && span.end <= end);
  return { tests: requirementTests(answers), isUnusable: answers.definition === undefined, mistakeIn, rangeOf };
}

function openDocument(uri: Uri) {
  const key = uri.toString();
  return workspace.textDocuments.find((document) => isThrottleFile(document) && !document.isClosed && document.uri.toString() === key);
}

function uris({ items }: TestController): readonly Uri[] {
  return [...items].flatMap(([, { uri }]) => uri ?? []);
}

/** A person's file; not an older version of one, which the editor opens for a comparison. */
function isTestable(uri: Uri): boolean {
  return ['file', 'untitled'].includes(uri.scheme) || workspace.getWorkspaceFolder(uri) !== undefined;
}
