/**
 * The whole file: its blocks, in load-path order, which is also the order in which they are read, since points
 * use `let` values and everything else uses points.
 */
import type { PointDefinition } from '../definition.ts';
import type { ReadDefinition } from '../settle.ts';
import { couplings, cables, rods, slots } from './joints.ts';
import { keptPart } from './keptPart.ts';
import { lets } from './let.ts';
import { levers } from './levers.ts';
import { measured } from './measured.ts';
import { pedal } from './pedal.ts';
import { coordinates, shaped } from './places.ts';
import { mapOf, optional, record } from './record.ts';
import { requirements } from './require.ts';
import { text } from './scalars.ts';
import { defined, named, reportShape, type Shape } from './shape.ts';
import { springs } from './springs.ts';
import { keepOuts, limits, movements } from './surroundings.ts';
import { plates, sensors } from './throttle.ts';
import { tune } from './tune.ts';

/** The format that this program reads. */
export const FORMAT = 1;

const format: Shape<number> = {
  about: { kind: 'constant', value: FORMAT },
  // Checked before all else, in `read.ts`; here only for its shape.
  read: (node, site, reading) =>
    node.kind === 'scalar' ? FORMAT : reportShape(node, site, reading, `the number ${FORMAT}`, `Write \`format: ${FORMAT}\``),
};

const points = mapOf(
  shaped(keptPart(coordinates('a place')), (place, _node, site, reading): PointDefinition => {
    reading.addPoint(site.name, place);
    return { ...named(site), place };
  }),
  'point',
);

const NOT_IN_FORMAT = `Format ${FORMAT} does not describe this; it has levers, cables, rods, slots and couplings`;

const formatKey = optional(format, { doc: 'The format of the file.', example: String(FORMAT) });

/** The whole file. */
export const file: Shape<ReadDefinition> = record(
  {
    format: { ...formatKey, about: { ...formatKey.about, required: true } },
    title: optional(text('a title'), { doc: 'What the linkage is, in one line.', example: 'Four-barrel conversion, rev B' }),
    let: optional(lets, {
      doc: 'Named quantities and formulas, for use in all that follows; a formula may use earlier ones.',
      example: '{reach: 38 mm ± 0.1 mm, half: reach / 2}',
    }),
    points: optional(points, {
      doc: 'Named places, `[x, y]` or `[x, y, z]`, in the drawn position.',
      example: '{shaft_centre: [184, 62]}',
    }),
    levers: optional(levers, { doc: 'Everything that turns about a fixed axis, by name.' }),
    pedal: optional(pedal, { doc: 'What the foot moves.', example: '{lever: pedal, opens: clockwise, travel: 22 deg, pad: pad}' }),
    cables: optional(cables, { doc: 'Cables, by name; a cable only pulls.' }),
    rods: optional(rods, { doc: 'Rods from pin to pin, by name. A rod keeps its pins at its length, on the side on which it was drawn.' }),
    slots: optional(slots, { doc: 'Pins that run in the fork of another lever, by name.' }),
    couplings: optional(couplings, { doc: 'Levers that turn one another in a fixed ratio, by name.' }),
    plates: optional(plates, { doc: 'Throttle plates, by name of the set.' }),
    sensors: optional(sensors, { doc: 'Position sensors, by name.' }),
    springs: optional(springs, { doc: 'Springs, by name.' }),
    keep_out: optional(keepOuts, { doc: 'What stands in the way, by name.' }),
    movements: optional(movements, { doc: 'Movements of the engine with the pedal still, by name.' }),
    limits: optional(limits, {
      doc: 'From which figure on a finding is a warning or an error.',
      example: '{transmission: [40 deg, 25 deg]}',
    }),
    require: optional(requirements, {
      doc: 'What the linkage must do: an expression by any name, decided on the solved table.',
      example: '{opens fully: "at(100%, shaft.opening) >= 80 deg"}',
    }),
    tune: optional(tune, {
      doc: 'A search for dimensions: which values of `let` are free, the curve that is wanted, and what must hold. Nothing of it changes how the linkage is solved.',
    }),
    measured: optional(measured, {
      doc: 'Readings of the built car, from which its dimensions are found. Nothing of it changes how the linkage is solved.',
    }),
  },
  (values): ReadDefinition => ({
    lets: values.let ?? [],
    points: values.points ?? [],
    levers: values.levers ?? [],
    cables: values.cables ?? [],
    rods: values.rods ?? [],
    slots: values.slots ?? [],
    couplings: values.couplings ?? [],
    plates: values.plates ?? [],
    sensors: values.sensors ?? [],
    springs: values.springs ?? [],
    keepOuts: values.keep_out ?? [],
    movements: values.movements ?? [],
    limits: values.limits ?? [],
    requirements: values.require ?? [],
    ...defined({ title: values.title, pedal: values.pedal, tune: values.tune, measured: values.measured }),
  }),
  {
    foreign: {
      cams: NOT_IN_FORMAT,
      cam: NOT_IN_FORMAT,
      rollers: NOT_IN_FORMAT,
      slides: NOT_IN_FORMAT,
      sliders: NOT_IN_FORMAT,
      slider: NOT_IN_FORMAT,
      floating: NOT_IN_FORMAT,
      push_pull: NOT_IN_FORMAT,
      inputs: NOT_IN_FORMAT,
    },
  },
);
