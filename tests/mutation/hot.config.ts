import { readFileSync } from 'node:fs';
import process from 'node:process';
import { defineConfig, mergeConfig, type Plugin } from 'vitest/config';
import base from './vitest.config.ts';

const folder = process.env.POURPROOF_HOT ?? '';

/** Serves the sources that bear mutants as tests/mutation/hot.mjs instrumented them. */
function instrumented(): Plugin {
  const sources = JSON.parse(readFileSync(`${folder}/sources.json`, 'utf8')) as Readonly<
    Record<string, string>
  >;
  return { name: 'instrumented', enforce: 'pre', load: (id) => sources[id] ?? null };
}

export default mergeConfig(
  base,
  defineConfig({
    plugins: [instrumented()],
    test: { runner: 'tests/mutation/hot-runner.ts', pool: 'forks', maxWorkers: 1, silent: true },
  }),
);
