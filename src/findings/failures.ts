/** Every single failure, with what is found about it and how it stands to the figures of rules. */
import { failureTable, type FailureTable } from '../failures/failureTable.ts';
import { statementsOf, type Statement } from '../failures/statements.ts';
import type { Finding } from './finding.ts';
import { findLate } from './findings.ts';
import type { Study } from './study.ts';

export interface Failures extends FailureTable {
  readonly statements: readonly Statement[];
  /** What the table has that no other finding tells. */
  readonly findings: readonly Finding[];
}

/** Takes as long as solving the linkage several times over: not for every key press. */
export function findFailures(study: Study): Failures {
  const table = failureTable(study.travel);
  return { ...table, statements: statementsOf(study.travel, table), findings: findLate(study) };
}
