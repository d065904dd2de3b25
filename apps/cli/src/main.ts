import { nodeIo, run, surviveClosedPipe } from './run.ts';

surviveClosedPipe();
process.exitCode = await run(process.argv.slice(2), nodeIo());
