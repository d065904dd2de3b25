import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import type { Report } from '@pourproof/proof';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { build, type InlineConfig, preview } from 'vite';
import { afterAll, beforeAll } from 'vitest';
import { ensureChromium } from '../find-chromium.mjs';

/** The built viewer on a loopback address, and a browser to open it in. */
interface ServedViewer {
  readonly url: string;
  /** A page with a blank sheet, so that no test waits for the demo, or another address: `''` is what a maker sees first. */
  readonly open: (
    options?: BrowserContextOptions,
    address?: '' | '#blank' | 'gallery.html',
  ) => Promise<OpenedPage>;
  readonly close: () => Promise<void>;
}

/** A page with all that went wrong or went elsewhere since it was opened. */
interface OpenedPage {
  readonly page: Page;
  readonly complaints: string[];
  readonly elsewhere: string[];
}

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
/** Where the viewer is built for tests. */
const BUILDS = join(ROOT, 'node_modules/.cache/pourproof-viewer');
const HASH = /^[\da-f]{16}$/u;
const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A bar 40 × 6 mm and two of 20 × 1.2 mm, too narrow for the bit of the demo's job. */
export const BARS = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">
  <rect x="5" y="5" width="40" height="6"/><rect x="5" y="20" width="20" height="1.2"/>
  <rect x="30" y="20" width="20" height="1.2"/></svg>`;

/** The viewer for all tests of a file: served before the first, closed after the last. */
export function viewerForTests(): Pick<ServedViewer, 'open'> {
  let viewer: ServedViewer | null = null;
  beforeAll(async () => {
    viewer = await serveViewer();
  }, 60_000);
  afterAll(async () => {
    await viewer?.close();
  });
  return {
    open: (...how) => viewer?.open(...how) ?? Promise.reject(new Error('the viewer is not served yet')),
  };
}

/** The viewer as it was built for the first test of this process that asked. */
let built: Promise<InlineConfig> | undefined;

/** Builds the viewer as `npm start` does. Test files share what was built of the same sources: the first that comes builds it. */
async function builtViewer(): Promise<InlineConfig> {
  const root = join(ROOT, 'apps/viewer');
  const outDir = join(BUILDS, sourcesHash());
  const config = (folder: string): InlineConfig => ({
    root,
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    // beside the page, the gallery of its elements
    build: {
      outDir: folder,
      emptyOutDir: true,
      rolldownOptions: { input: ['index.html', 'gallery.html'].map((name) => join(root, name)) },
    },
    mode: 'production',
    preview: { host: '127.0.0.1', port: 0, strictPort: false },
  });
  if (!existsSync(outDir)) {
    mkdirSync(BUILDS, { recursive: true });
    // what others are building has a longer name
    for (const older of readdirSync(BUILDS).filter((name) => HASH.test(name))) {
      rmSync(join(BUILDS, older), { recursive: true, force: true });
    }
    const own = mkdtempSync(`${outDir}-`);
    await buildAsServed(config(own));
    keepAs(own, outDir);
  }
  return config(outDir);
}

/** Gives a folder its name, unless another process was faster. */
function keepAs(own: string, name: string): void {
  try {
    renameSync(own, name);
  } catch (error) {
    rmSync(own, { recursive: true, force: true });
    if (!existsSync(name)) {
      throw error;
    }
  }
}

/** What the viewer is built of: names, sizes and times of all its files. */
function sourcesHash(): string {
  const hash = createHash('sha256');
  const folders = readdirSync(join(ROOT, 'packages')).map((name) => `packages/${name}/src`);
  for (const folder of ['apps/viewer', 'fixtures/demo', 'fixtures/fonts', ...folders]) {
    for (const entry of readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })) {
      const path = join(entry.parentPath, entry.name);
      if (entry.isFile() && !/[\\/](?:dist|node_modules)[\\/]/u.test(path)) {
        const { size, mtimeMs } = statSync(path);
        hash.update(`${path} ${size} ${mtimeMs}\n`);
      }
    }
  }
  return hash
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .digest('hex')
    .slice(0, 16);
}

/** Serves the built viewer, and opens a browser for it. */
async function serveViewer(): Promise<ServedViewer> {
  const executablePath = ensureChromium();
  built ??= builtViewer();
  const config = await built;
  const server = await preview(config);
  const browser: Browser = await chromium.launch({ executablePath, args: ARGS });
  const url = server.resolvedUrls?.local[0] as string;
  return {
    url,
    open: async (options = {}, address = '#blank') => opened(browser, `${url}${address}`, options),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

// the test runner names its own environment, and libraries would be built in with their warnings for developers
async function buildAsServed(config: InlineConfig): Promise<void> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build(config);
  } finally {
    process.env.NODE_ENV = before;
  }
}

async function opened(browser: Browser, url: string, options: BrowserContextOptions): Promise<OpenedPage> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    // what a page keeps for days is no matter of most tests
    serviceWorkers: 'block',
    ...options,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  const elsewhere: string[] = [];
  page.on('console', (message) => {
    const isOfTheTest = message.text().startsWith('Service Worker registration blocked');
    if (!isOfTheTest && (message.type() === 'error' || message.type() === 'warning')) {
      complaints.push(message.text());
    }
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(new URL('.', url).href) && !/^(data|blob):/u.test(request.url())) {
      elsewhere.push(request.url());
    }
  });
  await page.goto(url);
  return { page, complaints, elsewhere };
}

/** Drops a file on the page as a hand would. */
export async function dropFile(page: Page, name: string, content: string | Uint8Array): Promise<void> {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const transfer = await page.evaluateHandle(
    ([file, data]) => {
      const held = new DataTransfer();
      held.items.add(new File([new Uint8Array(data)], file));
      return held;
    },
    [name, [...bytes]] as const,
  );
  await page.dispatchEvent('body', 'dragover', { dataTransfer: transfer });
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
}

/** Chooses files as the page's own dialogue would hand them over: contents by name. */
export async function chooseFiles(
  page: Page,
  files: Readonly<Record<string, string | Uint8Array>>,
): Promise<void> {
  const chosen = Object.entries(files).map(([name, content]) => ({
    name,
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(content as string),
  }));
  await page.locator('drop-zone input[type=file]').setInputFiles(chosen);
}

/** Opens a group of the job ticket by the start of its title. */
export async function openGroup(page: Page, title: string): Promise<void> {
  await page.locator('job-form summary', { hasText: title }).first().click();
}

/** The text of the file that a button saves. */
export async function savedText(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

/** The JSON of the file that a button saves. */
export async function saved(page: Page, button: string): Promise<unknown> {
  return JSON.parse(await savedText(page, button));
}

/** Through JSON, as the saved file is; sines of two JavaScript engines may differ in the last of 16 digits, and sums of them by more. */
export function toTenDigits(report: Report): unknown {
  return JSON.parse(JSON.stringify(report), (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toPrecision(10)) : value,
  );
}

/** Waits for the whole proof that the last change asked for and gives its verdict in words, or what stands in its way. */
export async function verdict(page: Page): Promise<string> {
  return answerIn('article[aria-busy=false]:has(#findings[aria-busy=false])', page);
}

/** The same as soon as it is known: ways out of the findings may still be tried, which takes longer than all the rest. */
export async function judged(page: Page): Promise<string> {
  return answerIn('article[aria-busy=false]', page);
}

async function answerIn(paper: string, page: Page): Promise<string> {
  const answer = page.locator(`${paper} :is(.verdict .tag, failure-note dl)`);
  return (await answer.first().textContent()) ?? '';
}

/** Keeps a picture of the page for the eye. */
export async function keepPicture(page: Page, name: string): Promise<void> {
  mkdirSync(join(ROOT, 'proof-out'), { recursive: true });
  await page.screenshot({ path: join(ROOT, 'proof-out', `viewer-${name}.png`) });
}
