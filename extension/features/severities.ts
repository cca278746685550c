/** How severe a person wants findings to be, where that is not their own severity. */
import { workspace } from 'vscode';
import type { TextDocument } from 'vscode';
import { isChosenSeverity, withSeverities, type ChosenSeverities, type ChosenSeverity } from '../../src/findings/chosenSeverities.ts';
import { withFindings } from '../../src/outputs/withFindings.ts';
import type { Answers } from '../../src/solve.ts';
import { SETTINGS } from '../language.ts';

export const SEVERITY_SETTING = `${SETTINGS}.severity`;

/** By code; whatever cannot be meant is left out. Of a finding that is off nothing is offered to mend it. */
export function chosenSeverities(document: TextDocument): ChosenSeverities {
  const setting = workspace.getConfiguration(undefined, document).get<unknown>(SEVERITY_SETTING);
  if (typeof setting !== 'object' || setting === null) return new Map();
  return new Map(Object.entries(setting).filter((entry): entry is [string, ChosenSeverity] => isChosenSeverity(entry[1])));
}

/**
 * The answers with the findings as a person wants to see them, for whatever shows or counts them. Requirements stay as they are, and so do
 * the tests made of them: the file itself asks for those, and nobody's setting makes one pass.
 */
export function asChosen(document: TextDocument, answers: Answers): Answers {
  const findings = withSeverities(answers.findings, chosenSeverities(document));
  return findings === answers.findings ? answers : withFindings(answers, findings);
}
