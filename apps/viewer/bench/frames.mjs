// How smoothly the page answers with a large drawing on its sheet: `npm run bench:page [-- GLYPHS]`, after `npm run build:viewer`. Frame times come from
// requestAnimationFrame, long tasks of the main thread from the browser's own performance entries. Read it on an idle machine.
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { ensureChromium } from '../../../tests/support/find-chromium.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const glyphs = Number(process.argv[2] ?? 1000);
const PROOF_MS = 600_000;
const LINE = 'Hamburgefonstiv Rowan & Quill 1987 ';

const server = await preview({
  root,
  configFile: `${root}vite.config.ts`,
  preview: { host: '127.0.0.1', port: 0, strictPort: false },
});
const browser = await chromium.launch({
  executablePath: ensureChromium(),
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
await page.addInitScript(() => {
  const seen = { tasks: [], frames: [] };
  globalThis.seenByBench = seen;
  new PerformanceObserver((list) =>
    seen.tasks.push(...list.getEntries().map(({ duration }) => duration)),
  ).observe({
    type: 'longtask',
    buffered: true,
  });
  let last = 0;
  const step = (now) => {
    if (last > 0) {
      seen.frames.push(now - last);
    }
    last = now;
    requestAnimationFrame(step);
  };
  requestAnimationFrame(step);
});
await page.goto(server.resolvedUrls.local[0]);

const rows = [];

/** Does something and keeps what the browser saw meanwhile. */
async function measured(name, act) {
  await page.evaluate(() => {
    globalThis.seenByBench.tasks.length = 0;
    globalThis.seenByBench.frames.length = 0;
  });
  await act();
  // entries of the last task come after it
  await page.waitForTimeout(300);
  const { tasks, frames } = await page.evaluate(() => globalThis.seenByBench);
  const sorted = frames.toSorted((a, b) => a - b);
  rows.push({
    what: name,
    frames: frames.length,
    'median ms': Math.round(sorted[sorted.length >> 1] ?? 0),
    'worst ms': Math.round(sorted.at(-1) ?? 0),
    'tasks over 50 ms': tasks.length,
    'worst task ms': tasks.length === 0 ? '< 50' : Math.round(Math.max(...tasks)),
  });
}

const text = Array.from({ length: Math.ceil(glyphs / 32) }, () => LINE.trim()).join('\n');
const job = {
  schema: 'pourproof/job@1',
  text,
  font: 'lora-400.ttf',
  capHeight: '8mm',
  bit: ['flat:1mm'],
  depth: '2mm',
};
const font = readFileSync(new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url));
await measured('opening and proof', async () => {
  await page.locator('drop-zone input[type=file]').setInputFiles([
    { name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(job)) },
    { name: 'lora-400.ttf', mimeType: 'font/ttf', buffer: font },
  ]);
  await page.locator('article[aria-busy=false] .verdict .tag').first().waitFor({ timeout: PROOF_MS });
  await page.locator('.art-canvas[data-shows]').waitFor({ timeout: PROOF_MS });
});

const box = await page.locator('proof-sheet .sheet').boundingBox();
const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
const drag = async () => {
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let k = 0; k < 60; k++) {
    await page.mouse.move(x + 3 * k, y + 2 * k);
  }
  await page.mouse.up();
};
const wheel = async (delta) => {
  await page.mouse.move(x, y);
  for (let k = 0; k < 40; k++) {
    await page.mouse.wheel(0, delta);
    await page.waitForTimeout(16);
  }
};
await measured('drag, all in sight', drag);
await measured('zoom in by 40 turns of the wheel', () => wheel(-60));
await measured('drag, close', drag);
await measured('zoom out again', () => wheel(60));
await measured('the first finding opened, glide to its place', () =>
  page.locator('finding-list .head').first().click(),
);
await measured('levelling instead of the cut', () =>
  page.getByRole('button', { name: 'Levelling', exact: true }).click(),
);

console.log(
  `${text.replaceAll(/\s/gu, '').length} glyphs, sheet of ${Math.round(box.width)} × ${Math.round(box.height)} px`,
);
console.table(rows);
await browser.close();
await server.close();
