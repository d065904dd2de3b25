import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const ALL = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What an independent checker finds wrong by WCAG 2.2 A and AA, and by its best practices, with the elements. */
export async function breaches(page: Page, rules: readonly string[] = ALL): Promise<string[]> {
  // as an extension of the browser would: the page's policy takes no code from elsewhere
  await page.evaluate(AXE);
  const { violations } = (await page.evaluate(
    `axe.run(document, { runOnly: ${JSON.stringify(rules)} })`,
  )) as AxeResults;
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')}`));
}
