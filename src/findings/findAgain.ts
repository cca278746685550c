/**
 * Findings of a text that is being written. A comment, a title, a requirement, a blank line, or a figure typed and taken back leave the
 * linkage as it was: what was found of it then is told again, at the places where the text has it now, and nothing is solved.
 */
import type { Definition } from '../definition/definition.ts';
import { sameLinkage, type Moving } from '../definition/sameLinkage.ts';
import type { Span } from '../definition/span.ts';
import { later } from '../travel/once.ts';
import { takeOverFrom, type Travel } from '../travel/travel.ts';
import type { Finding } from './finding.ts';
import { findAll } from './findings.ts';
import type { Study } from './study.ts';

/**
 * The same as `findAll` answers, worked out when first asked for. Undefined where nothing can be solved.
 * @param study of this definition, asked for where it has to be solved; undefined where it cannot be
 */
export function findAgain(definition: Definition, study: () => Study | undefined): (() => readonly Finding[]) | undefined {
  for (const known of lately) {
    const moving = sameLinkage(known.definition, definition);
    if (moving === undefined) continue;
    // Where a place is unknown it is found anew.
    const findings = later(() => allMoved(known.findings(), moving) ?? findAll(study()!));
    keep({ definition, findings, travel: known.travel }, known);
    takeOverFrom(known.travel);
    return findings;
  }
  const solved = study();
  if (solved === undefined) return undefined;
  const findings = later(() => findAll(solved));
  keep({ definition, findings, travel: solved.travel });
  return findings;
}

/** What was found of a linkage. */
interface Found {
  readonly definition: Definition;
  readonly findings: () => readonly Finding[];
  readonly travel: Travel;
}

/** The newest first. */
let lately: readonly Found[] = [];

/** The text before the last edit, and the one after it: to either one returns. */
const MOST_KEPT = 2;

/** @param instead is forgotten */
function keep(found: Found, instead?: Found): void {
  lately = [found, ...lately.filter((each) => each !== instead)].slice(0, MOST_KEPT);
}

/** Undefined where a place of one is unknown. */
function allMoved(findings: readonly Finding[], moving: Moving): readonly Finding[] | undefined {
  const all: Finding[] = [];
  for (const finding of findings) {
    const moved = movedFinding(finding, moving);
    if (moved === undefined) return undefined;
    all.push(moved);
  }
  return all;
}

function movedFinding(finding: Finding, moving: Moving): Finding | undefined {
  const span = moving(finding.span);
  const related = finding.related && allAt(finding.related, moving);
  const following = finding.following && allMoved(finding.following, moving);
  if (span === undefined) return undefined;
  if ((finding.related !== undefined && related === undefined) || (finding.following !== undefined && following === undefined))
    return undefined;
  return { ...finding, span, ...(related && { related }), ...(following && { following }) };
}

function allAt<Placed extends { readonly span: Span }>(all: readonly Placed[], moving: Moving): readonly Placed[] | undefined {
  const moved: Placed[] = [];
  for (const each of all) {
    const span = moving(each.span);
    if (span === undefined) return undefined;
    moved.push({ ...each, span });
  }
  return moved;
}
