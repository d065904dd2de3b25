import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['@pourproof/source'] },
  ssr: { resolve: { conditions: ['@pourproof/source'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    passWithNoTests: false,
    testTimeout: 60_000,
  },
});
