/**
 * One line above each part: the figure that matters for it; above what can be studied, what begins the study; and at the top what opens the
 * view, while it is not in sight. Where parts stand is told at
 * once, and what is said of one is worked out when its line comes to be seen. A part that is not solved, as while the text is half-typed, keeps
 * its line without a figure, so that the text does not jump under the hands.
 */
import { CodeLens, Disposable, EventEmitter, l10n, languages, workspace } from 'vscode';
import type { Command, Range, TextDocument } from 'vscode';
import { lensesOf, lensPlaces, pressedLever, topOf } from '../../src/language/lenses.ts';
import { studyLenses, type StudyLens } from '../../src/language/studyLenses.ts';
import type { Answers } from '../../src/solve.ts';
import type { DocumentAnswers } from '../answers.ts';
import { SETTINGS, THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';
import { nextTurn } from '../turns.ts';
import type { ViewCommand } from '../view/names.ts';
import type { Views } from '../view/views.ts';
import { REVEAL_PART, type RevealedPart } from './revealPart.ts';

export function provideCodeLenses(
  { names, solved, latest, onDidSolve }: DocumentAnswers,
  views: Pick<Views, 'isInSight' | 'onDidChange'>,
): Disposable {
  const changed = new EventEmitter<void>();
  /** What each part was last said of. */
  const titles = new WeakMap<TextDocument, ReadonlyMap<string, string>>();
  /** Those that were asked of before they were solved: what can be studied in them is not known yet. */
  const unsolved = new WeakSet<TextDocument>();
  /** The lever that the pedal is, also while its name is being typed. */
  const pressed = new WeakMap<TextDocument, string>();
  const titlesOf = titlesByAnswers();
  const top = (document: TextDocument): readonly CodeLens[] => {
    const span = views.isInSight(document.uri) ? undefined : topOf(document.getText());
    return span === undefined ? [] : [new CodeLens(rangeOf(document, span), openCommand(document.uri.toString()))];
  };
  return Disposable.from(
    languages.registerCodeLensProvider(THROTTLE_FILES, {
      onDidChangeCodeLenses: changed.event,
      async provideCodeLenses(document, token) {
        if (!workspace.getConfiguration(SETTINGS, document).get<boolean>('codeLens', true)) return [];
        const { version } = document;
        await nextTurn();
        if (token.isCancellationRequested || document.version !== version) return undefined;
        const uri = document.uri.toString();
        const index = names(document);
        const lever = pressedLever(index) ?? pressed.get(document);
        if (lever !== undefined) pressed.set(document, lever);
        const parts = lensPlaces(index, lever).map(
          ({ span, part, name }) => new PartLens(rangeOf(document, span), document, { uri, part, name }),
        );
        const known = latest(document);
        if (known?.text !== document.getText()) {
          unsolved.add(document);
          return [...top(document), ...parts];
        }
        return [
          ...top(document),
          ...parts,
          ...studyLenses(known).map(({ span, title, kind }) => new CodeLens(rangeOf(document, span), commandOf(title, kind, uri))),
        ];
      },
      async resolveCodeLens(lens, token) {
        if (!(lens instanceof PartLens)) return lens;
        const { document, part } = lens;
        const answers = await solved(document, token);
        if (answers !== undefined) titles.set(document, titlesOf(answers));
        // Of a text that has changed since, lines are asked for anew; meanwhile this one says what it said.
        const title = titles.get(document)?.get(keyOf(part.part, part.name)) ?? l10n.t('not solved');
        lens.command = { command: REVEAL_PART, title, arguments: [part] };
        return lens;
      },
    }),
    onDidSolve(({ document }) => {
      if (unsolved.delete(document)) changed.fire();
    }),
    views.onDidChange(() => changed.fire()),
    workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration(`${SETTINGS}.codeLens`)) changed.fire();
    }),
    changed,
  );
}

class PartLens extends CodeLens {
  readonly document: TextDocument;
  readonly part: RevealedPart;
  constructor(range: Range, document: TextDocument, part: RevealedPart) {
    super(range);
    this.document = document;
    this.part = part;
  }
}

const keyOf = (part: string, name: string): string => `${part} ${name}`;

/** All titles of the same answers at once: each line asks for its own. */
function titlesByAnswers(): (answers: Answers) => ReadonlyMap<string, string> {
  const made = new WeakMap<Answers, ReadonlyMap<string, string>>();
  return (answers) => {
    const known = made.get(answers) ?? new Map(lensesOf(answers).map(({ title, action: { part, name } }) => [keyOf(part, name), title]));
    made.set(answers, known);
    return known;
  };
}

function openCommand(uri: string): Command {
  return { command: `${SETTINGS}.openView`, title: l10n.t('Open mechanism view'), arguments: [{ uri }] };
}

const STUDY_COMMANDS: Readonly<Record<StudyLens['kind'], ViewCommand>> = {
  tune: 'findDimensions',
  tolerance: 'showTolerances',
  fit: 'fitMeasurements',
};

function commandOf(title: string, kind: StudyLens['kind'], uri: string): Command {
  return { command: `${SETTINGS}.${STUDY_COMMANDS[kind]}`, title, arguments: [{ uri }] };
}
