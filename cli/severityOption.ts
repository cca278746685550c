/** `--severity CODE=LEVEL`: how severe findings are to be, as `pedalToPlate.severity` says it in the editor. */
import { nearestWord } from '../src/definition/names.ts';
import {
  CHOSEN_SEVERITIES,
  isChosenSeverity,
  isFindingCode,
  type ChosenSeverities,
  type ChosenSeverity,
} from '../src/findings/chosenSeverities.ts';
import { FINDING_CODES } from '../src/findings/codes.ts';

/**
 * The severities chosen, or a sentence on what is wrong with one, without a full stop.
 * @param values as given, each one or more with commas between them
 */
export function readSeverities(values: readonly string[]): { readonly severities: ChosenSeverities } | string {
  const severities = new Map<string, ChosenSeverity>();
  for (const item of values.flatMap((value) => value.split(',')).map((each) => each.trim())) {
    const [, code = '', level] = /^([^=]*)=(.*)$/.exec(item) ?? [];
    if (level === undefined) return `\`--severity\` takes a code and a level, e.g. \`transmission-angle=note\`; \`${item}\` is none`;
    if (!isFindingCode(code)) return unknownCode(code);
    if (!isChosenSeverity(level)) return unknownLevel(level);
    if (severities.has(code) && severities.get(code) !== level) return `\`--severity\` gives \`${code}\` two levels`;
    severities.set(code, level);
  }
  return { severities };
}

function unknownCode(code: string): string {
  const near = nearestWord(code, FINDING_CODES);
  return `There is no finding \`${code}\`; ${near === undefined ? 'the codes stand in docs/codes' : `did you mean \`${near}\`?`}`;
}

function unknownLevel(level: string): string {
  const near = nearestWord(level, CHOSEN_SEVERITIES);
  return `There is no severity \`${level}\`; ${near === undefined ? 'write error, warning, note or off' : `did you mean \`${near}\`?`}`;
}
