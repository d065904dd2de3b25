import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { savedReport } from '../support/viewer/saved-ticket.ts';
import { BARS, chooseFiles, dropFile, judged, viewerForTests } from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();

/** Runs if any of its ways of running is open, and asks another host if any of its ways of asking is. */
const ATTACK = 'window.pwned=1;fetch("https://elsewhere.invalid/a")';
const HOSTILE_SVG = `<?xml version="1.0"?>
<?xml-stylesheet href="https://elsewhere.invalid/sheet.css"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="60mm" height="30mm" viewBox="0 0 60 30"
  onload='${ATTACK}'>
  <script>${ATTACK}</script>
  <script href="https://elsewhere.invalid/s.js"/>
  <style>@import url("https://elsewhere.invalid/i.css"); @font-face { font-family: x; src: url("https://elsewhere.invalid/f.woff2") } rect { background: url("https://elsewhere.invalid/b.png") }</style>
  <image href="https://elsewhere.invalid/p.png" width="9" height="9"/>
  <use href="https://elsewhere.invalid/u.svg#a"/>
  <foreignObject width="9" height="9"><img xmlns="http://www.w3.org/1999/xhtml" src="x" onerror='${ATTACK}'/></foreignObject>
  <a href="javascript:${encodeURI(ATTACK)}"><rect x="5" y="5" width="40" height="6" onclick='${ATTACK}'/></a>
  <g id="&lt;img src=x onerror=${ATTACK.replaceAll('"', '&quot;')}&gt;"><rect x="5" y="20" width="20" height="1.2"><set attributeName="onmouseover" to="${ATTACK.replaceAll('"', '&quot;')}"/></rect></g>
  <text x="4" y="28" font-size="4">&lt;img src=x onerror=${ATTACK.replaceAll('"', '&quot;')}&gt;</text>
</svg>`;
const HOSTILE_NAME = '"><img src=x onerror=window.pwned=1>.svg';

/** Notes what the page's policy refuses from now on. */
async function watchPolicy(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const refused: string[] = [];
    addEventListener('securitypolicyviolation', (event) =>
      refused.push(`${event.effectiveDirective} ${event.blockedURI}`),
    );
    Object.assign(globalThis, { refused });
  });
  return () => page.evaluate('refused');
}

test('a hostile drawing, job, materials and names run nothing and ask nobody, not even a refusal of the policy is needed', async () => {
  const { page, complaints, elsewhere } = await viewer.open();
  const refused = await watchPolicy(page);
  await chooseFiles(page, {
    [HOSTILE_NAME]: HOSTILE_SVG,
    'job.json': JSON.stringify({ schema: 'pourproof/job@1', wood: 'evil' }),
    'materials.json': JSON.stringify({
      schema: 'pourproof/materials@1',
      woods: { evil: { like: 'cherry', name: '<img src=x onerror=window.pwned=1>' } },
    }),
  });
  expect(await judged(page)).toMatch(/^(?:Stop|Caution|Clear)$/u);
  expect((await savedReport(page)).artwork.file).toBe(HOSTILE_NAME);
  expect(await page.locator('.file b').textContent()).toBe(HOSTILE_NAME);
  for (const head of await page.locator('.head').all()) {
    await head.click();
  }
  await page.getByRole('button', { name: 'Levelling', exact: true }).click();
  await chooseFiles(page, {
    'job.json': JSON.stringify({ schema: 'pourproof/job@1', wood: '<img src=y onerror=window.pwned=1>' }),
  });
  await expect.poll(() => page.locator('drop-zone .note').textContent()).toContain('<img src=y');
  await dropFile(page, HOSTILE_NAME, '<svg onload="window.pwned=1"><g></svg>');
  await page.locator('failure-note dl').waitFor();
  expect(await page.evaluate('window.pwned')).toBeUndefined();
  expect(elsewhere).toEqual([]);
  expect(await refused()).toEqual([]);
  expect(complaints).toEqual([]);
});

test('the policy itself holds: inline code, text as code, styles and hosts elsewhere are refused', async () => {
  const { page } = await viewer.open();
  const refused = await watchPolicy(page);
  const ran = await page.evaluate(async () => {
    const tried = (act: () => unknown): string => {
      try {
        act();
        return 'done';
      } catch {
        return 'refused';
      }
    };
    const inline = document.createElement('script');
    const text = tried(() => {
      inline.text = 'window.pwned = 1';
      document.head.append(inline);
    });
    document.body.setAttribute('style', 'outline: 1px solid red');
    const style = document.createElement('style');
    style.append('body { color: red }');
    document.head.append(style);
    const image = new Image();
    image.src = 'https://elsewhere.invalid/p.png';
    // what a debugger runs may make code of text until it has waited once
    await new Promise((resolve) => setTimeout(resolve));
    return {
      text,
      html: tried(() => {
        document.body.innerHTML = '<img src=x onerror="window.pwned = 1">';
      }),
      code: tried(() => new Function('window.pwned = 1')()),
      worker: tried(() => new Worker('data:text/javascript,1')),
      fetched: await fetch('https://elsewhere.invalid/').then(
        () => 'done',
        () => 'refused',
      ),
    };
  });
  expect(ran).toMatchObject({ html: 'refused', code: 'refused', worker: 'refused', fetched: 'refused' });
  expect(await page.evaluate('window.pwned')).toBeUndefined();
  const kinds = (await refused()).map((each) => each.split(' ')[0]);
  expect(kinds).toEqual(
    expect.arrayContaining([
      'style-src-attr',
      'style-src-elem',
      'img-src',
      'connect-src',
      'require-trusted-types-for',
    ]),
  );
});

test('the worker asks no host elsewhere, and fonts of all kinds are unpacked under its policy', async () => {
  const { page } = await viewer.open();
  await page.waitForEvent('worker', { timeout: 1000 }).catch(() => {});
  const [worker] = page.workers();
  const asked = await worker?.evaluate(async () => {
    const refused = new Promise<string>((resolve) =>
      addEventListener('securitypolicyviolation', (event) =>
        resolve((event as SecurityPolicyViolationEvent).effectiveDirective),
      ),
    );
    await fetch('https://elsewhere.invalid/').catch(() => {});
    return refused;
  });
  expect(asked).toBe('connect-src');
  await page.getByText('Lettering: lines, spacing').click();
  await page.getByLabel('Text', { exact: true }).fill('HI');
  await page.getByLabel('Font', { exact: true }).selectOption('Josefin Sans, variable');
  await page.getByRole('button', { name: 'Set this lettering' }).click();
  expect(['Stop', 'Caution', 'Clear']).toContain(await judged(page));
});

test('names from right to left stand by themselves, in the page and in what is beside them', async () => {
  const { page } = await viewer.open();
  const name = 'שלט 5.svg';
  await dropFile(page, name, BARS.replace('<rect', '<text x="3" y="3">שלט</text><rect'));
  await judged(page);
  for (const at of ['.file bdi', 'drop-zone .name bdi']) {
    expect(await page.locator(at).first().textContent()).toBe(name);
  }
  expect(await page.locator('notice-list bdi').first().textContent()).toBe('שלט');
  const direction = await page.locator('lettering-form textarea').getAttribute('dir');
  expect(direction).toBe('auto');
  // the name does not turn the job that is written after it
  const [title, bits] = await page.locator('.file').evaluate((line) => {
    const range = document.createRange();
    range.selectNodeContents(line);
    const rects = [...range.getClientRects()];
    return [rects[0]?.left ?? 0, rects.at(-1)?.left ?? 0];
  });
  expect(title).toBeLessThanOrEqual(bits ?? 0);
});
