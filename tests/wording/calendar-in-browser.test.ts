import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { expect, test } from 'vitest';
import { demoCalendar } from '../support/demo-calendar.ts';
import { ensureChromium } from '../support/find-chromium.mjs';

test('a browser in another time zone writes the same calendar as Node, from one bundle without Node’s modules', async () => {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
    build: {
      write: false,
      target: 'es2022',
      lib: {
        entry: fileURLToPath(new URL('../support/demo-calendar.ts', import.meta.url)),
        formats: ['iife'],
        name: 'page',
      },
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  const chunk = first !== undefined && 'output' in first ? first.output[0] : undefined;
  const code = chunk !== undefined && 'code' in chunk ? chunk.code : '';
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage({ timezoneId: 'America/New_York' });
    await page.addScriptTag({ content: code });
    const inBrowser = await page.evaluate('page.demoCalendar()');
    expect(inBrowser).toBe(await demoCalendar());
    // pour and seal stand where they stand in the shop: the first coat 1.5 h after the start, in the skipped hour or not
    expect(inBrowser).toContain('DTSTART:20260308T023000');
    expect(inBrowser).toContain('DTSTART:20260308T030000');
  } finally {
    await browser.close();
  }
});
