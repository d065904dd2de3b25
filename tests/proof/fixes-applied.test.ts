import { readCouponsFile, readJobFile, readMaterialsFile } from '@pourproof/job';
import { applyFix, FIX_SETTINGS, type Fix } from '@pourproof/proof';
import { vet } from 'pourproof';
import { describe, expect, test } from 'vitest';
import { ANSWERED_JOBS } from '../support/front-door/answered-jobs.ts';
import { jobOf, sourceOf, type Trial } from '../support/front-door/trial.ts';

/** A larger drawing is vetted once: to vet it again for every way out takes minutes. */
const MAX_BYTES = 4000;

const applied = new Set<Fix['do']>();

async function followWaysOut(trial: Trial): Promise<void> {
  const source = sourceOf(trial);
  const { schema: _, ...job } = readJobFile(jobOf(trial), 'job.json');
  const materials = trial.materials === undefined ? undefined : readMaterialsFile(trial.materials, 'm.json');
  const coupons = trial.coupons === undefined ? undefined : readCouponsFile(trial.coupons, 'c.json');
  const options = {
    ...(materials === undefined ? {} : { materials }),
    ...(coupons === undefined ? {} : { coupons }),
  };
  const { report } = await vet(source, job, options);
  expect(report.findings.every(({ fix }) => Array.isArray(fix.options))).toBe(true);
  const isSmall = source.kind === 'file' && source.bytes.length <= MAX_BYTES;
  for (const finding of report.findings) {
    for (const fix of finding.fix.options) {
      const fixed = applyFix(job, fix, { materials, coupons, isLettering: source.kind === 'lettering' });
      if (fixed === null) {
        continue;
      }
      applied.add(fix.do);
      const changed = Object.keys({ ...job, ...fixed }).filter(
        (key) => fixed[key as keyof typeof fixed] !== job[key as keyof typeof job],
      );
      expect(changed, `${finding.code}: ${fix.do} changes something`).not.toEqual([]);
      for (const key of changed) {
        const may = [fix, ...(fix.also ?? [])].flatMap((step) => FIX_SETTINGS[step.do]);
        expect(may, `${finding.code}: ${fix.do} changes ${key}`).toContain(key);
      }
      if (isSmall) {
        const { coupons: _beside, ...others } = options;
        const after = await vet(source, fixed, fixed.coupons === undefined ? options : others);
        const still = after.report.findings.find(({ code }) => code === finding.code);
        expect(fix.clears && still !== undefined, `${finding.code}: ${fix.do} clears it`).toBe(false);
      }
    }
  }
}

describe('every way out that a setting expresses is applied, settles and changes no other setting', () => {
  test.each(ANSWERED_JOBS.map((trial) => [trial.name, trial] as const))('%s', async (_, trial) => {
    // some jobs offer work on the drawing alone
    await expect(followWaysOut(trial)).resolves.toBeUndefined();
  });

  test('and the jobs offer many of the kinds that there are; each has a test of its own beside applyFix', () => {
    const offered = ['use-bit', 'scale', 'change-seal', 'use-scale', 'deepen', 'turn'];
    expect([...applied]).toEqual(expect.arrayContaining(offered));
  });
});
