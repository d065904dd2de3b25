import { expect, test } from 'vitest';
import { savedJob } from '../support/viewer/saved-ticket.ts';
import {
  chooseFiles,
  judged,
  keepPicture,
  savedText,
  viewerForTests,
} from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();
/** A proof of the demo may have to be given up first. */
const SOON = { timeout: 20_000 };
const SHOP = {
  schema: 'pourproof/shop@1',
  bits: [{ bit: 'flat:1.5mm', price: 14 }],
  usual: { seal: 'shellac' },
} as const;

test('the demo lies there, proved and said to be the demo; a name takes its place as it is typed, under the shop’s own settings; nothing is lost', async () => {
  const { page, complaints, elsewhere } = await viewer.open({ serviceWorkers: 'allow' }, '');
  const steps = (): Promise<string[]> =>
    page
      .locator('step-strip li')
      .allTextContents()
      .then((all) => all.map((each) => each.trim()));
  const currentStep = page.locator('step-strip [aria-current=step]');
  expect(['Stop', 'Caution', 'Clear']).toContain(await judged(page));
  expect(await page.locator('.demo').textContent()).toContain('This is the demo');
  expect((await page.locator('.purpose').textContent())?.match(/[a-z]\.(?:\s|$)/gu)).toHaveLength(3);
  await keepPicture(page, 'first-sight');

  await chooseFiles(page, { 'shop.json': JSON.stringify(SHOP) });
  await page.getByLabel('Type a name').pressSequentially('Elm');
  await expect.poll(() => page.locator('.file b').textContent(), SOON).toBe('Elm');
  await judged(page);
  expect(await savedJob(page)).toEqual({
    schema: 'pourproof/job@1',
    text: 'Elm',
    font: 'lora-400.ttf',
    capHeight: '15mm',
  });
  // what neither job nor demo says comes from the shop
  expect(await page.getByLabel('Bit 1', { exact: true }).inputValue()).toBe('1.5mm');
  expect(await page.getByLabel('Seal before the colour').inputValue()).toBe('shellac');
  expect(JSON.parse(await savedText(page, 'Save: the file of the shop'))).toEqual(SHOP);
  expect(await steps()).toEqual(['The demo', 'Opened shop.json', '“Elm” in Lora']);

  await page.getByRole('button', { name: 'Undo' }).click();
  expect((await currentStep.textContent())?.trim()).toBe('Opened shop.json');
  expect(await page.locator('.demo').count()).toBe(1);
  await page.keyboard.press('Control+Shift+Z');
  await judged(page);
  expect(await page.getByLabel('Type a name').inputValue()).toBe('Elm');

  // a second tab neither takes the job over nor hides that the first has it
  const second = await page.context().newPage();
  await second.goto(`${page.url()}#blank`);
  await expect
    .poll(() => second.locator('kept-jobs [role=status]').textContent(), SOON)
    .toContain('“Elm” is open in another tab');
  await second.close();

  // loaded again without a connection, all of it is there, and is proved
  await page.getByText('opens without a connection').waitFor();
  await page.context().setOffline(true);
  await page.reload();
  await expect.poll(steps, SOON).toEqual(['The demo', 'Opened shop.json', '“Elm” in Lora']);
  expect(['Stop', 'Caution', 'Clear']).toContain(await judged(page));
  await page.getByRole('button', { name: 'Undo' }).click();
  expect((await currentStep.textContent())?.trim()).toBe('Opened shop.json');
  expect(complaints.filter((text) => !text.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
  expect(elsewhere).toEqual([]);
});
