/** What a person calls a file. */
import type { Uri } from 'vscode';

export function fileNameOf({ path }: Uri): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
