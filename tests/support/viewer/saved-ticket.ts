import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Report } from '@pourproof/proof';
import type { Page } from 'playwright-core';
import { captured } from '../cli/captured-run.ts';
import { saved } from './served-viewer.ts';

/** The report that the page saves. */
export const savedReport = async (page: Page): Promise<Report> =>
  (await saved(page, 'Save report')) as Report;

/** The job file that the page saves. */
export const savedJob = async (page: Page): Promise<Record<string, unknown>> =>
  (await saved(page, 'Save job')) as Record<string, unknown>;

/** What the page says beside the place for files. */
export const note = (page: Page): Promise<string | null> => page.locator('drop-zone .note').textContent();

/** What the command line says to a job file beside its artwork and font. */
export async function onCommandLine(
  job: object,
  files: Readonly<Record<string, string | Uint8Array>>,
): Promise<Report> {
  const folder = mkdtempSync(join(tmpdir(), 'pourproof-job-'));
  for (const [name, content] of Object.entries({ ...files, 'my.job.json': JSON.stringify(job) })) {
    writeFileSync(join(folder, name), content);
  }
  const { out } = await captured(['vet', '--job', 'my.job.json', '--json'], { cwd: folder });
  rmSync(folder, { recursive: true });
  return JSON.parse(out) as Report;
}
