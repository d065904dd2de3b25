import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readArtwork } from '@pourproof/artwork';
import { readJobFile, settleJob } from '@pourproof/job';
import { type Report, vetDrawing } from '@pourproof/proof';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { note, onCommandLine, savedJob, savedReport } from '../support/viewer/saved-ticket.ts';
import {
  chooseFiles,
  judged,
  openGroup,
  savedText,
  toTenDigits,
  viewerForTests,
} from '../support/viewer/served-viewer.ts';

const fonts = fileURLToPath(new URL('../../fixtures/fonts/', import.meta.url));

/** A bar 40 × 6 mm and one of 40 × 3 mm. */
const BARS = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">
  <rect x="5" y="5" width="40" height="6"/><rect x="5" y="20" width="40" height="3"/></svg>`;
const LIVE_TEXT = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">
  <text x="4" y="24" font-size="24">Oak</text></svg>`;
const JOB = {
  schema: 'pourproof/job@1',
  artwork: 'bars.svg',
  bit: ['flat:2mm'],
  depth: '3mm',
  board: 'stripes 300x180x20mm maple:60mm walnut:20mm',
  turn: '15deg',
  seal: 'epoxy',
  coats: 2,
  colour: 'black',
  start: '2026-12-01 09:00',
  units: 'mm',
} as const;

const viewer = viewerForTests();

const barsReport = (job: object): Report =>
  vetDrawing(
    readArtwork(new TextEncoder().encode(BARS), 'bars.svg'),
    'bars.svg',
    settleJob(readJobFile(job, 'j')),
  ).report;
/** Types into a field and waits for the proof. */
async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Tab');
  await judged(page);
}

test('a job file and its artwork, opened together, give the proof of the command line and come out the same', async () => {
  const { page, complaints } = await viewer.open();
  await chooseFiles(page, { 'job.json': JSON.stringify(JOB), 'bars.svg': BARS });
  await judged(page);
  expect(toTenDigits(await savedReport(page))).toEqual(toTenDigits(barsReport(JOB)));
  const job = await savedJob(page);
  expect(job).toEqual(JOB);
  expect(toTenDigits(await onCommandLine(job, { 'bars.svg': BARS }))).toEqual(toTenDigits(barsReport(JOB)));
  // every block is drawn, the two woods differ by tint and letter and stand in the legend, and each has its line of end grain
  const tints = await page
    .locator('proof-sheet .wood .tint')
    .evaluateAll((blocks) => blocks.map((block) => block.getAttribute('fill')));
  expect(tints).toEqual([tints[0], tints[1], tints[0], tints[1], tints[0]]);
  expect(tints[0]).not.toBe(tints[1]);
  const letters = await page.locator('proof-sheet .letters text').allTextContents();
  // on the blocks that are in sight
  expect(new Set(letters)).toEqual(new Set(['A', 'B']));
  const legend = await page.locator('sheet-legend:visible li').allTextContents();
  expect(legend.slice(-2)).toEqual(['Ahard maple', 'Bblack walnut']);
  const tables = (await page.locator('fact-table table').allTextContents()).join(' ');
  expect(tables).toMatch(/hard maple.*black walnut/su);
  expect(complaints).toEqual([]);
});

test('the schedule has the days of the job, and the calendar is that of the command line', async () => {
  const { page } = await viewer.open();
  await chooseFiles(page, { 'bars.svg': BARS });
  await judged(page);
  const button = page.getByRole('button', { name: 'Save calendar' });
  expect(await button.isDisabled()).toBe(true);
  await openGroup(page, 'Shop and dates');
  await page.getByLabel('Carving starts', { exact: true }).fill('2026-12-01');
  await page.getByLabel('Carving starts, time of day').fill('09:30');
  await page.getByLabel('Carving starts, time of day').press('Tab');
  await judged(page);
  expect(await page.locator('fact-table table').nth(2).textContent()).toContain('2026-12-01 09:30');
  const calendar = await savedText(page, 'Save calendar');
  expect(calendar).toMatch(/^BEGIN:VCALENDAR\r\n/u);
  const { schedule } = (await savedReport(page)).pour;
  expect(calendar.match(/^BEGIN:VEVENT/gmu)).toHaveLength(schedule.length);
  expect(calendar).toContain('DTSTART:20261201T093000');
});

