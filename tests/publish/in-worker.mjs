import { chromium } from 'playwright-core';
import { ensureChromium } from '../support/find-chromium.mjs';

/**
 * Runs bundled code as a module in a worker of a real browser and returns what it prints.
 * @param {string} code
 * @param {number} lines how many lines it will print
 * @returns {Promise<string[]>}
 */
export async function printedInWorker(code, lines) {
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    // a page without an address may not start workers of its own; nothing leaves the machine
    await page.route('**/*', (route) =>
      route.fulfill({ contentType: 'text/html', body: '<title>worker</title>' }),
    );
    await page.goto('http://localhost/');
    return await page.evaluate(
      ([text, count]) =>
        new Promise((resolve, reject) => {
          const printing = `console.log = (...parts) => postMessage(parts.join(' '));\n`;
          const address = URL.createObjectURL(new Blob([printing, text], { type: 'text/javascript' }));
          const worker = new Worker(address, { type: 'module' });
          const printed = [];
          worker.onerror = (event) => reject(new Error(event.message));
          worker.onmessage = ({ data }) => {
            printed.push(data);
            if (printed.length === count) {
              resolve(printed);
            }
          };
        }),
      [code, lines],
    );
  } finally {
    await browser.close();
  }
}
