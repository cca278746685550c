/** The list of what is to be translated. That it is current is held by `npm run generate -- --check`. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { l10nBundle } from '../../scripts/l10nBundle.mjs';

const texts = (source: string): unknown => JSON.parse(l10nBundle({ 'a.ts': source }));

test('each text is there once, as the editor looks for it', () => {
  const source = "l10n.t('Not {0}', name); title: l10n.t(\n  'It\\'s “so”.',\n); l10n.t('Not {0}', other)";
  expect(texts(source)).toEqual({ 'Not {0}': 'Not {0}', "It's “so”.": "It's “so”." });
});

test.each(['l10n.t(text)', 'l10n.t(`Not ${name}`)', "l10n.t({ message: 'Not' })", "l10n.t('so'); l10n.t(isSo ? 'a' : 'b')"])(
  'what could not be looked for is refused: %s',
  (source) => {
    expect(() => texts(source)).toThrow('a.ts');
  },
);

test('the manifest says where translations stand, and the list is beside them', () => {
  const { l10n } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { readonly l10n: string };
  const bundle = JSON.parse(readFileSync(new URL(`../../${l10n}/bundle.l10n.json`, import.meta.url), 'utf8')) as Record<string, string>;
  expect(Object.entries(bundle).filter(([key, text]) => key !== text)).toEqual([]);
  expect(bundle).toHaveProperty(['{0} is read-only.']);
});