/** What is painted on the sheet. */
async function shownShapes(page: Page): Promise<readonly string[]> {
  return ((await page.locator('proof-sheet .art-canvas').getAttribute('data-shows')) ?? '').split(' ');
}

test('the picture turns to what levelling leaves, with the lengths of the proof, and back', async () => {
  const { page } = await viewer.open();
  await chooseFiles(page, { 'bars.svg': BARS });
  await judged(page);
  await openGroup(page, 'Levelling');
  await type(page, 'Bit 1', 'vee:60deg:1/2in');
  await type(page, 'Depth of the pocket', '5mm');
  await type(page, 'Takes off the face', '1.5mm');
  await page.getByRole('button', { name: 'Levelling', exact: true }).click();
  const job = settleJob(readJobFile(await savedJob(page), 'j'));
  const { levelling } = vetDrawing(readArtwork(new TextEncoder().encode(BARS), 'bars.svg'), 'x', job).picture;
  const lengths = levelling.grades.flatMap(({ grade, lengthMm }) =>
    lengthMm > 0 ? [[grade, lengthMm] as const] : [],
  );
  // the two bars fare differently
  expect(lengths.length).toBeGreaterThan(1);
  const items = await page.locator('sheet-legend:visible li').allTextContents();
  expect(items.slice(0, -1)).toEqual(
    lengths.map(([, lengthMm]) => expect.stringContaining(`: ${lengthMm.toFixed(2)} mm of stroke`)),
  );
  expect(items.at(-1)).toBe('under 1.50 mm off the face');
  // lines of equal depth lie in what the V cuts, not over what levelling leaves
  const grades = lengths.map(([grade]) => `level-${grade}`);
  await expect.poll(() => shownShapes(page)).toEqual(expect.arrayContaining(['drawn', ...grades]));
  expect(await shownShapes(page)).not.toContain('depth');
  expect(await shownShapes(page)).not.toContain('cut');
  await page.getByRole('button', { name: 'Cut', exact: true }).click();
  await expect.poll(() => shownShapes(page)).toEqual(expect.arrayContaining(['drawn', 'cut', 'depth']));
});

test('every field of the ticket lands in the job file, which asks for the same proof', async () => {
  const { page } = await viewer.open();
  await chooseFiles(page, { 'bars.svg': BARS });
  await judged(page);
  for (const group of ['Resin and colour', 'Levelling', 'Shop and dates', 'Size and reading', 'Board']) {
    await openGroup(page, group);
  }
  const typed: readonly (readonly [label: string, text: string])[] = [
    ['Fibres dive into the face by', '5deg'],
    ['Pigment or dye, percent of the mix', '4'],
    ['Poured proud of the face by', '0.8mm'],
    ['Stays in the cup, percent', '20'],
    ['Equal boards poured together', '3'],
    ['Price of a gram of mix', '0.03'],
    ['Takes off the face', '0.7mm'],
    ['Temperature of shop and resin', '20C'],
    ['Width of the artwork', '100mm'],
    ['Largest deviation of flattened curves', '0.01mm'],
  ];
  for (const [label, text] of typed) {
    await type(page, label, text);
  }
  await page.getByLabel('Colour', { exact: true }).selectOption('blue');
  await page.getByLabel('Resin', { exact: true }).selectOption('deep-pour');
  await page.getByLabel('Scale', { exact: true }).selectOption('fine');
  await page.getByLabel('Levelled by').selectOption('planer');
  await page.getByLabel('oiled or waxed').check();
  await judged(page);
  const job = await savedJob(page);
  expect(job).toMatchObject({
    dive: '5deg',
    pigmentPct: 4,
    overpour: '0.8mm',
    wastePct: 20,
    boards: 3,
    pricePerG: 0.03,
    level: '0.7mm',
    shopTemp: '20C',
    width: '100mm',
    tolerance: '0.01mm',
    colour: 'blue',
    resin: 'deep-pour',
    weigh: 'fine',
    levelBy: 'planer',
    oiled: true,
  });
  const drawing = readArtwork(new TextEncoder().encode(BARS), 'bars.svg', {
    widthMm: 100,
    toleranceMm: 0.01,
  });
  const there = vetDrawing(drawing, 'bars.svg', settleJob(readJobFile(job, 'j'))).report;
  expect(toTenDigits(await savedReport(page))).toEqual(toTenDigits(there));
});

