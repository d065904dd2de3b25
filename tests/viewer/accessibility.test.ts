import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { breaches } from '../support/viewer/breaches.ts';
import { BARS, dropFile, openGroup, verdict, viewerForTests } from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();

/** Name and role of what has the focus, through all shadow roots. */
async function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    let element = document.activeElement;
    if (element === document.body) {
      return 'end of the page';
    }
    while (element?.shadowRoot?.activeElement) {
      element = element.shadowRoot.activeElement;
    }
    const root = element?.getRootNode() as ShadowRoot | undefined;
    const label = element?.id ? root?.querySelector(`label[for="${element.id}"]`) : element?.closest('label');
    return (element?.getAttribute('aria-label') ?? label?.textContent ?? element?.textContent ?? '').trim();
  });
}

test('the blank page, the proof, the open ticket and lettering pass an independent checker', async () => {
  const { page } = await viewer.open({ viewport: { width: 1280, height: 900 } });
  expect(await breaches(page)).toEqual([]);
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  await page.locator('.head').first().click();
  await page.getByText('Lettering: lines, spacing').click();
  await page.getByText('More: lines').click();
  for (const title of ['Board', 'Resin and colour', 'Levelling', 'Shop and dates', 'Size and reading']) {
    await openGroup(page, title);
  }
  await page.getByLabel('Depth of the pocket').fill('3');
  await page.getByLabel('Depth of the pocket').press('Tab');
  expect(await breaches(page)).toEqual([]);
});

test('on a phone, and with a file that cannot be read, it passes too', async () => {
  const { page } = await viewer.open({ viewport: { width: 390, height: 844 }, hasTouch: true });
  await dropFile(page, 'broken.svg', '<svg xmlns="http://www.w3.org/2000/svg"><g></svg>');
  await page.locator('failure-note dl').waitFor();
  expect(await breaches(page)).toEqual([]);
});

test('tabbing goes through the ticket from top to bottom, and nothing has the focus without a name', async () => {
  const { page } = await viewer.open();
  await openGroup(page, 'Levelling');
  await page.locator('a.to-findings').focus();
  const names: string[] = [];
  for (let k = 0; k < 30; k++) {
    await page.keyboard.press('Tab');
    names.push(await focused(page));
  }
  expect(names.filter((name) => name === '')).toEqual([]);
  const order = [
    'Choose files…',
    'Show the demo',
    'Lettering: lines, spacing',
    'Job ticket',
    'Bit 1',
    'Add a bit',
    'Depth of the pocket',
    'Wood',
    'Seal before the colour',
    'Fibres, slider, degrees counter-clockwise',
    'Fibres, degrees counter-clockwise',
    'This board was oiled or waxed',
    'Board',
    'Resin and colour',
    'Levelling',
    'Takes off the face',
    'Levelled by',
    'Shop and dates',
  ];
  // a group's name is followed by how many of its values are set
  const at = order.map((name) => names.findIndex((each) => each.startsWith(name)));
  expect(at, names.join('; ')).toEqual(at.toSorted((a, b) => a - b));
  expect(at).not.toContain(-1);
});

test('the verdict is told to a screen reader when it changes, and a refused value at once', async () => {
  const { page } = await viewer.open();
  const status = page.locator('.verdict[role=status][aria-live=polite]');
  expect(await status.count()).toBe(1);
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  expect(await status.textContent()).toContain('Do not cut it yet.');
  await page.getByLabel('Depth of the pocket').fill('-1mm');
  await page.getByLabel('Depth of the pocket').press('Tab');
  const problem = page.locator('[role=alert]', { hasText: 'it must be above 0' });
  expect(await problem.count()).toBe(1);
  const described = await page.getByLabel('Depth of the pocket').getAttribute('aria-describedby');
  expect(described?.split(' ')).toContain(await problem.getAttribute('id'));
});

test('nothing is told by colour alone: grades are words, and areas differ by pattern in grey too', async () => {
  const { page } = await viewer.open();
  await dropFile(page, 'bars.svg', BARS);
  await verdict(page);
  const grades = await page.locator('finding-list .tag').allTextContents();
  expect(grades.length).toBeGreaterThan(1);
  expect(grades.every((grade) => /^(?:Stop|Caution|Note)$/u.test(grade.trim()))).toBe(true);
  const paint = (name: string): Promise<{ fill: string; dash: string }> =>
    page
      .locator(`proof-sheet .art .${name}`)
      .first()
      .evaluate((shape) => {
        const { fill, strokeDasharray } = getComputedStyle(shape);
        return { fill, dash: strokeDasharray };
      });
  // the looks that the canvas paints by are those of paper
  await page.emulateMedia({ media: 'print' });
  // left standing is hatched, narrow strokes are dotted, the far edge of bleed is dotted, the likely one is a line
  expect((await paint('standing')).fill).toContain('url(');
  expect((await paint('narrow')).dash).not.toBe('none');
  expect((await paint('bleed-high')).dash).not.toBe('none');
  expect((await paint('bleed-median')).dash).toBe('none');
});
