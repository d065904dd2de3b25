#!/usr/bin/env node
// Stands in the repository so that npm can link it before anything is built.
import { existsSync } from 'node:fs';
import module from 'node:module';
import v8 from 'node:v8';

if (existsSync(new URL('../dist/bundle/pourproof.js', import.meta.url))) {
  // releases of Node that can keep what they compiled for the next time
  module.enableCompileCache?.();
  // how much of a function is run before it is optimized: the own value of engines that know nothing between baseline code and the best is for
  // programs that run long, and more than half of a small proof went into optimizing what runs once (docs/method/start-up.md)
  if (Number.parseInt(process.versions.v8, 10) < 12) {
    v8.setFlagsFromString('--interrupt-budget=700000');
  }
  await import('../dist/bundle/pourproof.js');
} else {
  process.stderr.write('pourproof: this checkout is not built.\n  What to do: npm run build:code\n');
  process.exitCode = 2;
}
