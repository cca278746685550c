/** A bundle has planck in it and does not run it before a file has shapes that could touch. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'esbuild';
import { expect, test } from 'vitest';
import { forNode } from '../../scripts/build.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Counts how often planck's module is run. */
const counted: Plugin = {
  name: 'counted',
  setup({ onLoad }) {
    onLoad({ filter: /planck[\\/]dist[\\/]planck\.m?js$/ }, ({ path }) => ({
      contents: `globalThis.planckRuns = (globalThis.planckRuns ?? 0) + 1;\n${readFileSync(path, 'utf8')}`,
      loader: 'js',
    }));
  },
};

const file = (rest: string): string => `format: 1
levers: {crank: {pivot: [0, 0], ${rest}, arms: {out: {radius: 40 mm, angle: 0 deg}}}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
keep_out: {post: {circle: [46, 0], radius: 5 mm}}
`;

test('planck runs with the first file that has shapes which come near each other, and once', { timeout: 60_000 }, async () => {
  const { outputFiles } = await build({
    ...forNode,
    absWorkingDir: root,
    plugins: [...(forNode.plugins ?? []), counted],
    stdin: { contents: "export { solve } from './src/solve.ts';", resolveDir: root, loader: 'ts' },
    write: false,
  });
  const code = outputFiles[0]?.text ?? '';
  const { solve } = (await import(`data:text/javascript;base64,${Buffer.from(code).toString('base64')}`)) as {
    solve: (text: string) => { readonly findings: readonly { readonly code: string }[] };
  };
  const runs = (): unknown => (globalThis as { planckRuns?: number }).planckRuns;
  expect(solve(file('opens: counterclockwise')).findings).toEqual([]);
  expect(solve(file('width: 8 mm').replace('[46, 0]', '[460, 0]')).findings).toEqual([]);
  expect(runs()).toBeUndefined();
  for (let i = 0; i < 2; i++) {
    expect(solve(file('width: 8 mm')).findings.map((finding) => finding.code)).toEqual(['touches-keep-out']);
    expect(runs()).toBe(1);
  }
});
