import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readArtwork } from '@pourproof/artwork';
import { readJobFile, settleJob } from '@pourproof/job';
import { type Report, vetDrawing } from '@pourproof/proof';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  BARS,
  dropFile,
  keepPicture,
  saved,
  toTenDigits,
  verdict,
  viewerForTests,
} from '../support/viewer/served-viewer.ts';

const demo = fileURLToPath(new URL('../../fixtures/demo/', import.meta.url));
const fonts = fileURLToPath(new URL('../../fixtures/fonts/', import.meta.url));

const viewer = viewerForTests();

async function titles(page: Page): Promise<string[]> {
  return page.locator('.head .title').allTextContents();
}

async function savedReport(page: Page): Promise<Report> {
  return (await saved(page, 'Save report')) as Report;
}

/** Shift and scale of the artwork on the sheet: px = shift + scale · mm. */
async function placing(page: Page): Promise<{ x: number; y: number; scale: number }> {
  const text = (await page.locator('proof-sheet .art').first().getAttribute('transform')) ?? '';
  const [x, y, scale] = (text.match(/-?[\d.]+(?:e-?\d+)?/gu) ?? []).map(Number) as [number, number, number];
  return { x, y, scale };
}

async function setBit(page: Page, text: string): Promise<void> {
  await page.getByLabel('Bit 1', { exact: true }).fill(text);
  await page.getByLabel('Bit 1', { exact: true }).press('Enter');
}

test('a dropped drawing is vetted, and a finding goes and comes with the bit', async () => {
  const { page, complaints, elsewhere } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  expect(await verdict(page)).toBe('Stop');
  expect(await titles(page)).toContain('The bit cannot enter here');
  // closed form: 40 · 6 + 2 · 20 · 1.2
  expect((await savedReport(page)).artwork.areaMm2).toBeCloseTo(288, 9);
  await setBit(page, '1mm');
  await verdict(page);
  expect(await titles(page)).not.toContain('The bit cannot enter here');
  await setBit(page, '1/16"');
  await verdict(page);
  expect(await titles(page)).toContain('The bit cannot enter here');
  expect(complaints).toEqual([]);
  expect(elsewhere).toEqual([]);
});

test('the report on screen is the report of the same code in Node', async () => {
  const { page } = await viewer.open();
  await page.getByRole('button', { name: 'Show the demo' }).click();
  await verdict(page);
  const job = readJobFile(JSON.parse(readFileSync(`${demo}job.json`, 'utf8')), 'job.json');
  const drawing = readArtwork(new Uint8Array(readFileSync(`${demo}board.svg`)), 'board.svg');
  const { report } = vetDrawing(drawing, 'board.svg', settleJob(job));
  expect(toTenDigits(await savedReport(page))).toEqual(toTenDigits(report));
  await keepPicture(page, 'demo');
});

test('choosing a finding brings its place to the middle, and stepping brings the next', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  const { findings } = await savedReport(page);
  const finding = findings.find(({ code }) => code === 'bit-cannot-enter');
  const whole = await placing(page);
  await page.locator('.head[data-code=bit-cannot-enter]').click();
  const sheet = (await page.locator('proof-sheet .sheet').boundingBox())!;
  for (const place of [0, 1]) {
    const { x, y, scale } = await placing(page);
    const [atX, atY] = finding!.where[place]!.atMm;
    // a place as long as the artwork is shown no closer
    expect(scale).toBeGreaterThanOrEqual(whole.scale);
    // within a pixel, for the border of the sheet
    expect(Math.abs(x + scale * atX - sheet.width / 2)).toBeLessThan(1);
    expect(Math.abs(y + scale * atY - sheet.height / 2)).toBeLessThan(1);
    await page.getByRole('button', { name: 'Next place' }).click();
  }
  // after the last place comes the first
  expect(await page.locator('.steps span').textContent()).toContain('1 of 2');
  await keepPicture(page, 'place');
});

