/** `--format`: one of those that a command knows. */
import { nearestWord } from '../src/definition/names.ts';

/** The format, the first where none is given, or a sentence on what is wrong with it, without a full stop. */
export function readFormat<Format extends string>(
  text: string | undefined,
  formats: readonly [Format, ...Format[]],
): { readonly format: Format } | string {
  const format = text === undefined ? formats[0] : formats.find((each) => each === text.toLowerCase());
  if (format !== undefined) return { format };
  const near = nearestWord(text ?? '', formats);
  const listed = `${formats.slice(0, -1).join(', ')} or ${formats.at(-1) ?? ''}`;
  return `There is no format \`${text ?? ''}\`; ${near === undefined ? `write ${listed}` : `did you mean \`${near}\`?`}`;
}
