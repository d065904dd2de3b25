#!/usr/bin/env node
// Stands in the repository so that npm can link it before anything is built.
import { nodeIo, run } from '../dist/run.js';

process.exitCode = await run(process.argv.slice(2), nodeIo());
