import { readdirSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

// Tests of one tier of tests/mutation/run.mjs, in the order in which they are named there: the first that fails ends the run.
const TESTS: readonly string[] = JSON.parse(process.env.POURPROOF_MUTATION_TESTS ?? '[]');

// the machine may be loaded, and a mutant that only looks slow is not caught
const LIMIT_MS = 300_000;

const root = fileURLToPath(new URL('../..', import.meta.url));

class AsNamed extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification) => TESTS.findIndex((name) => moduleId.endsWith(name));
    return files.toSorted((a, b) => place(a) - place(b));
  }
}

/** Packages are read from this copy of the sources: node_modules is a link that leads to the sources without mutants. */
function ownSources(): Plugin {
  const names = readdirSync(`${root}packages`);
  return {
    name: 'own-sources',
    enforce: 'pre',
    resolveId(id) {
      const [, name, entry = 'index'] = /^@pourproof\/([a-z]+)(?:\/([a-z]+))?$/u.exec(id) ?? [];
      return name !== undefined && names.includes(name) ? `${root}packages/${name}/src/${entry}.ts` : null;
    },
  };
}

export default defineConfig({
  root,
  plugins: [ownSources()],
  resolve: { conditions: ['@pourproof/source'] },
  ssr: { resolve: { conditions: ['@pourproof/source'] } },
  test: {
    include: [...TESTS],
    testTimeout: LIMIT_MS,
    setupFiles: ['tests/support/setup.ts', 'tests/mutation/setup.ts'],
    isolate: false,
    sequence: { sequencer: AsNamed },
  },
});
