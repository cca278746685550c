/** Problems of the file as a whole. */
import type { ProblemDoc, UnshownProblemDoc } from './problemDoc.ts';

export const TOO_LARGE_DOC: UnshownProblemDoc = {
  what: 'The file has more than 256 kB of UTF-8; it is not parsed.',
  cure: 'Keep one linkage a file, and take out whatever is no part of it. A linkage of a hundred parts has some ten kilobytes.',
};

export const FILE_DOCS = {
  'file-empty': {
    what: 'The file holds nothing but blanks and comments.',
    example: `# nothing yet
#^^^^^^^^^^^^ error[file-empty]: Begin with \`format: 1\`
`,
    cure: 'Begin with `format: 1`, then `levers:`.',
  },
  'yaml-syntax': {
    what: 'The text is not YAML at this place: a bracket or quote not closed, a tab in the indentation, a line that does not line up, a missing colon or comma.',
    example: `format: 1
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
levers:
  pedal: {pivot: [0, 0]
#        ^ error[yaml-syntax]: is opened here and not closed
`,
    cure: 'Mend the text where the mark stands. A bracket is marked where it is opened, since that is where its partner was forgotten.',
  },
  'alias-bound': {
    what: 'An alias stands inside the value that it repeats, or aliases repeat more values than any linkage has.',
    example: `format: 1
title: Two barrels
let: &all
  reach: *all
#        ^^^^ error[alias-bound]: inside the value
`,
    cure: 'Write the value out, or set the anchor on a value that does not hold the alias.',
  },
  'multiple-documents': {
    what: 'A second YAML document begins with `---`; only the first is read.',
    example: `format: 1
title: Two barrels
---
#^^ error[multiple-documents]: Remove the line
title: Four barrels
`,
    cure: 'Remove the line, or put the second linkage into a file of its own.',
  },
  'format-missing': {
    what: 'The file does not say `format: 1`.',
    example: `title: Four barrels
#^^^^ error[format-missing]: Write \`format: 1\` as the first line
`,
    cure: 'Write `format: 1` as the first line. A later version of the format can then tell how the file is meant.',
  },
  'format-unsupported': {
    what: 'The file says another format than 1; nothing of it is read.',
    example: `format: 2
#       ^ error[format-unsupported]: format 1, not
title: Four barrels
`,
    cure: 'Write `format: 1`, or read the file with a version that knows its format.',
  },
} as const satisfies Readonly<Record<string, ProblemDoc>>;
