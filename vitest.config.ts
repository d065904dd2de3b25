import process from 'node:process';
import { defineConfig } from 'vitest/config';

// a property of the long lane stops by itself after a share of its time; the quick lane holds no test that needs a quarter of this
const LIMIT_MS = process.env.POURPROOF_LANE === 'long' ? 600_000 : 60_000;

export default defineConfig({
  resolve: { conditions: ['@pourproof/source'] },
  ssr: { resolve: { conditions: ['@pourproof/source'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    passWithNoTests: false,
    allowOnly: false,
    testTimeout: LIMIT_MS,
    // what several tests look at is vetted in a hook
    hookTimeout: LIMIT_MS,
    setupFiles: ['tests/support/setup.ts'],
    reporters: ['default', './tests/support/slowest-reporter.mjs'],
    // no test writes into a module that another loads, so that each worker loads each of them once
    pool: 'forks',
    isolate: false,
    // one core is not held back for the runner, which only waits
    maxWorkers: '100%',
  },
});
