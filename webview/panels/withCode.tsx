/** Words of the file, which messages put between backticks, in the type of the text. */
import type { ComponentChild } from 'preact';

/** The message with `code` elements in the place of what stands between two backticks. */
export const withCode = (message: string): readonly ComponentChild[] =>
  message.split(/(`[^`]+`)/).map((piece, i) => (i % 2 === 0 ? piece : <code key={i}>{piece.slice(1, -1)}</code>));
