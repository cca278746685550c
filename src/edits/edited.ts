/** What comes of a wish to change the text. */
import type { Replacement } from '../definition/problem.ts';

/** Edits, none of which overlap; empty where the text says it already. Or why nothing is changed: a sentence without a full stop. */
export type Edited = { readonly edits: readonly Replacement[] } | { readonly why: string };
