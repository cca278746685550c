/**
 * `pedal`: what drives the linkage, a lever under the foot or, where the pedal is not known, a cable that is pulled.
 */
import type { Pedal, Reference } from '../definition.ts';
import { nearestWord } from '../names.ts';
import { sense } from './levers.ts';
import { optional, record, wordList } from './record.ts';
import { quantity, reference, word } from './scalars.ts';
import { defined, problem, type Reading, type Shape } from './shape.ts';
import { shortened } from '../source/shortened.ts';

/** The block `pedal`. */
export const pedal: Shape<Pedal> = record(
  {
    lever: optional(reference('lever'), { doc: 'The lever that the foot turns.', example: 'pedal', vital: true }),
    opens: optional(sense, { doc: 'The way it turns when the foot presses.', example: 'clockwise', vital: true }),
    travel: optional(quantity('angle', { above: 0 }), { doc: "Its rotation up to the pedal's own stop.", example: '22 deg', vital: true }),
    pad: optional(word('the name of an arm'), {
      doc: "Arm of the pedal's lever that the foot presses, square to the arm. Without it there is no pedal effort.",
      example: 'pad',
    }),
    cable: optional(reference('cable'), {
      doc: 'The cable that the unknown pedal pulls; that cable has no `from` and no `leaves`.',
      example: 'main',
      vital: true,
    }),
    pull: optional(quantity('length', { above: 0 }), {
      doc: "Cable taken in over the pedal's whole travel.",
      example: '42 mm',
      vital: true,
    }),
    lever_ratio: optional(quantity('number', { above: 0 }), {
      doc: 'Travel of the pad over travel of the cable; gives the effort at the pad.',
      example: '4.5',
    }),
  },
  (values, { node }, reading): Pedal | undefined => {
    const { lever, opens, travel, pad, cable, pull, lever_ratio: leverRatio } = values;
    if (cable !== undefined && pull !== undefined) return { kind: 'cable', span: node.span, cable, pull, ...defined({ leverRatio }) };
    if (lever === undefined || opens === undefined || travel === undefined) return undefined;
    const arm = pad === undefined ? undefined : padArm(pad, lever, reading);
    return { kind: 'lever', span: node.span, lever, opens, travel, ...defined({ pad: arm }) };
  },
  {
    choices: [
      {
        what: 'what the foot moves',
        forms: [
          { name: 'lever', needs: ['lever', 'opens', 'travel'], allows: ['pad'] },
          { name: 'cable', needs: ['cable', 'pull'], allows: ['lever_ratio'] },
        ],
      },
    ],
  },
);

function padArm(pad: Reference, lever: Reference, reading: Reading): Reference | undefined {
  const arms = [...(reading.declared.levers.get(lever.name)?.arms.keys() ?? [])];
  // `pedal.pad` says the same as `pad` where the lever is the pedal's.
  const prefix = `${lever.name}.`;
  const name = pad.name.startsWith(prefix) ? pad.name.slice(prefix.length) : pad.name;
  if (arms.includes(name)) return { name, span: pad.span };
  const nearest = nearestWord(name, arms);
  reading.report(
    problem('unknown-name', pad.span, `\`${lever.name}\` has no arm \`${shortened(name)}\``, {
      cure:
        nearest !== undefined
          ? `Did you mean \`${nearest}\`?`
          : arms.length === 0
            ? `Give \`${lever.name}\` an arm for the foot`
            : `Write ${wordList(arms, 'or')}`,
      replacements: nearest === undefined ? undefined : [{ span: pad.span, text: nearest }],
    }),
  );
  reading.unread('pedal.pad', pad.span);
  return undefined;
}
