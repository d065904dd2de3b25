import { expect, test } from 'vitest';
import { gzippedBytes, recordedSizes } from './measure-sizes.mjs';
import { entriesForBrowsers } from './public-packages.mjs';

const recorded = recordedSizes();
// small changes are noise of names and compression; more is a decision, and shows in the record
const MAX_GROWTH = 0.05;
const MAX_SHRINKAGE = 0.1;
const SLACK_BYTES = 2048;
const RECORD_AGAIN = 'look why, then run: node tests/publish/measure-sizes.mjs --write';

test('every entry that a page may import has its size on record', () => {
  expect(Object.keys(recorded).toSorted()).toEqual(entriesForBrowsers().toSorted());
});

test.each(Object.entries(recorded))(
  '%s bundles for a browser and weighs what is on record',
  async (entry, bytes) => {
    const measured = await gzippedBytes(entry);
    expect(measured, `${entry} grew: ${RECORD_AGAIN}`).toBeLessThan(bytes * (1 + MAX_GROWTH) + SLACK_BYTES);
    expect(measured, `${entry} shrank: ${RECORD_AGAIN}`).toBeGreaterThan(
      bytes * (1 - MAX_SHRINKAGE) - SLACK_BYTES,
    );
  },
);
