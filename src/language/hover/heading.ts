/** The first line over a name. */
import { message, plain } from '../markdown.ts';

/** E.g. `**link_a** · a rod`, as Markdown. @param what in words, names between backticks */
export function heading(name: string, what: string): string {
  return `**${plain(name)}** · ${message(what)}`;
}
