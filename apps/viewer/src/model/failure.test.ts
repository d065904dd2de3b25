import type { FaultBundle } from 'pourproof';
import { expect, test } from 'vitest';
import { faultOfOurs } from './failure.ts';

test('a fault that showed in a proof comes with the file that replays it, any other does not', () => {
  const bundle: FaultBundle = {
    schema: 'pourproof/fault@1',
    versions: { pourproof: '0.1.0' },
    what: 'the colours add up to the cut, but it is 1 where 2 mm² is due',
    misses: [],
    seed: 1,
    source: { kind: 'lettering', text: 'Hi', font: null },
    job: {},
  };
  expect(faultOfOurs('InternalError: …', bundle)).toEqual({
    what: 'pourproof could not finish this proof, and that is a fault of pourproof, not of your drawing.',
    where: bundle.what,
    remedy: 'Please save the file below and report it with that: it holds the drawing, its font and the job.',
    bundle,
  });
  expect(faultOfOurs('the worker did not come up')).not.toHaveProperty('bundle');
});