test('a click on a flag opens its finding at that place', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  const flag = page.locator('proof-sheet .flag').first();
  const label = await flag.getAttribute('data-label');
  await flag.locator('text').click();
  expect(await page.locator('.steps b').textContent()).toBe(label);
});

test('a way out of the demo that takes a seal along clears all that stops it', async () => {
  const { page } = await viewer.open();
  await page.getByRole('button', { name: 'Show the demo' }).click();
  expect(await verdict(page)).toBe('Stop');
  await page.locator('.head[data-code=bit-cannot-enter]').click();
  await page.getByRole('button', { name: 'Add this bit' }).click();
  await verdict(page);
  expect(await titles(page)).not.toContain('The bit cannot enter here');
  // with the bit alone bleeding would still stop it
  const { seal } = (await saved(page, 'Save job')) as { seal?: string };
  expect(seal).toBeTypeOf('string');
  expect(seal).not.toBe('none');
  expect(await verdict(page)).not.toBe('Stop');
  expect(await titles(page)).not.toContain('High bleed risk on this wall');
  expect((await savedReport(page)).cut.perCutter).toHaveLength(2);
});

test('all of it works by keyboard alone', async () => {
  const { page, complaints } = await viewer.open();
  const focused = (): Promise<string> =>
    page.evaluate(() => {
      let element = document.activeElement;
      while (element?.shadowRoot?.activeElement) {
        element = element.shadowRoot.activeElement;
      }
      return element?.getAttribute('aria-label') ?? element?.textContent?.trim() ?? '';
    });
  const tabTo = async (name: string): Promise<void> => {
    for (let k = 0; k < 40 && !(await focused()).startsWith(name); k++) {
      await page.keyboard.press('Tab');
    }
    expect(await focused()).toContain(name);
  };
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('Skip to the findings');
  await tabTo('Show the demo');
  await page.keyboard.press('Enter');
  expect(await verdict(page)).toBe('Stop');

  await tabTo('Picture of the artwork');
  const whole = await placing(page);
  await page.keyboard.press('+');
  expect((await placing(page)).scale).toBeCloseTo(whole.scale * 1.5, 6);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('-');
  expect((await placing(page)).scale).toBeCloseTo(whole.scale, 6);
  await page.keyboard.press('0');
  expect(await placing(page)).toEqual(whole);

  await page.keyboard.press('Tab');
  await tabTo('1');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  expect(await page.locator('.steps b').textContent()).toBe('1b');
  await page.keyboard.press('ArrowDown');
  expect(await page.locator('.head[aria-expanded=true] .number').textContent()).toBe('2');

  // back to the top, and to the bit
  await page.locator('a.to-findings').focus();
  await tabTo('Bit 1');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('1mm');
  await page.keyboard.press('Enter');
  await verdict(page);
  expect(await titles(page)).not.toContain('The bit cannot enter here');
  expect(complaints).toEqual([]);
});

test('the skip link goes to the findings', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  await page.locator('a.to-findings').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  expect(
    await page
      .locator('.head')
      .first()
      .evaluate((head) => head.matches(':focus')),
  ).toBe(true);
});

test('a phone 360 px wide shows all of it without scrolling sideways', async () => {
  const { page, complaints } = await viewer.open({ viewport: { width: 360, height: 740 }, hasTouch: true });
  await page.getByRole('button', { name: 'Show the demo' }).tap();
  await verdict(page);
  await page.locator('.head').nth(1).tap();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  const sheet = (await page.locator('proof-sheet').boundingBox())!;
  expect(sheet.width).toBeGreaterThan(320);
  // the picture stays in sight while the finding is read
  await page.getByRole('heading', { name: 'Measures' }).scrollIntoViewIfNeeded();
  expect((await page.locator('proof-sheet').boundingBox())!.y).toBeGreaterThanOrEqual(0);
  await keepPicture(page, 'phone');
  await page.getByText('Job ticket').tap();
  await setBit(page, '1mm');
  await verdict(page);
  expect(await titles(page)).not.toContain('The bit cannot enter here');
  expect(complaints).toEqual([]);
});

