#!/usr/bin/env node
// Stands in the repository so that npm can link it before anything is built.
import { existsSync } from 'node:fs';

if (existsSync(new URL('../dist/run.js', import.meta.url))) {
  const { nodeIo, run, surviveClosedPipe } = await import('../dist/run.js');
  surviveClosedPipe();
  process.exitCode = await run(process.argv.slice(2), nodeIo());
} else {
  process.stderr.write('pourproof: this checkout is not built.\n  What to do: npm run build:code\n');
  process.exitCode = 2;
}
