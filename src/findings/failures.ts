/** Every single failure, with what is found about it and how it stands to the figures of rules. */
import { failureTable, type FailureTable } from '../failures/failureTable.ts';
import { statementsOf, type Statement } from '../failures/statements.ts';
import type { Finding } from './finding.ts';
import { later } from '../travel/once.ts';
import { findLate } from './findings.ts';
import type { Study } from './study.ts';
import { toleranceMisses } from './toleranceMisses.ts';

export interface Failures extends FailureTable {
  /** Asks for all times. */
  readonly statements: readonly Statement[];
  /** What the table has that no other finding tells. Asks for no times. */
  readonly findings: readonly Finding[];
  /** These and what else is told once typing rests, such as what tolerances do. */
  readonly late: readonly Finding[];
}

/** All of it takes as long as solving the linkage several times over: not for every key press. Worked out as it is asked for. */
export function findFailures(study: Study): Failures {
  const table = failureTable(study.travel);
  const late = later(() => findLate(study));
  const statements = later(() => statementsOf(study.travel, table));
  return {
    failures: table.failures,
    notChecked: table.notChecked,
    get whole() {
      return table.whole;
    },
    get rows() {
      return table.rows;
    },
    get assumptions() {
      return table.assumptions;
    },
    get fromPart() {
      return table.fromPart;
    },
    get findings() {
      return late().filter(({ code }) => code === 'failure-holds-open');
    },
    get late() {
      return late();
    },
    get statements() {
      return statements();
    },
    *work(wanted) {
      yield* table.work(wanted);
      if (wanted !== 'closing') return;
      const all = table.failures.length + 1;
      for (const _ of toleranceMisses(study).go()) yield { done: all, all };
    },
  };
}
