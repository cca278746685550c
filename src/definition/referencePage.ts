/**
 * The format's reference page, in Markdown, made from the shapes that the reader uses.
 */
import { PROBLEM_CODES } from './codes.ts';
import { COLUMNS } from './columns.ts';
import { PLACE_UNIT, type Dimension } from './dimensions.ts';
import { CONSTANTS, FUNCTIONS } from './formula/functions.ts';
import { describeDimension } from './formula/kind.ts';
import { NAME_PATTERN, RESERVED } from './names.ts';
import { PROBLEM_DOCS } from './problemDocs.ts';
import { FITTING_UNITS, UNITS } from './quantity/units.ts';
import { file } from './schema/file.ts';
import type { About, Bounds, FormChoice, KeyAbout } from './schema/shape.ts';

export function generateReferencePage(): string {
  const sections = [
    INTRODUCTION,
    GROUND_RULES,
    unitsSection(),
    FORMULAS,
    functionsSection(),
    namesSection(),
    ...blockSections(),
    MOTION,
    columnsSection(),
    NOT_DESCRIBED,
    problemsSection(),
  ];
  return `${sections.map((section) => section.trim()).join('\n\n')}\n`;
}

const INTRODUCTION = `
<!-- Generated from src/definition/schema. Do not edit. -->

# The throttle file, format 1

A throttle file describes one linkage from the accelerator pedal to the throttle plates. It is YAML 1.2, named
\`*.throttle.yaml\`, and reads in load-path order: foot, pedal, cable, bellcrank, rod, throttle shaft, plates, sensor,
springs.
`;

const GROUND_RULES = `
## Ground rules

- **Drawn position.** Everything is drawn with the foot off and the plates on their idle stop. Every place and angle is of that position; motion is measured from it.
- **Frame.** Right-handed, millimetres. A planar linkage lies in the xy plane and needs no z; a place of two figures has z = 0.
- **Rotation** is positive by the right-hand rule about the lever's axis: \`counterclockwise\` is positive and \`clockwise\` negative, as seen with the axis pointing at the viewer.
- **Opening** of a lever is its rotation counted in its opening direction, 0 as drawn.
- **References.** A part of a lever is written \`lever.part\`. A part may be used above the place where it is described.
- A file with errors still gives all that does not hang on the broken part.
- A file of more than 256 kB is not parsed. Anchors and aliases work, within a bound; merge keys and tags do not. Two aliases of one figure are one dimension.
`;

const FORMULAS = `
## Quantities and formulas

- A **quantity** is a number and a unit: \`38 mm\`, \`1.5 inch\`, \`25 deg\`, \`25°\`, \`2.2 N*mm/deg\`, \`35 %\`. \`·\`, \`²\`, \`µ\` and no-break spaces are accepted. A bare number has the unit of its place. \`1,5\`, \`012\`, hexadecimal, \`.inf\` and values over several lines are not quantities.
- A **tolerance** follows a plain quantity: \`38 mm ± 0.1 mm\`, \`38 mm ± 0.1\`, \`38 mm +/- 0.1 mm\`, \`38 mm +0.2/-0.1 mm\`. Two signed terms without the slash are an error, never arithmetic.
- A **formula** is an expression over \`let\` names: numbers with units, names, parentheses, \`+ - * / ^\`, comparisons, \`and or not\` and the functions below. At most 500 characters and 50 deep. A unit stands only right after a number. \`%\` after a number divides it by 100 and does nothing else.
- Dimensions are checked: trigonometric functions take an angle, their inverses return one, length × angle is a length, a torque is no energy.
- Comparisons hold to 1e-9 relative, so that a rounded figure passes the requirement it was solved for.
- Inside \`{}\` or \`[]\` a formula with \`, [ ] { }\` must be put in quotes.
`;

