/**
 * Lint rules. Besides the type-checked sets they hold the import rules of ARCHITECTURE.md: which folder may import
 * which. Comments cannot switch a rule off; a rule that does not fit is changed here, for all.
 */
import { builtinModules } from 'node:module';
import eslint from '@eslint/js';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';
import { ALONE } from './vitest.config.mjs';

/**
 * The core, lowest layer first. A layer may import itself and those before it, never one after it. `solve.ts` is a
 * file, the rest are folders of `src/`.
 */
const LAYERS = [
  ['numeric'],
  ['definition'],
  ['kinematics'],
  ['travel'],
  ['forces', 'plates', 'sensor', 'clearance'],
  ['table'],
  ['requirements'],
  ['failures'],
  ['findings'],
  ['studies'],
  ['solve.ts'],
  ['language', 'outputs', 'protocol', 'picture', 'edits', 'compared'],
];

const FACES = ['cli', 'extension', 'webview', 'test', 'scripts', 'examples'];

/** The only packages that the core may import: they run wherever the core does. */
const CORE_PACKAGES = ['earcut', 'mathjs', 'planck', 'yaml'];

const anyOf = (names) => names.map((name) => name.replaceAll('.', '\\.')).join('|');
/** Imports of a folder or file by a path that goes up to where it stands. */
const upTo = (names) => `^(?:\\./)?(?:\\.\\./)+(?:${anyOf(names)})(?:/|$)`;

const withoutExtension = { regex: '^\\.{1,2}/(?!.*\\.(?:tsx?|mjs|json)$)', message: 'Write the extension of a relative import.' };
const face = (names, message) => ({ regex: upTo(names), message });
const vscodeModule = { regex: '^vscode$', message: 'Only extension/ imports vscode.' };
const nodeModules = {
  regex: `^node:|^(?:${anyOf(builtinModules)})(?:/|$)`,
  message: 'This runs outside Node too.',
};
const corePackages = {
  regex: `^(?!\\.|(?:${anyOf(CORE_PACKAGES)})(?:/|$))`,
  message: `The core imports no package but ${CORE_PACKAGES.join(', ')}: no Node, no vscode.`,
};

const LETTER = 'value=/\\p{L}/u';
const SAID = `:matches(Literal[${LETTER}], TemplateLiteral:has(> TemplateElement[value.raw=/\\p{L}/u]))`;
const TOLD_ATTRIBUTES = '/^(?:aria-(?:label|description|roledescription|valuetext)|alt|label|placeholder|title)$/';
/** Where a word of the view would reach a person without having been looked up. */
const wordsInPlace = [
  `JSXText[${LETTER}]`,
  `:matches(JSXElement, JSXFragment) > JSXExpressionContainer > ${SAID}`,
  `:matches(JSXElement, JSXFragment) > JSXExpressionContainer > :matches(ConditionalExpression, LogicalExpression) > ${SAID}`,
  `JSXAttribute[name.name=${TOLD_ATTRIBUTES}] ${SAID}`,
  `AssignmentExpression[left.property.name=/^(?:ariaLabel|innerText|placeholder|textContent|title)$/] > ${SAID}`,
  `AssignmentExpression[left.object.name=/^(?:announcement|complaint)$/] > ${SAID}`,
  `CallExpression[callee.property.name='setAttribute'][arguments.0.value=${TOLD_ATTRIBUTES}] > ${SAID}:nth-child(2)`,
  `CallExpression[callee.name='attribute'][arguments.1.value=${TOLD_ATTRIBUTES}] > ${SAID}:nth-child(3)`,
].map((selector) => ({ selector, message: 'A word of the view stands in webview/words/english, where it can be translated.' }));

const restrict = (...patterns) => ({
  '@typescript-eslint/no-restricted-imports': ['error', { patterns: [withoutExtension, ...patterns] }],
});

const core = [corePackages, face(FACES, 'The core imports no face.')];

const layerRules = LAYERS.flatMap((layer, index) => {
  const higher = LAYERS.slice(index + 1).flat();
  if (higher.length === 0) return [];
  const message = `Arrows in src/ go one way: ${layer.join(', ')} may not import ${higher.join(', ')}.`;
  const files = layer.map((name) => (name.endsWith('.ts') ? `src/${name}` : `src/${name}/**`));
  // solve.ts stands in src/ itself, so what it may not import lies below it, not up a folder.
  const regex = layer.includes('solve.ts') ? `^\\./(?:${anyOf(higher)})(?:/|$)` : upTo(higher);
  return [{ files, rules: restrict(...core, { regex, message }) }];
});

export default defineConfig(
  globalIgnores(['build/', 'coverage/', '.editor-hosts/']),
  { linterOptions: { noInlineConfig: true, reportUnusedDisableDirectives: 'error' } },
  eslint.configs.recommended,
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/ban-ts-comment': 'error',
      // `return report(…)`: to say what is wrong and to have nothing to give is one step.
      '@typescript-eslint/no-confusing-void-expression': 'off',
      // Flat arrays of numbers are read by computed index everywhere; a check at each would cost more than it finds.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: 'only-allowed-literals' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // Inner loops count an index on purpose: an iterator allocates.
      '@typescript-eslint/prefer-for-of': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/no-restricted-imports': ['error', { patterns: [withoutExtension] }],
      // Answers are plain objects of closures, which never read `this`.
      '@typescript-eslint/unbound-method': 'off',
      eqeqeq: 'error',
      'max-lines': ['error', 500],
      'no-eval': 'error',
    },
  },
  {
    files: ['src/**'],
    rules: {
      ...restrict(...core),
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'The same text gives the same numbers.' }],
    },
  },
  ...layerRules,
  {
    files: ['cli/**'],
    rules: restrict(vscodeModule, face(['extension', 'webview', 'test'], 'A face imports the core, not another face.')),
  },
  {
    files: ['extension/**'],
    rules: {
      ...restrict(nodeModules, face(['cli', 'webview', 'test'], 'A face imports the core, not another face.')),
      'no-console': 'error',
    },
  },
  {
    files: ['webview/**'],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          patterns: [
            withoutExtension,
            nodeModules,
            vscodeModule,
            face(['cli', 'extension', 'test'], 'A face imports the core, not another face.'),
            {
              regex: '^(?:\\.\\./)+src/(?!protocol/)',
              allowTypeImports: true,
              message: 'The view solves nothing: values come from src/protocol only.',
            },
          ],
        },
      ],
      'no-console': 'error',
      'no-restricted-syntax': ['error', ...wordsInPlace],
    },
  },
  {
    files: ['test/editor/**'],
    rules: restrict(nodeModules, face([...FACES, 'src'], 'Tests in an editor see the extension from outside, as a person does.'), {
      regex: '^(?!\\.|vscode$)',
      message: 'Only the editor is there.',
    }),
  },
  {
    files: ['test/**'],
    ignores: [...ALONE, 'test/support/freshModules.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        ...['mock', 'doMock', 'resetModules', 'stubGlobal', 'stubEnv'].map((property) => ({
          object: 'vi',
          property,
          message: 'Tests share a process and its modules: name the file among `ALONE` in vitest.config.mjs.',
        })),
      ],
    },
  },
  {
    files: ['**/*.mjs'],
    languageOptions: { globals: { console: 'readonly', URL: 'readonly' } },
    rules: { 'max-lines': ['error', 500] },
  },
);
