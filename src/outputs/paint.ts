/**
 * Colour, as the receiver of a text wants it: the texts name what a word is, and whoever shows them decides what that
 * looks like. Also what keeps a person's own text from being taken for anything else than text.
 */

export type Style = 'error' | 'warning' | 'note' | 'strong' | 'quiet';

/** Gives back `text` as it is to be shown in a style. */
export type Paint = (style: Style, text: string) => string;

/** No colour at all. */
export const plain: Paint = (_style, text) => text;

/**
 * Text that a terminal shows and does not obey: each control character (escape codes begin with one) and each mark
 * that turns the direction of writing becomes one `�`. Tabs stay.
 */
export function printable(text: string): string {
  return text.replace(UNSHOWABLE, '\ufffd');
}

const UNSHOWABLE = /[^\P{Cc}\t]|[\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu;
