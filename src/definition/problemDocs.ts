/**
 * What each problem code means, with an example and the cure: for the reference page, the pages in `docs/codes`, and the editor's links.
 */
import type { ProblemCode } from './codes.ts';
import { FILE_DOCS, TOO_LARGE_DOC } from './problemDocs/fileDocs.ts';
import { FORMULA_DOCS } from './problemDocs/formulaDocs.ts';
import { NAME_DOCS } from './problemDocs/nameDocs.ts';
import type { ProblemDoc, UnshownProblemDoc } from './problemDocs/problemDoc.ts';
import { QUANTITY_DOCS } from './problemDocs/quantityDocs.ts';
import { SHAPE_DOCS } from './problemDocs/shapeDocs.ts';
import { STUDY_DOCS } from './problemDocs/studyDocs.ts';

/** Every code has an example but the one of a file that is too large to be one. */
export type ProblemDocs = {
  readonly [Code in ProblemCode]: Code extends 'file-too-large' ? UnshownProblemDoc : ProblemDoc;
};

export const PROBLEM_DOCS: ProblemDocs = {
  'file-too-large': TOO_LARGE_DOC,
  ...FILE_DOCS,
  ...SHAPE_DOCS,
  ...NAME_DOCS,
  ...STUDY_DOCS,
  ...QUANTITY_DOCS,
  ...FORMULA_DOCS,
};
