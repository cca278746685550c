/** Answers with other findings, as a person wants to see them or once more was looked at. */
import type { Finding, NotChecked } from '../findings/finding.ts';
import type { Answers } from '../solve.ts';
import { later } from '../travel/once.ts';

/**
 * What the answers leave for later stays so: a copy of all their members would work it out at once.
 * @param notChecked asked once, where it is wanted; as in the answers where absent
 */
export function withFindings(
  answers: Answers,
  findings: readonly Finding[],
  notChecked: () => readonly NotChecked[] = () => answers.notChecked,
): Answers {
  const { text, definition, loadPath, problems } = answers;
  const open = later(notChecked);
  return {
    text,
    definition,
    loadPath,
    problems,
    findings,
    get notChecked() {
      return open();
    },
    get columns() {
      return answers.columns;
    },
    get facts() {
      return answers.facts;
    },
    get requirements() {
      return answers.requirements;
    },
    get parts() {
      return answers.parts;
    },
    get study() {
      return answers.study;
    },
    table: (stations, names) => answers.table(stations, names),
    failures: () => answers.failures(),
  };
}
