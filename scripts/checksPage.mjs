/**
 * The page `docs/checks.md`: every figure of `test/textbook/values/`, with where it comes from. Whatever there carries a source is a
 * row; what a module exports is a table.
 */

/** @param {readonly {file: string, doc: string, exports: Readonly<Record<string, unknown>>}[]} modules */
export function checksPage(modules) {
  const sections = modules.map(section).filter((text) => text !== '');
  return `# Checked figures

Figures from outside this project that the tests hold, each with its source. Generated from the tables that the tests themselves read, by
\`npm run generate\`.

- **found**: read in the source named.
- **from memory**: recalled from the source named and not read again; edition and number may be off.
- **ours**: made here, with no publication behind it.
- _answers ours_: the source gives the case; the figures were worked out here by two independent methods.

Beside these the tests hold second methods (root finding with mathjs, rigid bodies of planck, free-body statics, quadrature), differences for
derivatives, and properties that must not change when a linkage is turned, moved, scaled or mirrored.

${sections.join('\n\n')}
`;
}

function section({ file, doc, exports }) {
  const tables = Object.entries(exports).flatMap(([name, value]) => {
    const rows = rowsOf(value);
    return rows.length === 0 ? [] : [table(name, rows)];
  });
  if (tables.length === 0) return '';
  return `## ${titleOf(file)}\n\n${doc}\n\n${tables.join('\n\n')}`;
}

/** Objects with a source, however deep. */
function rowsOf(value) {
  if (Array.isArray(value)) return value.flatMap(rowsOf);
  if (typeof value !== 'object' || value === null) return [];
  if (typeof value.source === 'string' && typeof value.status === 'string') return [value];
  return Object.values(value).flatMap(rowsOf);
}

function table(name, rows) {
  const lines = rows.map((row) => {
    const { source, status, answers, note, name: title, ...figures } = row;
    const standing = answers === undefined || answers === status ? `**${status}**` : `**${status}**, _answers ${answers}_`;
    const from = note === undefined ? source : `${source}. ${note}`;
    return `| ${[title ?? '', figuresText(figures), standing, from].map(cell).join(' | ')} |`;
  });
  return [`### ${wordsOf(name)}`, '', '| case | figures | status | source |', '| --- | --- | --- | --- |', ...lines].join('\n');
}

/** How closely a figure is held is said in words; everything else as it stands. */
function figuresText(figures) {
  return Object.entries(figures)
    .map(([key, value]) => `${wordsOf(key)} ${valueText(value)}`)
    .join('; ');
}

function valueText(value) {
  if (Array.isArray(value)) return `[${value.map(valueText).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    return `(${Object.entries(value)
      .map(([key, each]) => `${key} ${valueText(each)}`)
      .join(', ')})`;
  }
  if (typeof value === 'function') return 'as a function';
  return typeof value === 'number' ? String(Number(value.toPrecision(12))) : String(value);
}

const cell = (text) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const wordsOf = (name) => name.replace(/([a-z])([A-Z])/g, (_, before, after) => `${before} ${after.toLowerCase()}`);
const titleOf = (file) => `${file[0].toUpperCase()}${wordsOf(file.slice(1).replace(/\.ts$/, ''))}`;
