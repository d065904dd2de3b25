import { readFile } from 'node:fs/promises';
import type { FaultBundle } from 'pourproof';
import { expect, test } from 'vitest';
import type { Posted } from '../../apps/viewer/src/model/question.ts';
import { BARS, dropFile, viewerForTests } from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();

const bundle: FaultBundle = {
  schema: 'pourproof/fault@1',
  versions: { pourproof: '0.1.0' },
  what: 'the colours add up to the cut, but it is 1 where 2 mm² is due',
  misses: [{ id: 'colours-add-up-to-cut', unit: 'mm2', got: 1, least: 2, most: 2, by: 1 }],
  seed: 7,
  source: { kind: 'file', name: 'bars.svg', bytes: 'PHN2Zy8+', font: null },
  job: { depth: '3mm' },
};

test('a fault of ours is told as such, with no figure, and the page offers the file that replays it', async () => {
  const { page } = await viewer.open();
  // a worker that answers every question with a fault
  await page.evaluate((fault) => {
    Worker.prototype.postMessage = function (this: Worker, posted: Posted | { readonly kind: 'art' }): void {
      if (posted.kind === 'ask') {
        const data = { id: posted.question.id, kind: 'fault', message: 'ProofFault', bundle: fault };
        // no worker answers while it is asked
        setTimeout(() => this.dispatchEvent(new MessageEvent('message', { data })));
      }
    } as Worker['postMessage'];
  }, bundle);
  await dropFile(page, 'bars.svg', BARS);
  const note = page.locator('failure-note');
  await note.locator('dl').waitFor();
  const text = (await note.locator('dl').textContent()) ?? '';
  expect(text).toContain('a fault of pourproof, not of your drawing');
  expect(text).toContain(bundle.what);
  expect(await page.locator('proof-sheet').isVisible()).toBe(false);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    note.getByRole('button', { name: 'Save the file for the report' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('pourproof.fault.json');
  expect(JSON.parse(await readFile(await download.path(), 'utf8'))).toEqual(bundle);
});