const MOTION = `
## How it moves

- **Load path.** A tree from the pedal: each lever has one driver. Levers joined by rods, slots and couplings form a rigid group; cables join groups, and only pull.
- **Rest.** With the foot off, springs press every group closed until the first of its closed stops meets. With all lengths as drawn it rests as drawn; with a rod off its drawn length it rests elsewhere, and a shaft whose stop is not the first to meet is held open.
- **Cable.** Its pull is the change of the distance from the driving pin to its housing end, or the length wound on a drum. What is left after the slack at rest shortens the distance of the driven pin to its housing end, or turns the driven drum.
- **Open stops.** The first contact stops its whole rigid group. The nearest cable upstream takes the rest of the pedal's travel as stretch; without one, the pedal stops there.
- **Full opening** of a lever with plates is its open stop; without one, 90° less seat and idle.
- **Plate.** Its angle from square to the bore is seat + idle + opening.
- **Sensor.** Its angle is \`at_closed\` + opening, or less the opening where \`reversed\`.
- **Springs.** Extension: nothing below the free length, else initial tension + rate × (length − free length). Compression: rate × (free length − length), never below 0. Torsion: preload + rate × opening. The rate follows from \`wire\` or \`strip\` where these are given: of a torsion spring E d⁴ / (64 D n) per radian, by the theory (practice often takes 6 % less), of others G d⁴ / (8 D³ n), of a spiral E b t³ / (12 L) per radian. A torque is positive where it closes. A cable passes torque from its driven end to its driving end only, so a spring at the pedal never closes a plate.
`;

const NOT_DESCRIBED = `
## Not described in format 1

Cam and roller, linear slides, floating bellcranks with three pins, push-pull quadrants with two cables, second inputs.
`;

function unitsSection(): string {
  const dimensions = Object.keys(PLACE_UNIT) as Dimension[];
  const rows = dimensions.map(
    (dimension) => `| ${dimension} | ${code(PLACE_UNIT[dimension] || '–')} | ${FITTING_UNITS[dimension].map(code).join(' ')} |`,
  );
  return [
    '## Units',
    '',
    'Compound units are made with `*` or `·`, `/` and whole exponents (`^2`, `²`) from these: ' +
      [...UNITS.keys()].map(code).join(' ') +
      '. Conversions are exact.',
    '',
    '| quantity | a bare number is in | also, among others |',
    '| --- | --- | --- |',
    ...rows,
  ].join('\n');
}

function functionsSection(): string {
  const rows = [...FUNCTIONS].map(
    ([name, about]) => `| ${code(name)} | ${cell(about.summary)} | ${about.requireOnly ? 'only in `require`' : ''} |`,
  );
  const constants = [...CONSTANTS.keys()].map((name) => `| ${code(name)} | constant | |`);
  return ['### Functions', '', '| name | gives | |', '| --- | --- | --- |', ...rows, ...constants].join('\n');
}

function namesSection(): string {
  const reserved = [...RESERVED].filter((word) => NAME_PATTERN.test(word));
  return `
## Names

A name is made of small letters, figures and \`_\`, and begins with a letter. Names in \`let\` and names of levers, cables, rods,
slots, couplings, plates, sensors and springs are each used once in the file; arms and drums once in their lever; points,
obstacles and movements once in their block; requirements may be called anything. Only a lever may be called \`pedal\`.

Taken by the formula language: ${reserved.map(code).join(' ')}.`;
}

function blockSections(): string[] {
  if (file.about.kind !== 'record') return [];
  const top = ['## Blocks', '', ...keyTable(file.about.keys)].join('\n');
  const blocks = Object.entries(file.about.keys).flatMap(([name, key]) => nested(name, key.shape, 3));
  return [top, ...blocks];
}

/** A section for each record that is reached from here. */
function nested(path: string, about: About, level: number): string[] {
  switch (about.kind) {
    case 'record': {
      const head = [`${'#'.repeat(Math.min(level, 6))} ${code(path)}`, '', ...choiceLines(about.choices), ...keyTable(about.keys)].join(
        '\n',
      );
      return [head, ...Object.entries(about.keys).flatMap(([name, key]) => nested(`${path}.${name}`, key.shape, level + 1))];
    }
    case 'map':
      return nested(`${path}.<name>`, about.of, level);
    case 'either':
      return about.forms.flatMap((form) => nested(path, form, level));
    case 'list':
      return nested(path, about.of, level);
    default:
      return [];
  }
}

function choiceLines(choices: readonly FormChoice[]): string[] {
  return choices.flatMap((choice) => {
    const forms = choice.forms.map(
      (form) => `${form.needs.map(code).join(', ')}${form.allows.length === 0 ? '' : ` (and ${form.allows.map(code).join(', ')})`}`,
    );
    return [`Exactly one of: ${forms.join(' — or ')}.`, ''];
  });
}

