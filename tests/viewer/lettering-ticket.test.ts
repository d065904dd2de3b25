import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readLettering, readStickLettering } from '@pourproof/artwork';
import { readJobFile, settleJob } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { type Report, vetDrawing } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { note, onCommandLine, savedJob, savedReport } from '../support/viewer/saved-ticket.ts';
import { chooseFiles, judged, toTenDigits, viewerForTests } from '../support/viewer/served-viewer.ts';

const fonts = fileURLToPath(new URL('../../fixtures/fonts/', import.meta.url));

const viewer = viewerForTests();

const lettered = (drawing: Drawing, text: string, job: object): Report =>
  vetDrawing(drawing, text, settleJob(readJobFile(job, 'j'))).report;

test('lettering takes all that the command line takes, by keyboard, and its job comes back', async () => {
  const { page, complaints } = await viewer.open();
  await page.getByText('Lettering: lines, spacing').focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('Text', { exact: true }).fill('HAW\nHI');
  await page.getByLabel('Font', { exact: true }).selectOption('Josefin Sans, variable');
  await page.getByText('More: lines').focus();
  await page.keyboard.press('Enter');
  for (const [label, text] of [
    ['Height of capitals', '20mm'],
    ['Room between letters', '1mm'],
    ['Line spacing', '1.4'],
    ['Axes of a variable font', 'wght=650'],
  ] as const) {
    await page.getByLabel(label).fill(text);
  }
  await page.getByLabel('Lines meet at').selectOption('right');
  await page.getByLabel('Axes of a variable font').press('Enter');
  await judged(page);
  const job = await savedJob(page);
  const file = 'josefin-sans-latin-variable.woff2';
  expect(job).toMatchObject({
    text: 'HAW\nHI',
    font: file,
    capHeight: '20mm',
    align: 'right',
    tracking: '1mm',
    lineSpacing: 1.4,
    axis: ['wght=650'],
  });
  const drawing = await readLettering('HAW\nHI', {
    font: new Uint8Array(readFileSync(fonts + file)),
    capHeightMm: 20,
    align: 'right',
    trackingMm: 1,
    lineSpacing: 1.4,
    axes: { wght: 650 },
    toleranceMm: 0.005,
  });
  const report = await savedReport(page);
  const { artwork } = report;
  const there = await onCommandLine(job, { [file]: readFileSync(fonts + file) });
  expect(toTenDigits(there)).toEqual(toTenDigits(report));
  expect(artwork.file).toBe('HAW / HI');
  expect(artwork.areaMm2).toBeCloseTo(lettered(drawing, 'HAW / HI', job).artwork.areaMm2, 6);
  const again = await viewer.open();
  await chooseFiles(again.page, { 'sign.json': JSON.stringify(job) });
  await judged(again.page);
  expect((await savedReport(again.page)).artwork).toEqual(artwork);
  expect(await savedJob(again.page)).toEqual(job);
  expect([...complaints, ...again.complaints]).toEqual([]);
});

test('letters of single strokes on an arc are as wide as the bit, and follow it', async () => {
  const { page } = await viewer.open({ viewport: { width: 390, height: 844 }, hasTouch: true });
  await chooseFiles(page, { 'job.json': JSON.stringify({ schema: 'pourproof/job@1', bit: ['flat:1.5mm'] }) });
  await page.getByText('Lettering: lines, spacing').tap();
  await page.getByLabel('Text', { exact: true }).fill('Oak 1987');
  await page.getByLabel('Font', { exact: true }).selectOption('single-line');
  await page.getByText('More: lines').tap();
  await page.getByLabel('Arc, radius').fill('60');
  await page.getByRole('button', { name: 'Set this lettering' }).tap();
  expect(await page.locator('lettering-form .problem').textContent()).toContain('Did you mean 60mm or 60in?');
  await page.getByLabel('Arc, radius').fill('60mm');
  await page.getByLabel('Arc runs').selectOption('under');
  await page.getByRole('button', { name: 'Set this lettering' }).tap();
  await judged(page);
  // the sheet has come into sight
  expect((await page.locator('proof-sheet').boundingBox())!.y).toBeLessThan(600);
  const { artwork, strokes } = await savedReport(page);
  const options = { capHeightMm: 15, strokeMm: 1.51, toleranceMm: 0.005 } as const;
  const drawing = readStickLettering('Oak 1987', { ...options, arc: { radiusMm: 60, side: 'under' } });
  const job = { schema: 'pourproof/job@1', bit: ['flat:1.5mm'] };
  expect(artwork.areaMm2).toBeCloseTo(lettered(drawing, 'x', job).artwork.areaMm2, 6);
  // within the flattening on both sides
  expect(Math.abs((strokes.narrowestMm ?? 0) - 1.5)).toBeLessThan(0.03);
});

test('a job whose lettering needs a font that is not at hand asks for it, and takes it later', async () => {
  const { page } = await viewer.open();
  const job = { schema: 'pourproof/job@1', text: 'HI', font: 'my-own.ttf', capHeight: '18mm' };
  await chooseFiles(page, { 'job.json': JSON.stringify(job) });
  await expect.poll(() => note(page)).toContain('This job sets lettering in my-own.ttf');
  await chooseFiles(page, { 'my-own.ttf': readFileSync(`${fonts}lora-400.ttf`) });
  await judged(page);
  const { boundsMm, format } = (await savedReport(page)).artwork;
  expect(format).toBe('lettering');
  // capitals without overshoot: the box is as high as the capitals
  expect(boundsMm[3] - boundsMm[1]).toBeCloseTo(18, 1);
  expect(await note(page)).toBe('');
});
