/** How severe a person wants findings to be, where that is not their own severity. */
import { workspace } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Finding } from '../../src/findings/finding.ts';
import { SETTINGS } from '../language.ts';

/** `off` is not shown, and nothing is offered to mend it. */
export type ChosenSeverity = Finding['severity'] | 'off';

export const SEVERITY_SETTING = `${SETTINGS}.severity`;

/** By code; whatever cannot be meant is left out. */
export function chosenSeverities(document: TextDocument): ReadonlyMap<string, ChosenSeverity> {
  const setting = workspace.getConfiguration(undefined, document).get<unknown>(SEVERITY_SETTING);
  if (typeof setting !== 'object' || setting === null) return new Map();
  return new Map(Object.entries(setting).filter((entry): entry is [string, ChosenSeverity] => isSeverity(entry[1])));
}

function isSeverity(value: unknown): value is ChosenSeverity {
  return value === 'error' || value === 'warning' || value === 'note' || value === 'off';
}