test('a board is laid and taken off again, and what the job cannot mean is refused at its field', async () => {
  const { page } = await viewer.open();
  await chooseFiles(page, { 'bars.svg': BARS });
  await judged(page);
  await openGroup(page, 'Board');
  const board = page.getByLabel('Glue-up in one line');
  await board.fill('stripes 300x180x20mm maple');
  await board.press('Tab');
  expect(await page.locator('#board-problem').textContent()).toBe(
    '“Glue-up in one line”: the stripe of maple has no width. Type it as in maple:40mm.',
  );
  expect(await board.getAttribute('aria-invalid')).toBe('true');
  await type(page, 'Glue-up in one line', 'plain 300x180x20mm walnut');
  expect(await page.locator('#board-problem').textContent()).toBe('');
  // the board speaks for wood and fibres
  expect(await page.getByLabel('Wood', { exact: true }).count()).toBe(0);
  await type(page, 'Turn of the artwork, counter-clockwise', '30deg');
  const places = ['10mm,10mm 20mm', '290mm,10mm 20mm', '10mm,170mm 20mm', '290mm,170mm 20.4mm'];
  await type(page, 'Heights of the face, 5 to 9, one a line', places.join('\n'));
  expect(await page.locator('#reading-problem').textContent()).toContain('a list of 5 to 9 heights');
  await type(page, 'Heights of the face, 5 to 9, one a line', [...places, '150mm,90mm 20mm'].join('\n'));
  const { endGrain, levelling } = await savedReport(page);
  expect(endGrain.byBlock.map((kind) => kind.grainDeg)).toEqual([150]);
  expect(levelling.flatness?.rangeMm).toBeGreaterThan(0);
  await type(page, 'Glue-up in one line', '');
  expect(await savedJob(page)).not.toHaveProperty('turn');
  expect(await page.getByLabel('Wood', { exact: true }).count()).toBe(1);
});

test('own materials are offered and used, and the page goes back to the usual ones', async () => {
  const { page } = await viewer.open();
  const materials = {
    schema: 'pourproof/materials@1',
    woods: { plum: { like: 'cherry', name: 'garden plum' } },
  };
  await chooseFiles(page, { 'materials.json': JSON.stringify(materials), 'bars.svg': BARS });
  await judged(page);
  await page.getByLabel('Wood', { exact: true }).selectOption('plum');
  await judged(page);
  expect((await savedReport(page)).bleed.blocks[0]?.species).toBe('garden plum');
  await page.getByRole('button', { name: 'Take off: the materials' }).click();
  // the job still names the maker's wood
  expect(await note(page)).toContain('“Wood” "plum" is unknown');
  await page.getByLabel('Wood', { exact: true }).selectOption('cherry');
  await page.getByRole('button', { name: 'Take off: the materials' }).click();
  expect(await page.getByLabel('Wood', { exact: true }).locator('option').allTextContents()).not.toContain(
    'garden plum',
  );
});

test('coupons move the band, and the page can do without them again', async () => {
  const { page } = await viewer.open();
  const coupons = {
    schema: 'pourproof/coupons@1',
    coupons: [{ slots: ['none below 0.45mm', 'none below 0.45mm'] }],
  };
  await chooseFiles(page, { 'bars.svg': BARS });
  await judged(page);
  const before = (await savedReport(page)).bleed.blocks[0];
  await chooseFiles(page, { 'coupons.json': JSON.stringify(coupons) });
  await judged(page);
  const after = (await savedReport(page)).bleed.blocks[0];
  expect([before?.basis, after?.basis]).toEqual(['prior', 'calibrated']);
  expect(after?.travelMm.median).toBeLessThan(before?.travelMm.median ?? 0);
  expect(await savedJob(page)).toMatchObject({ coupons: coupons.coupons });
  await page.getByRole('button', { name: 'Take off: the coupons' }).click();
  await judged(page);
  expect((await savedReport(page)).bleed.blocks[0]?.basis).toBe('prior');
});