const BAD_FILES: readonly (readonly [
  what: string,
  name: string,
  content: string | Uint8Array,
  message: RegExp,
])[] = [
  ['an empty file', 'empty.svg', '', /is empty/u],
  ['a picture', 'photo.svg', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d), /PNG picture/u],
  ['broken XML', 'broken.svg', '<svg xmlns="http://www.w3.org/2000/svg">\n<g><rect></svg>', /.{10}/u],
  ['a text', 'order.txt', 'two boards, please', /neither an SVG nor a DXF/u],
  [
    'a drawing that only holds a picture',
    'pictured.svg',
    '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="30mm"><image width="50" height="30" href="a.png"/></svg>',
    /nothing painted in it, so there is nothing to cut/u,
  ],
];
for (const [what, name, content, message] of BAD_FILES) {
  test(`${what} shows what is wrong and what to do, and a good file after it is vetted`, async () => {
    const { page, complaints } = await viewer.open();
    await dropFile(page, name, content);
    const note = page.locator('failure-note dl');
    await note.waitFor();
    expect(await note.locator('dd').first().textContent()).toMatch(message);
    expect(await note.locator('dt').allTextContents()).toContain('What to do');
    expect(await note.textContent()).not.toMatch(/\bat .*\.js:|fault of pourproof/u);
    await dropFile(page, 'bars.svg', BARS);
    expect(await verdict(page)).toBe('Stop');
    expect(await note.count()).toBe(0);
    expect(complaints).toEqual([]);
  });
}

test('a depth without a unit is refused at its field, and the proof stays', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  await page.getByLabel('Depth of the pocket').fill('3');
  await page.getByLabel('Depth of the pocket').press('Enter');
  expect(await page.locator('#depth-problem').textContent()).toContain('Did you mean 3mm or 3in?');
  expect(await page.getByLabel('Depth of the pocket').getAttribute('aria-invalid')).toBe('true');
  // what was typed stays to be put right
  expect(await page.getByLabel('Depth of the pocket').inputValue()).toBe('3');
  expect((await savedReport(page)).cut.maxDepthMm).toBe(3.175);
  await page.getByLabel('Depth of the pocket').fill('3mm');
  await page.getByLabel('Depth of the pocket').press('Enter');
  await verdict(page);
  expect(await page.locator('#depth-problem').textContent()).toBe('');
  expect((await savedReport(page)).cut.maxDepthMm).toBe(3);
});

test('a saved job is a job file that asks for the same proof', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  await setBit(page, '1/16in');
  await page.getByLabel('Seal before the colour').selectOption('shellac');
  await verdict(page);
  const job = readJobFile(await saved(page, 'Save job'), 'bars.job.json');
  expect(job.artwork).toBe('bars.svg');
  const { report } = vetDrawing(
    readArtwork(new TextEncoder().encode(BARS), 'bars.svg'),
    'bars.svg',
    settleJob(job),
  );
  expect(toTenDigits(await savedReport(page))).toEqual(toTenDigits(report));
});

test('of changes that come faster than proofs, the last one counts', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  for (const bit of ['1mm', '3mm', '0.5mm', '2mm']) {
    await setBit(page, bit);
  }
  await verdict(page);
  const { perCutter } = (await savedReport(page)).cut;
  expect(perCutter.map(({ cutter }) => cutter)).toEqual([
    { kind: 'flat', diameterMm: 2, cuttingLengthMm: null },
  ]);
});

