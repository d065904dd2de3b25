import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { type Comparison, compareFindings } from './compare-findings.ts';
import { pinnedCoupons } from './pinned-coupons.ts';
import type { Proved } from './prove.ts';
import type { TrialResult } from './trials.ts';

/** A way out after its trial: how much it costs to take it, from 0, or why it is not offered. */
export type Tried =
  | { readonly fix: Fix; readonly rank: 0 | 1 | 2 | 3 }
  | { readonly fix: Fix; readonly rank: null; readonly brings: Comparison['brought'] };

export function clearsAll({ rank }: Tried): boolean {
  return rank === 0 || rank === 1;
}

export function isGood({ rank }: Tried): boolean {
  return rank !== null && rank < 3;
}

/** Whether a way out clears some of the places of a finding and leaves others. */
export function hasFewer(finding: Finding, result: TrialResult): boolean {
  const left = result.is === 'proved' ? compareFindings(finding, result).left : undefined;
  return left !== undefined && left.where.length < finding.where.length;
}

/** What a trial says of a way out. */
export function judged(fix: Fix, result: TrialResult, finding: Finding, proved: Proved): Tried {
  if (result.is !== 'proved') {
    return { fix, rank: null, brings: [] };
  }
  const { left, isBetter, asGrave, graver, brought } = compareFindings(finding, result);
  // a turn opens other walls instead, fewer of them: that is what it is for
  const spares = fix.do === 'turn' && left?.severity === finding.severity;
  const { changed } = pinnedCoupons(proved.job.input.coupons ?? [], proved.job, [fix, ...(fix.also ?? [])]);
  const isElsewhere = asGrave.some(({ code }) => !spares || code !== finding.code);
  if ((!isBetter && !spares) || graver.length > 0) {
    return { fix, rank: null, brings: brought };
  }
  return {
    fix: {
      ...fix,
      clears: left === undefined,
      ...(left === undefined ? {} : { leaves: { severity: left.severity, value: left.measured.value } }),
      ...(brought.length > 0 ? { brings: [...brought] } : {}),
      ...(changed.length > 0 ? { couponRows: [...changed] } : {}),
    },
    rank: isElsewhere ? 3 : left === undefined ? costOf(fix) : 2,
  };
}

/** Ways out that take others with them come after those that do not. */
function costOf({ also = [] }: Fix): 0 | 1 {
  return also.length > 0 ? 1 : 0;
}