test('files that cannot be used are told, and what was on the page stays', async () => {
  const { page, complaints } = await viewer.open();
  await chooseFiles(page, { 'bars.svg': BARS });
  await judged(page);
  const before = await savedReport(page);
  const bad: readonly (readonly [content: string, words: string])[] = [
    ['{"schema": "pourproof/job@1", "wod": 1}', 'job.json is not a pourproof/job@1 file'],
    ['{"schema": ', 'job.json is not JSON'],
    ['{"name": "x"}', 'neither a job, a shop, a materials nor a coupons file'],
    ['{"schema": "pourproof/job@1", "depth": "0mm"}', '“Depth of the pocket” is 0 mm'],
    [
      '{"schema": "pourproof/job@1", "artwork": "crest.dxf"}',
      'This job is for crest.dxf: choose that file too.',
    ],
  ];
  for (const [content, words] of bad) {
    await chooseFiles(page, { 'job.json': content });
    await judged(page);
    expect(await note(page)).toContain(words);
  }
  expect((await savedReport(page)).artwork).toEqual(before.artwork);
  expect(complaints).toEqual([]);
});

test('live text alone is no proof of nothing: it asks for a font, and the font that comes later is taken', async () => {
  const { page } = await viewer.open();
  await chooseFiles(page, { 'words.svg': LIVE_TEXT });
  const note = page.locator('failure-note dl');
  await note.waitFor();
  expect(await note.textContent()).toMatch(/nothing to cut.*no font was given: "Oak"/u);
  await chooseFiles(page, { 'arvo-400.ttf': readFileSync(`${fonts}arvo-400.ttf`) });
  await expect.poll(() => note.count(), { timeout: 20_000 }).toBe(0);
  expect(['Stop', 'Caution', 'Clear']).toContain(await judged(page));
});

test('a font that comes with a drawing turns its live text into shapes, and one for no text is told', async () => {
  const { page } = await viewer.open();
  const font = readFileSync(`${fonts}arvo-400.ttf`);
  await chooseFiles(page, { 'words.svg': LIVE_TEXT, 'arvo-400.ttf': font });
  await judged(page);
  expect((await savedReport(page)).artwork.areaMm2).toBeGreaterThan(20);
  expect(await savedJob(page)).toMatchObject({ artwork: 'words.svg', font: 'arvo-400.ttf' });
  await chooseFiles(page, { 'bars.svg': BARS, 'arvo-400.ttf': font });
  await judged(page);
  const codes = (await savedReport(page)).artwork.notices.map(({ code }) => code);
  expect(codes).toContain('setting-without-effect');
});

test('touching colours are poured in rounds at a press, and the page tells the rounds', async () => {
  const { page, complaints } = await viewer.open();
  const plate = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">
    <rect x="5" y="5" width="40" height="40"/><circle cx="25" cy="25" r="8" fill="#e30613"/></svg>`;
  const job = {
    ...JOB,
    artwork: 'plate.svg',
    board: undefined,
    turn: undefined,
    wood: 'walnut',
    boards: 6,
    weigh: 'fine',
  };
  await chooseFiles(page, { 'job.json': JSON.stringify(job), 'plate.svg': plate });
  await judged(page);
  await page.locator('.head[data-code=colours-touch]').click();
  await page.getByRole('button', { name: 'Pour in rounds' }).click();
  await judged(page);
  expect((await savedJob(page)).rounds).toBe('black, red');
  const report = await savedReport(page);
  expect(report.findings.map(({ code }: { code: string }) => code)).not.toContain('colours-touch');
  expect(report.rounds).toHaveLength(2);
  await expect.poll(() => page.getByRole('heading', { name: 'Rounds', exact: true }).count()).toBe(1);
  expect(complaints).toEqual([]);
});
