import {
  JobError,
  type JobInput,
  mergeJobs,
  refuseReading,
  type SettleOptions,
  settleJob,
} from '@pourproof/job';
import { describe, expect, test } from 'vitest';

/** The refusal of a job, by code, key and words. */
function refusal(job: unknown, options: SettleOptions = {}): JobError {
  try {
    settleJob(job as JobInput, options);
  } catch (error) {
    expect(error).toBeInstanceOf(JobError);
    return error as JobError;
  }
  throw new Error('nothing was refused');
}

describe('nothing of a job is ignored', () => {
  test.each<readonly [job: unknown, code: string, key: string, words: string]>([
    [{ bits: ['flat:3mm'] }, 'unknown-key', 'bits', 'did you mean "bit"?'],
    [{ overpuor: '1mm' }, 'unknown-key', 'overpuor', 'did you mean "overpour"?'],
    [{ qqq: 1 }, 'unknown-key', 'qqq', 'check the spelling'],
    [{ bit: 'flat:1/8in' }, 'wrong-type', 'bit', 'write a list of bits, such as ["flat:1/8in"]'],
    [{ depth: 3 }, 'wrong-type', 'depth', 'write a length with its unit, such as "1/8in"'],
    [{ depth: { cm: 3 } }, 'wrong-value', 'depth', 'is {"cm":3}; write a length with its unit'],
    [{ depth: { mm: '3' } }, 'wrong-type', 'depth.mm', 'write a number'],
    [{ bit: [] }, 'empty-list', 'bit', 'is an empty list; write a list of bits'],
    [{ keepClear: [], board: 'plain 9x9x9mm maple' }, 'empty-list', 'keepClear', 'is an empty list'],
    [{ coats: '2' }, 'wrong-type', 'coats', 'write a whole number, such as 2'],
    [{ oiled: 'yes' }, 'wrong-type', 'oiled', 'write true or false'],
    [{ colour: 'plaid' }, 'wrong-value', 'colour', 'must be "black" or "blue"'],
    [{ bit: [{ kind: 'flat' }] }, 'missing', 'bit.0.diameterMm', 'is missing; it is a number'],
    [{ bit: [{ kind: 'drill', diameterMm: 3 }] }, 'wrong-value', 'bit.0', 'write a list of bits'],
    [
      { bit: [{ kind: 'flat', diameterMm: 3, flutes: 2 }] },
      'unknown-key',
      'bit.0.flutes',
      'means nothing here',
    ],
    [{ coupons: [{ slots: ['1mm'], slot: 1 }] }, 'unknown-key', 'coupons, row 1, slot', 'means nothing here'],
    [{ scale: Number.NaN }, 'wrong-type', 'scale', 'write a factor without a unit'],
    [null, 'wrong-type', '(file)', 'is null'],
    [['flat:1mm'], 'wrong-type', '(file)', 'is a list'],
  ])('%j is refused by name', (job, code, key, words) => {
    const error = refusal(job);
    expect({ code: error.code, key: error.key }).toEqual({ code, key });
    expect(error.message).toContain(words);
    expect(error.remedy).not.toBe('');
  });

  test('all that is wrong with the shape is told at once', () => {
    const { parameters } = refusal({ bits: [], depth: 3, coats: '2' });
    expect(parameters).toMatchObject({ issues: [{ place: 'depth' }, { place: 'coats' }, { place: 'bits' }] });
  });
});

