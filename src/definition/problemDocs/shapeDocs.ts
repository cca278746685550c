/** Problems of keys and of the form of what stands at them. */
import type { ProblemDoc } from './problemDoc.ts';

export const SHAPE_DOCS = {
  'unknown-key': {
    what: 'The format has no such key at this place.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0], stop: {open: 40 deg}}
#                        ^^^^ error[unknown-key]: There is no key
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Take the key that the message offers, or look it up in the [reference](../reference.md). A note to yourself goes into a comment.',
  },
  'duplicate-key': {
    what: 'A key stands twice in one block; the first is read.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0], pivot: [10, 0]}
#                        ^^^^^ error[duplicate-key]: only the first is read
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Remove one of the two. Two parts of one kind stand in one block under two names.',
  },
  'missing-key': {
    what: 'A part lacks something that it cannot do without.',
    example: `format: 1
levers:
#^^^^^ error[missing-key]: The file has no \`pedal\`
  shaft: {pivot: [100, 0]}
`,
    cure: 'Write the key that the message names. Until then the part is left out of everything.',
  },
  'wrong-shape': {
    what: 'A list, a block, a single value or nothing stands where something of another form is needed, or keys that exclude each other stand together.',
    example: `format: 1
levers:
  pedal: {pivot: [0]}
#                ^^^ error[wrong-shape]: two or three figures
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Bring it into the form that the message names; the [reference](../reference.md) shows an example of each key.',
  },
  'wrong-value': {
    what: 'The value is of the right form and cannot mean anything here, such as a word that is not among the choices or a rod with both ends on one lever.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0]}
pedal: {lever: pedal, opens: upwards, travel: 40 deg}
#                            ^^^^^^^ error[wrong-value]: not \`upwards\`
`,
    cure: 'Take one of the values that the message names.',
  },
} as const satisfies Readonly<Record<string, ProblemDoc>>;
