import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readLettering } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';
import { chromium } from 'playwright-core';
import { build, type InlineConfig, preview } from 'vite';
import { expect, test } from 'vitest';
import { ensureChromium } from '../../support/find-chromium.mjs';

const fonts = fileURLToPath(new URL('../../../fixtures/fonts/', import.meta.url));

async function areasInNode(file: string, text: string): Promise<string[]> {
  const font = new Uint8Array(readFileSync(join(fonts, file)));
  const { shapes } = await readLettering(text, { font, widthMm: 50 });
  return shapes.map((shape) => signedArea(shape.region).toFixed(6));
}

test('a built page sets lettering in a module worker as Node does, from its own files alone', async () => {
  const outDir = mkdtempSync(join(tmpdir(), 'pourproof-lettering-'));
  const config: InlineConfig = {
    root: fileURLToPath(new URL('./browser-worker/', import.meta.url)),
    configFile: false,
    logLevel: 'error',
    publicDir: fonts,
    resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
    worker: { format: 'es' },
    build: { outDir, emptyOutDir: true, target: 'es2022' },
    preview: { host: '127.0.0.1', port: 0 },
  };
  await build(config);
  const server = await preview(config);
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
  try {
    const url = server.resolvedUrls?.local[0] as string;
    const page = await browser.newPage();
    const elsewhere: string[] = [];
    page.on('request', (request) => {
      if (!request.url().startsWith(url)) {
        elsewhere.push(request.url());
      }
    });
    await page.goto(url);
    await page.waitForFunction(() => document.getElementById('out')?.textContent !== '');
    const expected = [
      ...(await areasInNode('arvo-400.ttf', 'AVATo')),
      ...(await areasInNode('josefin-sans-latin-100.woff', 'Iggy')),
      ...(await areasInNode('amiri-arabic-400.woff2', 'سلام')),
    ];
    expect(await page.textContent('#out')).toBe(expected.join(' '));
    expect(elsewhere).toEqual([]);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true });
  }
});
