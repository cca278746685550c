/** What a command that begins a study is given by a lens or an action: the file, and what is known of the question. */
import { Uri } from 'vscode';

export interface StudyPlace {
  readonly uri: string;
  readonly change?: string;
  readonly demand?: string;
}

export function isStudyPlace(value: unknown): value is StudyPlace {
  if (typeof value !== 'object' || value === null || value instanceof Uri) return false;
  const { uri, change, demand } = value as Readonly<Record<string, unknown>>;
  const isWord = (word: unknown): boolean => word === undefined || typeof word === 'string';
  return typeof uri === 'string' && isWord(change) && isWord(demand);
}
