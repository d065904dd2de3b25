import fc from 'fast-check';
import { beforeEach, expect } from 'vitest';
import { cases, deadline, isLong, propertyMs, seed } from './lane.ts';

// what fails names its seed and the path to its smallest case
fc.configureGlobal({ ...cases(100), seed, ...(isLong && { interruptAfterTimeLimit: propertyMs }) });

beforeEach((context) => {
  if (Date.now() > deadline) {
    context.skip('the time of the long lane is up');
  }
  // a test that asserts nothing fails
  expect.hasAssertions();
});