function keyTable(keys: Readonly<Record<string, KeyAbout>>): string[] {
  const rows = Object.entries(keys).map(([name, key]) => {
    const need = key.required ? 'required' : key.fallback === undefined ? '' : cell(key.fallback);
    const example = key.example === undefined ? '' : code(key.example);
    return `| ${code(name)} | ${cell(key.doc)} | ${cell(formOf(key.shape))} | ${need} | ${example} |`;
  });
  return ['| key | meaning | form | where left out | example |', '| --- | --- | --- | --- | --- |', ...rows];
}

function formOf(about: About): string {
  switch (about.kind) {
    case 'quantity': {
      const unit = PLACE_UNIT[about.dimension];
      return [`${describeDimension(about.dimension)}${unit === '' ? '' : `, bare in ${unit}`}`, ...boundWords(about.bounds, unit)].join(
        '; ',
      );
    }
    case 'text':
      return about.what;
    case 'figure':
      return about.what;
    case 'column':
      return 'a column of the table';
    case 'kept':
      return 'a key of `limits`, `full_opening`, `clearance`, `closing_torque` or the name of a requirement';
    case 'fit':
      return 'a name of `let`, or `part.key`';
    case 'choice':
      return Object.entries(about.choices)
        .map(([word, doc]) => `${code(word)}: ${doc}`)
        .join('; ');
    case 'flag':
      return '`true` or `false`';
    case 'reference':
      return `name of a ${about.to}`;
    case 'part':
      return about.parts.includes('drum') ? '`lever.part`, a pin or a drum' : '`lever.part`, a pin';
    case 'place':
      return about.named ? '`[x, y]`, `[x, y, z]` or a name from `points`' : '`[x, y]` or `[x, y, z]`';
    case 'direction':
      return '`[x, y]` or `[x, y, z]`, plain numbers';
    case 'pair':
      return `two of: ${formOf(about.first)}${formOf(about.first) === formOf(about.second) ? '' : `, ${formOf(about.second)}`}`;
    case 'list':
      return `list of ${formOf(about.of)}`;
    case 'record':
      return 'block of keys';
    case 'map':
      return `${about.what} by name`;
    case 'either':
      return [...new Set(about.forms.map(formOf))].join(', or ');
    case 'constant':
      return code(String(about.value));
  }
}

function boundWords(bounds: Bounds, unit: string): string[] {
  const figure = (value: number): string => `${value}${value === 0 || unit === '' ? '' : ` ${unit}`}`;
  return [
    ...(bounds.above === undefined ? [] : [`above ${figure(bounds.above)}`]),
    ...(bounds.least === undefined ? [] : [`${figure(bounds.least)} or more`]),
    ...(bounds.below === undefined ? [] : [`below ${figure(bounds.below)}`]),
    ...(bounds.most === undefined ? [] : [`${figure(bounds.most)} or less`]),
    ...(bounds.whole === true ? ['whole'] : []),
    ...(bounds.notZero === true ? ['not 0'] : []),
  ];
}

function columnsSection(): string {
  const rows = Object.entries(COLUMNS).flatMap(([owner, columns]) =>
    Object.entries(columns).map(([name, { dimension, percent, doc }]) => {
      const unit = percent === true ? '%' : PLACE_UNIT[dimension] || '–';
      return `| ${code(owner === 'pedal' ? `pedal.${name}` : `<${owner}>.${name}`)} | ${unit} | ${cell(doc)} |`;
    }),
  );
  return [
    '## Columns',
    '',
    'A solved file is a table with one row per station of the pedal. `require` uses these names; columns in % are fractions in formulas.',
    'The ratio of a lever is in deg/mm where the pedal is a cable.',
    '',
    '| column | unit | meaning |',
    '| --- | --- | --- |',
    ...rows,
  ].join('\n');
}

function problemsSection(): string {
  const rows = PROBLEM_CODES.flatMap((name) => [
    `### ${name}`,
    '',
    PROBLEM_DOCS[name].what,
    '',
    `[Example and cure](codes/${name}.md)`,
    '',
  ]);
  return ['## Problems', '', ...rows].join('\n');
}

function code(text: string): string {
  return `\`${text.replaceAll('|', '\\|')}\``;
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