describe('a value that no work has is refused with its range', () => {
  test.each<readonly [JobInput, string]>([
    [{ depth: { mm: -1 } }, 'depth is -1 mm; it must be above 0 and at most 100 mm.'],
    [{ depth: { in: 40 } }, 'No board here is deeper'],
    [{ wood: 'plain', margin: '1mm' }, 'margin needs a board'],
    [{ dive: { deg: 91 } }, 'dive is 91°; it must be between 0 and 90°.'],
    [
      { shopTemp: { fahrenheit: 20 } },
      'shopTemp is -6.66667 °C; it must be between 5 °C and 45 °C. Type it as in 21C.',
    ],
    [{ shopTemp: { celsius: 70 } }, 'Epoxy is not poured in such a shop'],
    [{ feed: { mmPerMin: 0 } }, 'feed is 0 mm/min; it must be between 1 mm/min and 100000 mm/min.'],
    [{ stepoverPct: 60 }, 'stepoverPct is 60; it must be between 1 and 50.'],
    [{ boards: 1.5 }, 'boards is 1.5; it must be a whole number from 1 to 1000.'],
    [{ pricePerG: -1 }, 'pricePerG is -1; it must be between 0 and 1000000.'],
    [{ board: 'plain 9x9x9mm maple cherry' }, 'the pattern does not use cherry'],
    [{ board: 'checkerboard 90x90x9mm maple:5mm square:30mm' }, 'the width of maple means nothing'],
    [{ board: 'stripes 90x90x9mm maple:5mm square:30mm' }, 'square means nothing'],
    [{ bit: [{ kind: 'vee', angleDeg: 60, diameterMm: 9, tipMm: 1, tipRadiusMm: 1 }] }, 'one of them'],
  ])('%j', (job, words) => {
    expect(refusal(job).message).toContain(words);
  });
});

describe('what contradicts the source is refused in the same words for all', () => {
  const lettering: SettleOptions = { source: 'lettering', hasFont: true };
  test.each<readonly [JobInput, SettleOptions, code: string]>([
    [{ capHeight: '9mm', width: '90mm' }, lettering, 'lettering-two-sizes'],
    [{ capHeight: '9mm', height: '90mm' }, lettering, 'lettering-size'],
    [{ capHeight: '9mm', scale: 2 }, lettering, 'lettering-size'],
    [{}, lettering, 'lettering-without-size'],
    [{ capHeight: '9mm' }, { source: 'lettering' }, 'lettering-without-font'],
    [{ capHeight: '9mm', singleLine: true }, lettering, 'font-and-single-line'],
    [{ capHeight: '9mm', singleLine: true, font: 'a.ttf' }, { source: 'lettering' }, 'font-and-single-line'],
    [
      { capHeight: '9mm', singleLine: true, axis: ['wght=600'] },
      { source: 'lettering' },
      'font-and-single-line',
    ],
    [{ text: 'Oak', artwork: 'a.svg' }, {}, 'two-artworks'],
    [{ text: 'Oak' }, { source: 'file' }, 'text-for-file'],
    [{ artwork: 'a.svg', capHeight: '9mm' }, lettering, 'artwork-for-text'],
    [{ text: '  ' }, {}, 'text-empty'],
    [{ text: 'Oak', font: 'a.ttf' }, {}, 'lettering-without-size'],
    [{ width: '9mm', scale: 2 }, {}, 'two-sizes'],
    [{ width: '9mm' }, { source: 'drawing' }, 'not-for-drawing'],
    [{ coupons: [{ slots: ['1mm'] }] }, { coupons: [{ slots: ['1mm'] }] }, 'two-coupons'],
  ])('%j for %j', (job, options, code) => {
    expect(refusal(job, options).code).toBe(code);
  });

  test('a drawing that was read without the job refuses what only reading can do', () => {
    expect(() => refuseReading(settleJob({ depth: '2mm' }))).not.toThrow();
    expect(() => refuseReading(settleJob({ depth: '2mm', width: '40mm' }))).toThrow(
      'width says how artwork is read',
    );
  });
});

describe('a job file with what was typed beside it', () => {
  test('takes what was typed, and keeps the rest and its unit', () => {
    const job = mergeJobs({ depth: '1/8in', wood: 'cherry' }, { depth: '3mm', seal: 'epoxy' });
    expect(job).toEqual({ depth: '3mm', seal: 'epoxy', wood: 'cherry', units: 'in' });
  });

  test('a typed size replaces whichever size the file asks for, and its unit stands where nothing else is typed', () => {
    expect(mergeJobs({ width: '4in' }, { scale: 2 })).toEqual({ scale: 2, units: 'in' });
    expect(mergeJobs({ width: '4in', depth: '2mm' }, { height: '50mm' })).toEqual({
      height: '50mm',
      depth: '2mm',
      units: 'mm',
    });
  });

  test('a typed file replaces the lettering of the job', () => {
    expect(mergeJobs({ text: 'Oak' }, { artwork: 'a.svg' })).toEqual({ artwork: 'a.svg' });
  });
});
