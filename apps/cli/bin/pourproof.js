#!/usr/bin/env node
// Stands in the repository so that npm can link it before anything is built.
import { existsSync } from 'node:fs';
import module from 'node:module';

if (existsSync(new URL('../dist/bundle/pourproof.js', import.meta.url))) {
  // releases of Node that can keep what they compiled for the next time
  module.enableCompileCache?.();
  await import('../dist/bundle/pourproof.js');
} else {
  process.stderr.write('pourproof: this checkout is not built.\n  What to do: npm run build:code\n');
  process.exitCode = 2;
}
