/**
 * The closed list of problem codes. A code is stable: it is documented, tested and linked, and a published
 * one is never given another meaning.
 */
export const PROBLEM_CODES = [
  // The file as a whole
  'file-too-large',
  'file-empty',
  'yaml-syntax',
  'alias-bound',
  'multiple-documents',
  'format-missing',
  'format-unsupported',
  // Keys and shape
  'unknown-key',
  'duplicate-key',
  'missing-key',
  'wrong-shape',
  'wrong-value',
  // Names and references
  'bad-name',
  'reserved-name',
  'duplicate-name',
  'unknown-name',
  'load-path-loop',
  'driven-twice',
  'not-driven',
  'not-free',
  'too-few-readings',
  // Quantities
  'bad-quantity',
  'missing-unit',
  'unknown-unit',
  'wrong-unit',
  'bad-tolerance',
  'out-of-range',
  // Formulas
  'quote-formula',
  'formula-syntax',
  'formula-not-allowed',
  'formula-too-long',
  'formula-dimension',
  'formula-no-value',
] as const;

/** One code of the closed list. */
export type ProblemCode = (typeof PROBLEM_CODES)[number];
