import type { FindingEntry } from '../findings/finding-entries.ts';

/**
 * The way out to read first, and how many others there are: a coupon where it comes first, because the number is
 * no surer than its limit; else the first that clears the finding, else the first that helps, else advice;
 * `null` where there is none.
 */
export function bestWay({ fixes }: FindingEntry): { readonly text: string | null; readonly others: number } {
  const best =
    fixes.slice(0, 1).find(({ fix }) => fix?.do === 'test-coupon') ??
    fixes.find(({ fix }) => fix?.clears === true) ??
    fixes.find(({ fix }) => fix !== null) ??
    fixes[0];
  return best === undefined ? { text: null, others: 0 } : { text: best.text, others: fixes.length - 1 };
}
