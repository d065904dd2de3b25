import { SETTING_KEYS, SETTINGS, settleJob, usualInput } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import { expect, test } from 'vitest';
import { renderSettingsPage } from '../pages/settings-page.ts';
import { expectPage } from '../support/expect-page.ts';

test('docs/settings.md shows every setting as the table has it', () => {
  expectPage('docs/settings.md', renderSettingsPage());
});

test('every usual value can be given, and then it is what was taken without it', () => {
  const taken = settleJob({});
  for (const key of SETTING_KEYS.filter((each) => SETTINGS[each].usual !== undefined)) {
    const given = settleJob({ [key]: usualInput(key, {}) });
    expect(given.given).toEqual([key]);
    const rest = taken.defaults.filter((each) => each !== key);
    // a bit or a depth in inches asks for an answer in inches
    expect(given.defaults.filter((each) => each !== 'units')).toEqual(
      rest.filter((each) => each !== 'units'),
    );
    expect({ ...given, input: {}, given: [], defaults: [], units: 'mm' }).toEqual({
      ...taken,
      input: {},
      given: [],
      defaults: [],
      units: 'mm',
    });
  }
});

test('a setting that nothing is usual for says what holds instead', () => {
  // artwork, text and font name what is vetted
  const named = ['artwork', 'text', 'font'];
  for (const key of SETTING_KEYS.filter((each) => !named.includes(each))) {
    const { usual, otherwise = '' } = SETTINGS[key];
    expect(usual !== undefined || otherwise !== '', key).toBe(true);
  }
});

test('defaults of practice are the cited limits', () => {
  const job = settleJob({});
  expect(job.overpourMm).toBe(limits.overpour.value);
  expect(job.wastePct).toBe(limits.waste.value);
  expect(job.pigmentPct).toBe(limits.pigmentShare.value);
  expect(job.depthMm).toBe(limits.usualDepth.value);
  expect(job.sealHours).toBe(limits.sealWait.value);
  expect(job.shopTempC).toBe(limits.shopTemperature.value);
  expect(job.bits).toEqual([{ kind: 'flat', diameterMm: limits.usualBit.value, cuttingLengthMm: null }]);
});
