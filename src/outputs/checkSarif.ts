/** What a check has to say, as one SARIF 2.1.0 log with one run for all files: for hosts that show results beside the changed lines. */
import { CAUTION } from './caution.ts';
import type { CheckedFile } from './checkedFile.ts';
import { jsonText } from './json/text.ts';
import { notCheckedText } from './marks.ts';
import { artifactsOf, type SarifTarget } from './sarif/artifacts.ts';
import type { SarifDescriptor, SarifLog, SarifNotification } from './sarif/log.ts';
import { sarifMessage } from './sarif/message.ts';
import { resultsOf } from './sarif/results.ts';
import { createRuleBook } from './sarif/rules.ts';

export interface SarifOptions {
  /** Of this program. */
  readonly version: string;
  /** With which the program ends. */
  readonly exitCode: number;
}

/** With a line ending. */
export function checkSarif(files: readonly CheckedFile[], { version, exitCode }: SarifOptions): string {
  const { artifacts, targets } = artifactsOf(files);
  const book = createRuleBook();
  const each = files.map((file, index) => ({ file, target: targets[index]! }));
  const results = each.flatMap(({ file: { answers }, target }) => (answers === undefined ? [] : resultsOf(answers, target, book)));
  const log: SarifLog = {
    version: '2.1.0',
    $schema: SCHEMA,
    runs: [
      {
        tool: {
          driver: {
            name: 'pedal-to-plate',
            version,
            fullDescription: { text: CAUTION },
            rules: book.rules(),
            notifications: NOTIFICATIONS,
          },
        },
        invocations: [
          {
            // A file that is sound or wrong was looked at either way; one that could not be read was not.
            executionSuccessful: each.every(({ file }) => file.answers !== undefined),
            exitCode,
            toolExecutionNotifications: each.flatMap(({ file, target }) => notificationsOf(file, target)),
          },
        ],
        artifacts,
        results,
        defaultEncoding: 'utf-8',
        columnKind: 'utf16CodeUnits',
        newlineSequences: ['\r\n', '\n', '\r'],
      },
    ],
  };
  return jsonText(log);
}

/** Where the standard says that its schema is to be had (3.13.3). */
const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

const NOT_CHECKED = 0;
const NOT_READ = 1;
const NOTIFICATIONS: readonly SarifDescriptor[] = [
  { id: 'not-checked', name: 'NotChecked', shortDescription: { text: 'No rule looked at this.' } },
  { id: 'not-read', name: 'NotRead', shortDescription: { text: 'The file could not be read.' } },
];

/**
 * What was not checked is told as notifications about the run, not as results of the kind `open`: a result says what came of a rule that
 * was evaluated (3.27.9), and here none was. They are notes, because an error among them would mean that the run failed (3.20.21): which
 * is what a file that could not be read means.
 */
function notificationsOf(file: CheckedFile, target: SarifTarget): SarifNotification[] {
  if (file.answers === undefined) {
    return [
      {
        descriptor: { id: 'not-read', index: NOT_READ },
        level: 'error',
        message: sarifMessage(`${file.name}: ${file.reason}`),
        locations: [{ physicalLocation: { artifactLocation: target.artifact } }],
      },
    ];
  }
  return file.answers.notChecked.map(({ part, span, message }) => ({
    descriptor: { id: 'not-checked', index: NOT_CHECKED },
    level: 'note',
    message: sarifMessage(`${part}: not checked: ${notCheckedText(message)}`),
    locations: [target.location(span, part)],
  }));
}