test('a typed width scales the artwork, and an empty one leaves it as drawn', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  await page.getByText('Size and reading of the artwork').click();
  const width = page.getByLabel('Width of the artwork');
  await width.fill('4in');
  await width.press('Enter');
  await verdict(page);
  const [left, , right] = (await savedReport(page)).artwork.boundsMm;
  expect(right - left).toBeCloseTo(101.6, 6);
  await width.fill('');
  await width.press('Enter');
  await verdict(page);
  expect((await savedReport(page)).artwork.areaMm2).toBeCloseTo(288, 9);
});

test('fibres, wood, seal and unit change the proof', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  // along the long bars: 2 ends of 6 mm less the corners; across: the long sides
  const along = (await savedReport(page)).endGrain.wallFraction;
  await page.getByLabel('Fibres, degrees').fill('90');
  await page.getByLabel('Fibres, degrees').press('Enter');
  await verdict(page);
  const across = await savedReport(page);
  expect(across.endGrain.grainDeg).toBe(90);
  expect(across.endGrain.wallFraction).toBeGreaterThan(3 * along);
  await page.getByLabel('Seal before the colour').selectOption('epoxy');
  await page.getByLabel('Wood', { exact: true }).selectOption('walnut');
  await page.getByLabel('inches').check();
  await verdict(page);
  const sealed = await savedReport(page);
  expect(sealed.bleed.blocks[0]?.species).toContain('walnut');
  expect(sealed.seal.filmMm).toBeGreaterThan(0);
  const tables = (await page.locator('fact-table table').allTextContents()).join('');
  expect(tables).toContain(' in');
  expect(tables).not.toMatch(/ mm²/u);
});

test('lettering is set in a font that comes with the page and in a font file', async () => {
  const { page, complaints, elsewhere } = await viewer.open();
  await page.getByText('Lettering: lines, spacing').click();
  await page.getByRole('button', { name: 'Set this lettering' }).click();
  expect(await page.locator('lettering-form .problem').textContent()).toBe('Type the text to set.');
  await page.getByLabel('Text', { exact: true }).fill('HI');
  await page.getByLabel('Height of capitals').fill('20mm');
  await page.getByRole('button', { name: 'Set this lettering' }).click();
  await verdict(page);
  const shipped = await savedReport(page);
  expect(shipped.artwork.format).toBe('lettering');
  // capitals without overshoot: the box is as high as the capitals
  expect(shipped.artwork.boundsMm[3] - shipped.artwork.boundsMm[1]).toBeCloseTo(20, 1);
  await page.getByLabel('Font', { exact: true }).selectOption('own');
  await page.locator('lettering-form input[type=file]').setInputFiles(`${fonts}arvo-400.ttf`);
  await page.getByRole('button', { name: 'Set this lettering' }).click();
  // the old verdict stands until the new one is there
  await expect
    .poll(async () => (await savedReport(page)).artwork.areaMm2, { timeout: 20_000 })
    .not.toBeCloseTo(shipped.artwork.areaMm2, 1);
  expect(complaints).toEqual([]);
  expect(elsewhere).toEqual([]);
});

test('on paper all findings are open, the whole artwork is shown, and the controls are gone', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  for (let k = 0; k < 3; k++) {
    await page.getByRole('button', { name: 'Zoom in' }).click();
  }
  const isWhole = async (): Promise<boolean> => {
    const [sheet, art] = await Promise.all(
      ['.sheet', '.art .drawn'].map((part) => page.locator(`proof-sheet ${part}`).first().boundingBox()),
    );
    return art!.x >= sheet!.x && art!.x + art!.width <= sheet!.x + sheet!.width;
  };
  expect(await page.locator('proof-sheet .sheet.close').count()).toBe(1);
  await page.emulateMedia({ media: 'print' });
  await expect.poll(isWhole).toBe(true);
  const count = await page.locator('.head').count();
  expect(count).toBeGreaterThan(1);
  for (let k = 0; k < count; k++) {
    expect(await page.locator('finding-list .body').nth(k).isVisible()).toBe(true);
  }
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
  expect(await page.locator('.ticket').isVisible()).toBe(false);
});
