#!/usr/bin/env node
// Stands in the repository so that npm can link it before anything is built.
import { nodeIo, run, surviveClosedPipe } from '../dist/run.js';

surviveClosedPipe();
process.exitCode = await run(process.argv.slice(2), nodeIo());
