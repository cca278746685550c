/** Every rule's file carries its page of the docs, and the example on the page raises what it says. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ruleNameOf, takeDocApart } from '../../scripts/ruleDocs.mjs';
import { FINDING_CODES } from '../../src/findings/codes.ts';
import { LATE, RULES } from '../../src/findings/findings.ts';
import { createStudy, type Study } from '../../src/findings/study.ts';
import { solve } from '../../src/solve.ts';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { checkAnnotated } from '../support/annotatedFile.ts';

const FOLDER = new URL('../../src/findings/rules/', import.meta.url);
const sourceOf = (code: string): string => readFileSync(new URL(`${ruleNameOf(code)}.ts`, FOLDER), 'utf8');

it('has one file for each code, named by it, and no other', () => {
  expect(readdirSync(FOLDER).sort()).toEqual(FINDING_CODES.map((code) => `${ruleNameOf(code)}.ts`).sort());
});

it('has one rule for each code, exported under its name', () => {
  expect(Object.keys(RULES).sort()).toEqual([...FINDING_CODES].sort());
  for (const code of FINDING_CODES) {
    expect(RULES[code].name).toBe(ruleNameOf(code));
    expect([...sourceOf(code).matchAll(/^export (?:function|const|interface|type) (\w+)/gm)].map(([, name]) => name)).toEqual([
      ruleNameOf(code),
    ]);
  }
});

describe.each(FINDING_CODES)('%s', (code) => {
  const doc = takeDocApart(sourceOf(code));

  it('says what it is in a sentence, why it matters and what cures it', () => {
    expect(doc.title).toMatch(/^[A-Z][^\n]*[^.]\.$/);
    expect(doc.title.length).toBeLessThan(110);
    expect(doc.text.length).toBeGreaterThan(100);
    expect(doc.text).toMatch(/\.$/);
    expect(doc.cure).toMatch(/^[A-Z].*\.$/);
    expect(doc.rest).toBe('');
  });

  it('has a small example that raises it and exactly what else is written under its lines', () => {
    expect(doc.example.split('\n').filter((line) => !/^\s*#/.test(line)).length).toBeLessThanOrEqual(19);
    const { findings, problems } = checkAnnotated(doc.example, LATE.has(code));
    expect(problems).toEqual([]);
    // As a finding of its own, or beside the cause that it follows from.
    expect(findings.flatMap(({ code: own, following = [] }) => [own, ...following.map((each) => each.code)])).toContain(code);
  });

  it('comes from its own rule, which finds nothing else', () => {
    const found = RULES[code](studyOf(doc.example));
    expect(found.length).toBeGreaterThan(0);
    expect(new Set(found.map((finding) => finding.code))).toEqual(new Set([code]));
  });
});

/** Solved anew, with nothing kept of another text. */
function studyOf(text: string): Study {
  const { definition, columns, study } = solve(text);
  const path = definition && findLoadPath(definition).path;
  const mechanism = definition && path && compileMechanism(definition, path);
  if (definition === undefined || mechanism === undefined) throw new Error(`this does not compile:\n${text}`);
  return { ...createStudy(definition, solveTravel(mechanism), columns), ...(study?.untold !== undefined && { untold: study.untold }) };
}
