import { demoOrder } from './demo-order.ts';
import { nodeIo, surviveClosedPipe } from './node-io.ts';

surviveClosedPipe();
process.exitCode = await demoOrder(nodeIo());
