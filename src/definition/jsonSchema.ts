/**
 * The format as a JSON Schema (draft-07), for editors and checkers that know nothing of this program.
 *
 * It is made from the shapes that the reader uses, so it lists the same keys, words and bounds. What a schema
 * cannot say (units, names that must exist, the load path) is left to the reader.
 */
import { PLACE_UNIT } from './dimensions.ts';
import { file } from './schema/file.ts';
import type { About, Bounds, FormChoice, KeyAbout } from './schema/shape.ts';

type Json = Readonly<Record<string, unknown>>;

const NAME = '[a-z][a-z0-9_]*';
const COLUMN = `^${NAME}\\.[a-z_]+$`;

/** The whole schema, draft 7, as plain data. */
export function generateJsonSchema(): object {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'Throttle file, format 1',
    description: 'A pedal-to-plate linkage: foot, pedal, cable, bellcrank, rods, throttle shaft, plates, sensor and springs.',
    ...schemaOf(file.about),
  };
}

function schemaOf(about: About): Json {
  switch (about.kind) {
    case 'quantity':
      return { type: ['number', 'string'], ...boundsOf(about.bounds) };
    case 'text':
      return { type: ['string', 'number', 'boolean'] };
    case 'figure':
      return { type: ['number', 'string', ...(about.empty ? ['null'] : [])] };
    case 'column':
      return {
        type: 'string',
        pattern: about.use === 'curve' ? `^(?:pedal\\.(?:effort|release)|${NAME}\\.(?:opening|area|fraction))$` : COLUMN,
      };
    case 'kept':
      return { type: 'string' };
    case 'fit':
      return { type: 'string', pattern: `^${NAME}(?:\\.[a-z0-9_]+)*$` };
    case 'choice':
      return { enum: Object.keys(about.choices) };
    case 'flag':
      return { type: 'boolean' };
    case 'reference':
      return { type: 'string', pattern: `^${NAME}$` };
    case 'part':
      return { type: 'string', pattern: `^${NAME}\\.${NAME}$` };
    case 'place': {
      const coordinates = { type: 'array', items: { type: ['number', 'string'] }, minItems: 2, maxItems: 3 };
      return about.named ? { anyOf: [coordinates, { type: 'string', pattern: `^${NAME}$` }] } : coordinates;
    }
    case 'direction':
      return { type: 'array', items: { type: ['number', 'string'] }, minItems: 2, maxItems: 3 };
    case 'pair':
      return { type: 'array', items: [schemaOf(about.first), schemaOf(about.second)], additionalItems: false, minItems: 2 };
    case 'list':
      return { type: 'array', items: schemaOf(about.of), minItems: about.least };
    case 'map':
      return {
        type: ['object', 'null'],
        ...(about.repeats === 'column'
          ? { propertyNames: { pattern: COLUMN } }
          : about.freeNames && about.repeats === undefined
            ? {}
            : { propertyNames: { pattern: `^${NAME}$` } }),
        additionalProperties: schemaOf(about.of),
      };
    case 'either':
      return { anyOf: about.forms.map(schemaOf) };
    case 'constant':
      return { const: about.value };
    case 'record':
      return recordSchema(about);
  }
}

function recordSchema({ keys, choices }: Extract<About, { kind: 'record' }>): Json {
  const names = Object.keys(keys);
  const required = names.filter((name) => keys[name]?.required === true);
  return {
    type: 'object',
    properties: Object.fromEntries(Object.entries(keys).map(([name, key]) => [name, keySchema(key)])),
    additionalProperties: false,
    ...(required.length === 0 ? {} : { required }),
    ...(choices.length === 0 ? {} : { allOf: choices.map(choiceSchema) }),
  };
}

function keySchema({ shape, doc, fallback, example }: KeyAbout): Json {
  const unit = shape.kind === 'quantity' ? PLACE_UNIT[shape.dimension] : '';
  const notes = [
    doc,
    ...(unit === '' ? [] : [`A bare number is in ${unit}.`]),
    ...(fallback === undefined ? [] : [`Where left out: ${fallback}.`]),
  ];
  return { description: notes.join(' '), ...(example === undefined ? {} : { examples: [example] }), ...schemaOf(shape) };
}

/** Exactly one of the forms, with all it needs. */
function choiceSchema(choice: FormChoice): Json {
  return {
    oneOf: choice.forms.map((form) => {
      const own = new Set([...form.needs, ...form.allows]);
      const others = choice.forms.flatMap((other) => [...other.needs, ...other.allows]).filter((key) => !own.has(key));
      return {
        required: form.needs,
        ...(others.length === 0 ? {} : { not: { anyOf: [...new Set(others)].map((key) => ({ required: [key] })) } }),
      };
    }),
  };
}

/** Bounds are in the unit of the place, which is that of a bare number; a text with a unit is not judged. */
function boundsOf({ least, most, above, below, whole, notZero }: Bounds): Json {
  return {
    ...(least === undefined ? {} : { minimum: least }),
    ...(most === undefined ? {} : { maximum: most }),
    ...(above === undefined ? {} : { exclusiveMinimum: above }),
    ...(below === undefined ? {} : { exclusiveMaximum: below }),
    ...(whole === true ? { multipleOf: 1 } : {}),
    ...(notZero === true ? { not: { const: 0 } } : {}),
  };
}
