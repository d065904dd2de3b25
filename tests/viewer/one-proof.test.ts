import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { note, savedJob, savedReport } from '../support/viewer/saved-ticket.ts';
import { BARS, chooseFiles, dropFile, verdict, viewerForTests } from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();

/** Holds back what the worker answers from now on; what comes back lets it through. */
async function holdAnswers(page: Page): Promise<() => Promise<void>> {
  await page.evaluate(() => {
    const held: (() => void)[] = [];
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (this: Worker, ...question: [unknown]): void {
      held.push(() => postMessage.apply(this, question as never));
    };
    Object.assign(globalThis, {
      letThrough: () => {
        Worker.prototype.postMessage = postMessage;
        for (const post of held) {
          post();
        }
      },
    });
  });
  return () => page.evaluate('letThrough()');
}

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) {
      element = element.shadowRoot.activeElement;
    }
    return element === null
      ? ''
      : `${element.localName}.${element.className} ${element.getAttribute('data-code') ?? ''}`;
  });

test('while a proof is worked out the one before is marked as old, on paper too, and what is saved belongs to it', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  const letThrough = await holdAnswers(page);
  await page.getByLabel('Depth of the pocket').fill('2mm');
  await page.getByLabel('Depth of the pocket').press('Enter');
  const before = page.locator('.before');
  expect(await before.textContent()).toMatch(/Before your last change:\s*Stop/u);
  expect(await page.locator('.verdict .tag').count()).toBe(0);
  expect((await savedReport(page)).cut.maxDepthMm).toBe(3.175);
  expect(await savedJob(page)).toEqual({ schema: 'pourproof/job@1', artwork: 'bars.svg' });
  await page.emulateMedia({ media: 'print' });
  expect(await before.isVisible()).toBe(true);
  expect(await page.locator('.busy').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'screen' });
  await letThrough();
  await verdict(page);
  expect(await before.count()).toBe(0);
  expect((await savedReport(page)).cut.maxDepthMm).toBe(2);
  expect(await savedJob(page)).toMatchObject({ depth: '2mm' });
});

test('other artwork that cannot be read takes the old proof away, and the next edit takes its error away', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  await dropFile(page, 'order.txt', 'two boards');
  await page.locator('failure-note dl').waitFor();
  expect(await page.locator('proof-sheet').isVisible()).toBe(false);
  expect(await page.getByRole('button', { name: 'Save job' }).isDisabled()).toBe(true);
  await holdAnswers(page);
  await dropFile(page, 'bars.svg', BARS);
  await expect.poll(() => page.locator('.file b').textContent()).toBe('bars.svg');
  expect(await page.locator('failure-note dl').count()).toBe(0);
});

test('a refused text goes with its ticket, and mends itself when what it contradicts goes', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  const depth = page.getByLabel('Depth of the pocket');
  await depth.fill('3');
  await depth.press('Enter');
  expect(await page.locator('#depth-problem').textContent()).toContain('Did you mean');
  // an edit elsewhere leaves it to be put right
  await page.getByLabel('Seal before the colour').selectOption('shellac');
  await verdict(page);
  expect(await depth.inputValue()).toBe('3');
  await chooseFiles(page, { 'job.json': JSON.stringify({ schema: 'pourproof/job@1', depth: '2mm' }) });
  await verdict(page);
  expect(await depth.inputValue()).toBe('2mm');
  expect(await page.locator('#depth-problem').textContent()).toBe('');
  await page.getByLabel('Bit 1', { exact: true }).fill('9zz');
  await page.getByLabel('Bit 1', { exact: true }).press('Enter');
  expect(await page.locator('#bit-0-problem').textContent()).not.toBe('');
  await page.getByRole('button', { name: 'Show the demo' }).click();
  await verdict(page);
  expect(await page.getByLabel('Bit 1', { exact: true }).inputValue()).toBe('1.5mm');
  expect(await page.locator('#bit-0-problem').textContent()).toBe('');
});

test('the demo has a ticket of its own, and the maker’s own order comes back as it was', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await page.getByLabel('Depth of the pocket').fill('4mm');
  await page.getByLabel('Depth of the pocket').press('Enter');
  await verdict(page);
  const own = await savedJob(page);
  await page.getByRole('button', { name: 'Show the demo' }).click();
  await verdict(page);
  expect(await page.locator('.job h2').textContent()).toBe('Job ticket of the demo');
  await page.getByRole('button', { name: 'Back to my own' }).click();
  await verdict(page);
  expect(await savedJob(page)).toEqual(own);
  expect(await focused(page)).toContain('button.');
  expect(await page.getByRole('button', { name: 'Back to my own' }).count()).toBe(0);
});

test('a slow file that ends after the demo was shown does not take its place', async () => {
  const { page } = await viewer.open();
  // a file of a drive that is slow to answer
  await page.evaluate(() => {
    const { arrayBuffer } = File.prototype;
    File.prototype.arrayBuffer = async function (this: File): Promise<ArrayBuffer> {
      await new Promise<void>((resolve) => Object.assign(globalThis, { endRead: resolve }));
      return arrayBuffer.call(this);
    };
  });
  await dropFile(page, 'bars.svg', BARS);
  expect(await page.locator('article').getAttribute('aria-busy')).toBe('true');
  await page.getByRole('button', { name: 'Show the demo' }).click();
  await verdict(page);
  await page.evaluate('endRead()');
  await page.waitForTimeout(300);
  expect((await savedReport(page)).artwork.file).toBe('board.svg');
  expect(await note(page)).toBe('');
  // it waits behind the demo
  await page.getByRole('button', { name: 'Back to my own' }).click();
  await expect.poll(() => page.locator('.file b').textContent()).toBe('bars.svg');
});

test('after a way out the focus is at its finding or at the next, and what came of it is said', async () => {
  const { page } = await viewer.open();
  await page.getByRole('button', { name: 'Show the demo' }).click();
  await verdict(page);
  const codes = (): Promise<string[]> =>
    page.locator('.head').evaluateAll((heads) => heads.map((head) => head.getAttribute('data-code') ?? ''));
  const before = await codes();
  await page.locator('.head[data-code=bit-cannot-enter]').click();
  await page.getByRole('button', { name: 'Add this bit' }).focus();
  await page.keyboard.press('Enter');
  await verdict(page);
  const after = await codes();
  const told = page.locator('.told[role=status]');
  await expect
    .poll(() => told.textContent())
    .toMatch(/“The bit cannot enter here” is gone\. .*Now there (?:is 1 finding|are \d+ findings)\./u);
  expect(await focused(page)).toBe(
    `button.head ${after[Math.min(before.indexOf('bit-cannot-enter'), after.length - 1)]}`,
  );
  // any other change ends what is said of it
  await page.getByLabel('Depth of the pocket').fill('2mm');
  await page.getByLabel('Depth of the pocket').press('Enter');
  await verdict(page);
  expect(await told.textContent()).toBe('');
});

test('the focus is not lost with a button that goes away', async () => {
  const { page } = await viewer.open();
  await page.getByRole('button', { name: 'See it on the demo order' }).focus();
  await page.keyboard.press('Enter');
  await verdict(page);
  expect(await focused(page)).toContain('article.');
  await page.getByRole('button', { name: 'Add a bit' }).click();
  await page.getByRole('button', { name: 'Take bit 2 off' }).focus();
  await page.keyboard.press('Enter');
  await verdict(page);
  expect(await focused(page)).toContain('input.');
});
