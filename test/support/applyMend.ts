/** Carries a finding's mend out as an editor would: solves for the figure, writes it into the text, and solves the new text. */
import { addKey, applyEdits, formatQuantity, setFigure } from '../../src/definition/edit.ts';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import type { FindingCode } from '../../src/findings/codes.ts';
import type { Finding, Mend } from '../../src/findings/finding.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { solveFor } from '../../src/studies/solveFor.ts';
import { foundBy } from './foundBy.ts';
import { walkValues } from './walkValues.ts';

export interface Mended {
  readonly finding: Finding;
  readonly mend: Mend;
  /** The new value, SI. */
  readonly value: number;
  readonly text: string;
  readonly answers: Answers;
  /** `code part` of what is found afterwards. */
  readonly left: readonly string[];
}

/**
 * Mends the only finding with this code (about this part, where one is named), also one told beside its cause. Throws where it has no mend or none can be solved
 * for between the bounds; of several values it takes the one nearest to that of the file.
 */
export function applyMend(text: string, code: FindingCode, part?: string): Mended {
  const before = solve(text);
  const found = foundBy(before, code).filter((each) => part === undefined || each.part === part);
  const [finding] = found;
  if (finding?.mend === undefined || found.length > 1)
    throw new Error(`${found.length} findings ${code}, mend ${String(finding?.mend?.unknown)}`);
  const { definition } = before;
  const path = definition && findLoadPath(definition).path;
  const mechanism = definition && path && compileMechanism(definition, path);
  if (definition === undefined || mechanism === undefined) throw new Error('it should compile');
  const { mend } = finding;
  const written = walkValues(definition).find((value) => value.path === mend.unknown);
  const nominal = written?.nominal ?? mechanism.dimensions.find((each) => each.path === mend.unknown)?.nominal ?? NaN;
  const wide = written?.dimension === 'angle' ? WIDE : 0.9 * Math.abs(nominal);
  const reach = mend.outcome.kind === 'itself' ? 2 * Math.abs(mend.target - nominal) : wide;
  const solved = solveFor(mechanism, { ...mend, from: nominal - reach, to: nominal + reach });
  if (solved.kind !== 'solved') throw new Error(solved.kind);
  const [root] = [...solved.roots].sort((a, b) => Math.abs(a.value - nominal) - Math.abs(b.value - nominal));
  if (root === undefined) throw new Error(`no ${mend.unknown} gives ${mend.target}: nearest ${JSON.stringify(solved.nearest)}`);
  const key = mend.unknown.split('.').at(-1) ?? '';
  const edit = written
    ? setFigure(text, written, root.value)
    : addKey(text, mend.unknown.slice(0, -key.length - 1), key, formatQuantity(root.value, 'mm') ?? '');
  if (edit === undefined) throw new Error(`${mend.unknown} cannot be written`);
  const after = applyEdits(text, [edit]);
  const answers = solve(after);
  return {
    finding,
    mend,
    value: root.value,
    text: after,
    answers,
    left: answers.findings.map((each) => `${each.code} ${each.part}`),
  };
}

/** rad; to either side of an angle as drawn. */
const WIDE = 1.2;
