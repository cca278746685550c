/** What SARIF is told of the codes: each that occurs is a rule. */
import type { ProblemCode } from '../../definition/codes.ts';
import type { FindingCode } from '../../findings/codes.ts';
import { codeDoc, type CodeDoc } from '../codeDoc.ts';
import type { SarifDescriptor } from './log.ts';
import { sarifText } from './message.ts';

/** Rules of what the file itself demands; none of these is the code of a problem or a finding. */
export type RequirementRule = 'requirement-failed' | 'requirement-undecided';

export type RuleId = ProblemCode | FindingCode | RequirementRule;

/** Numbers the rules in the order in which they are first asked for. */
export interface RuleBook {
  indexOf(id: RuleId): number;
  /** Those that were asked for. */
  rules(): readonly SarifDescriptor[];
}

export function createRuleBook(): RuleBook {
  const ids: RuleId[] = [];
  return {
    indexOf(id) {
      const index = ids.indexOf(id);
      return index < 0 ? ids.push(id) - 1 : index;
    },
    rules: () => ids.map(descriptorOf),
  };
}

/**
 * The docs as text: `helpUri` must be an absolute address (3.49.12), and the docs have none. The examples are left out, as a rule's text
 * must double every brace.
 */
function descriptorOf(id: RuleId): SarifDescriptor {
  const { title, text, cure } = isRequirementRule(id) ? REQUIREMENT_DOCS[id] : codeDoc(id);
  const paragraphs = [...(text === '' ? [title] : text.split('\n\n')), `Cure: ${cure}`].map(sarifText);
  return {
    id,
    name: descriptorName(id),
    shortDescription: { text: sarifText(title) },
    help: {
      text: paragraphs.join('\n\n'),
      markdown: [`**${sarifText(title)}**`, ...(text === '' ? paragraphs.slice(1) : paragraphs)].join('\n\n'),
    },
  };
}

/** E.g. `RodEndTilt` of `rod-end-tilt`. */
function descriptorName(id: string): string {
  return id.replace(/(?:^|-)(.)/g, (_, letter: string) => letter.toUpperCase());
}

function isRequirementRule(id: RuleId): id is RequirementRule {
  return Object.hasOwn(REQUIREMENT_DOCS, id);
}

const REQUIREMENT_DOCS: Readonly<Record<RequirementRule, CodeDoc>> = {
  'requirement-failed': {
    title: 'The linkage does not meet a requirement of its file.',
    text: 'A line under `require` compares figures of the solved linkage with what is demanded, and the comparison does not hold. A position that is asked for and never reached counts as failed.',
    cure: 'Change the linkage until the actual figure lies within the limit, or the demand where it was too much.',
  },
  'requirement-undecided': {
    title: 'A requirement of the file cannot be decided.',
    text: 'A line under `require` asks for something that has no value: a column that is not there or not solved, a pedal position where the linkage cannot be assembled, or a formula that is not understood. It counts as not passed.',
    cure: 'Do what the reason says; most often a word is misspelt, or the part that it speaks of has an error of its own.',
  },
};
