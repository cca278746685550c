/** `check FILE…`: the verdict on each file in turn, or on all of them in one document for other programs. */
import { withSeverities, type ChosenSeverities } from '../../src/findings/chosenSeverities.ts';
import { checkJson } from '../../src/outputs/checkJson.ts';
import { checkMarkdown } from '../../src/outputs/checkMarkdown.ts';
import { checkSarif } from '../../src/outputs/checkSarif.ts';
import { checkText } from '../../src/outputs/checkText.ts';
import { outcomeOf, type CheckedFile, type FileOutcome } from '../../src/outputs/checkedFile.ts';
import { countText } from '../../src/outputs/figure.ts';
import { withFailures } from '../../src/outputs/withFailures.ts';
import { solve } from '../../src/solve.ts';
import type { CheckFormat, CheckRequest } from '../arguments.ts';
import { fileUri } from '../fileUri.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import { pageWidth, painterFor } from '../terminal.ts';

/** @returns the worst exit code of all files */
export async function check({ files, format, severities, color }: CheckRequest, io: Io): Promise<number> {
  const checked: CheckedFile[] = [];
  for (const [index, file] of files.entries()) {
    if (format === 'text' && index > 0) io.writeOut('\n');
    const one = await checkOne(file, severities, color, io);
    if (format === 'text') writeText(one, color, io);
    checked.push(one);
  }
  const outcomes = checked.map(outcomeOf);
  const exitCode = Math.max(...outcomes.map((outcome) => EXIT_CODES[outcome]));
  io.writeOut(format === 'text' ? countsText(outcomes) : documentText(checked, format, exitCode, io.version));
  return exitCode;
}

const EXIT_CODES: Readonly<Record<FileOutcome, number>> = { sound: SOUND, wrong: WRONG, unusable: UNUSABLE };

/** Says on standard error why a file cannot be read, whatever the format. */
async function checkOne(file: string, severities: ChosenSeverities, color: boolean | undefined, io: Io): Promise<CheckedFile> {
  const uri = file === '-' ? undefined : fileUri(file);
  const source = await readSource(file, io);
  if (source.kind === 'text') {
    const answers = withFailures(solve(source.text));
    return { name: source.label, uri, answers: { ...answers, findings: withSeverities(answers.findings, severities) } };
  }
  const paint = painterFor(color, io.errorIsTerminal, io.environment);
  io.writeError(`${paint('error', 'error:')} ${source.message}\n`);
  return { name: source.label, uri, reason: source.reason };
}

function writeText({ name, answers }: CheckedFile, color: boolean | undefined, io: Io): void {
  if (answers === undefined) return;
  const paint = painterFor(color, io.outIsTerminal, io.environment);
  const width = pageWidth(io);
  io.writeOut(checkText(answers, { file: name, paint, ...width }));
}

/** How many files there are of each kind; nothing of a single one. */
function countsText(outcomes: readonly FileOutcome[]): string {
  if (outcomes.length < 2) return '';
  const count = (wanted: FileOutcome): number => outcomes.filter((outcome) => outcome === wanted).length;
  const wrong = `${count('wrong')} with errors, with requirements that are not passed or with nothing to solve`;
  return `\n${countText(outcomes.length, 'file')}: ${count('sound')} without error, ${wrong}, ${count('unusable')} that cannot be used\n`;
}

function documentText(files: readonly CheckedFile[], format: Exclude<CheckFormat, 'text'>, exitCode: number, version: string): string {
  switch (format) {
    case 'markdown':
      return checkMarkdown(files);
    case 'json':
      return checkJson(files);
    case 'sarif':
      return checkSarif(files, { version, exitCode });
  }
}
