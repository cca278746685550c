/** Saves what the view exports where the person chooses, and makes the table that it exports. */
import { l10n, Uri, window, workspace } from 'vscode';
import type { TextDocument } from 'vscode';
import { tableCsv } from '../../src/outputs/tableCsv.ts';
import type { Requests } from '../../src/protocol/messages.ts';
import type { DocumentAnswers } from '../answers.ts';
import { noteFailure } from '../logFailure.ts';
import { askedAnswers } from './askedAnswers.ts';
import { fileNameOf } from './fileName.ts';
import { onDisk } from './git.ts';

/** Throws what the person is told where it cannot be. @param uri of the throttle file, beside which it is offered to be saved */
export async function saveExport(uri: Uri, { name, kind, content }: Requests['save']['asks']): Promise<Requests['save']['answers']> {
  const folder = uri.scheme === 'untitled' ? workspace.workspaceFolders?.[0]?.uri : Uri.joinPath(onDisk(uri), '..');
  // A name is a name: no way to another folder.
  const defaultUri = folder && Uri.joinPath(folder, name.replace(/[\\/:*?"<>|]/g, '_'));
  const chosen = await window.showSaveDialog({ ...(defaultUri && { defaultUri }), filters: { [KINDS[kind]()]: [kind] } });
  if (chosen === undefined) return { saved: false };
  try {
    await workspace.fs.writeFile(chosen, typeof content === 'string' ? new TextEncoder().encode(content) : content);
  } catch (error) {
    noteFailure(`Writing ${chosen.toString()}`, error);
    const why = l10n.t('{0} could not be written; why is in the log: “Show Log” of Pedal to Plate.', fileNameOf(chosen));
    throw new Error(why, { cause: error });
  }
  return { saved: true };
}

const KINDS: Readonly<Record<Requests['save']['asks']['kind'], () => string>> = {
  svg: () => l10n.t('SVG drawing'),
  png: () => l10n.t('PNG picture'),
  csv: () => l10n.t('Table, comma-separated'),
};

/** Throws what the person is told where there is none. */
export function exportTable(document: TextDocument, known: DocumentAnswers, asks: Requests['table']['asks']): Requests['table']['answers'] {
  const answers = askedAnswers(document, known, asks);
  if (answers.columns.length === 0)
    throw new Error(l10n.t('The linkage is not solved, so there is no table: see the problems of the file.'));
  return { csv: tableCsv(answers.table(STATIONS)) };
}

/** Each hundredth of the pedal's travel. */
const STATIONS = Array.from({ length: 101 }, (_, percent) => percent / 100);
