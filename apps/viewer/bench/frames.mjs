// How smoothly the page answers with a large drawing on its sheet: `npm run bench:page [-- GLYPHS … --page]`, after `npm run build:viewer`. Frame times come from
// requestAnimationFrame, long tasks of the main thread from the browser's own performance entries. Read it on an idle machine. --page writes docs/method/frames.md.
import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg } from 'node:os';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { ensureChromium } from '../../../tests/support/find-chromium.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const asked = process.argv.slice(2).map(Number).filter(Number.isFinite);
const sizes = asked.length > 0 ? asked : [1000];
const ANSWER_MS = 600_000;
const LINE = 'Hamburgefonstiv Rowan & Quill 1987';
const font = readFileSync(new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url));

const server = await preview({
  root,
  configFile: `${root}vite.config.ts`,
  preview: { host: '127.0.0.1', port: 0, strictPort: false },
});
const browser = await chromium.launch({
  executablePath: ensureChromium(),
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});

/** A page that notes its frames and its long tasks. */
async function watchedPage() {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  await page.addInitScript(() => {
    const seen = { tasks: [], frames: [] };
    globalThis.seenByBench = seen;
    new PerformanceObserver((list) =>
      seen.tasks.push(...list.getEntries().map(({ duration }) => duration)),
    ).observe({ type: 'longtask', buffered: true });
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
  // without the demo, whose proof would be in the way
  await page.goto(`${server.resolvedUrls.local[0]}#blank`);
  return page;
}

/** Does something and gives what the browser saw meanwhile. */
async function measured(page, what, act) {
  await page.evaluate(() => {
    globalThis.seenByBench.tasks.length = 0;
    globalThis.seenByBench.frames.length = 0;
  });
  await browser.startTracing(page, { categories: ['toplevel'] });
  const from = performance.now();
  await act();
  const seconds = (performance.now() - from) / 1000;
  // entries of the last task come after it
  await page.waitForTimeout(300);
  const worst = worstTask(JSON.parse(await browser.stopTracing()).traceEvents);
  const { tasks, frames } = await page.evaluate(() => globalThis.seenByBench);
  const sorted = frames.toSorted((a, b) => a - b);
  return {
    what,
    seconds: seconds.toFixed(1),
    'median frame, ms': Math.round(sorted[sorted.length >> 1] ?? 0),
    'worst frame, ms': Math.round(sorted.at(-1) ?? 0),
    'tasks over 50 ms': tasks.length,
    'worst task, ms': tasks.length === 0 ? '≤ 50' : String(Math.round(Math.max(...tasks))),
    'worst task, ms of processor time': Math.round(worst),
  };
}

/** Processor time of the longest task of a page's own thread, ms: what else the machine does is not in it. */
function worstTask(events) {
  const threads = new Set(
    events
      .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  return events
    .filter(({ ph, tdur, pid, tid }) => ph === 'X' && tdur !== undefined && threads.has(`${pid} ${tid}`))
    .reduce((most, { tdur }) => Math.max(most, tdur / 1000), 0);
}

/** The rows of a drawing with so many letters. */
async function rowsOf(glyphs) {
  const page = await watchedPage();
  const rows = [];
  const row = async (what, act) => rows.push(await measured(page, what, act));
  const text = Array.from({ length: Math.ceil(glyphs / LINE.replaceAll(' ', '').length) }, () => LINE).join(
    '\n',
  );
  const job = {
    schema: 'pourproof/job@1',
    text,
    font: 'lora-400.ttf',
    capHeight: '8mm',
    bit: ['flat:1mm'],
    depth: '2mm',
  };
  await row('opening, until verdict and findings are shown', async () => {
    await page.locator('drop-zone input[type=file]').setInputFiles([
      { name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(job)) },
      { name: 'lora-400.ttf', mimeType: 'font/ttf', buffer: font },
    ]);
    await page.locator('article[aria-busy=false] .verdict .tag').first().waitFor({ timeout: ANSWER_MS });
    await page.locator('.art-canvas[data-shows]').waitFor({ timeout: ANSWER_MS });
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
  await row('drag, all in sight', drag);
  await row('zoom in by 40 turns of the wheel', () => wheel(-60));
  await row('drag, close', drag);
  await row('zoom out again', () => wheel(60));
  await row('the first finding opened, glide to its place', () =>
    page.locator('finding-list .head').first().click(),
  );
  await row('levelling instead of the cut', () =>
    page.getByRole('button', { name: 'Levelling', exact: true }).click(),
  );
  const places =
    (await page.locator('#sheet').getAttribute('aria-label')).match(/\d+(?= marked)/u)?.[0] ?? 'no';
  await page.close();
  return { title: `${text.replaceAll(/\s/gu, '').length} letters, ${places} marked places`, rows };
}

/** The page of docs. */
function pageOf(parts) {
  const table = ({ title, rows }) => {
    const names = Object.keys(rows[0]);
    const line = (cells) => `| ${cells.join(' | ')} |`;
    return [
      `## ${title}`,
      '',
      line(names),
      line(names.map(() => '---')),
      ...rows.map((row) => line(Object.values(row))),
      '',
    ].join('\n');
  };
  return `# How smoothly the page moves

Rendered by \`node apps/viewer/bench/frames.mjs ${sizes.join(' ')} --page\` on ${new Date().toISOString().slice(0, 10)}: ${cpus()[0].model.trim()}, ${availableParallelism()} cores, Chromium ${browser.version()} without a graphics
card. ${load}. Lettering in 8 mm capitals, a 1 mm flat bit. Frames come from requestAnimationFrame, tasks of the page's own thread from the
browser's long task entries, which begin at 50 ms, and their processor time, which other work on the machine is not in, from its trace. Ways out of the findings are still tried by the worker meanwhile, on the second core.

${parts.map(table).join('\n')}`;
}

const [busy] = loadavg();
const load =
  busy < 0.5
    ? 'The machine was idle'
    : `The machine had other work (load ${busy.toFixed(1)}), so read the frames as upper bounds`;
const parts = [];
for (const glyphs of sizes) {
  const part = await rowsOf(glyphs);
  console.log(part.title);
  console.table(part.rows);
  parts.push(part);
}
if (process.argv.includes('--page')) {
  writeFileSync(fileURLToPath(new URL('../../../docs/method/frames.md', import.meta.url)), pageOf(parts));
}
await browser.close();
await server.close();
