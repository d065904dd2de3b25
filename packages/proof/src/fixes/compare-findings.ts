import type { FindingCode } from '../codes.ts';
import type { Finding, Severity } from '../report/finding-schema.ts';
import { type Moved, newPlaces } from './new-places.ts';

const GRAVITY: Readonly<Record<Severity, number>> = { note: 1, caution: 2, stop: 3 };
/** A finding counts as better from this share less beyond its limit (our choice, as for turns of the artwork). */
const WORTHWHILE = 0.2;

/** What a changed job makes of the findings of another. */
export interface Comparison {
  /** What is left of the finding that was to be cleared. */
  readonly left: Finding | undefined;
  /** Whether it is gone, milder, or clearly less beyond its limit. */
  readonly isBetter: boolean;
  /** Findings that are new, graver than they were, or at further places, of its grade or a worse one. */
  readonly asGrave: readonly Finding[];
  /** Those among them of a worse grade than its own. */
  readonly graver: readonly Finding[];
  /** All that is new, graver or at further places, but for notes where it is none. */
  readonly brought: readonly FindingCode[];
}

/** The findings of a changed job with those among them that are worse than before. */
export interface Changed {
  readonly findings: readonly Finding[];
  readonly worse: readonly Finding[];
}

/**
 * The findings of a changed job, and which of them are new, graver than they were, or at further places.
 *
 * @param change where the changed drawing has what the other has, and codes that the maker has seen to, which do not count
 */
export function changedFindings(
  before: readonly Finding[],
  after: readonly Finding[],
  { moved, seenTo }: { readonly moved: Moved; readonly seenTo: readonly string[] },
): Changed {
  return {
    findings: after,
    worse: after.filter((finding) => !seenTo.includes(finding.code) && isNew(finding, before, moved)),
  };
}

/** Compares the findings of a job with those of a changed one, for the sake of one of the former. */
export function compareFindings(target: Finding, { findings: after, worse }: Changed): Comparison {
  const grade = GRAVITY[target.severity];
  const left = after
    .filter((finding) => isOf(finding, target))
    .toSorted((a, b) => GRAVITY[b.severity] - GRAVITY[a.severity])[0];
  return {
    left,
    isBetter: left === undefined || isBetter(target, left),
    asGrave: worse.filter(({ severity }) => GRAVITY[severity] >= grade),
    graver: worse.filter(({ severity }) => GRAVITY[severity] > grade),
    brought: [
      ...new Set(
        worse
          .filter(({ severity }) => GRAVITY[severity] >= Math.min(grade, GRAVITY.caution))
          .map(({ code }) => code),
      ),
    ],
  };
}

/** Whether a finding of a changed job was not there before, was milder, or was not at one of its places. */
function isNew(finding: Finding, before: readonly Finding[], moved: Moved): boolean {
  const known = before.filter(
    (each) => isOf(each, finding) && GRAVITY[each.severity] >= GRAVITY[finding.severity],
  );
  return known.length === 0 || newPlaces(finding, known, moved).length > 0;
}

/** Whether two findings are of one kind, and of one round. */
function isOf(one: Finding, other: Finding): boolean {
  return one.code === other.code && isSameRound(one.round, other.round);
}

/** A finding without a round is one of all of them. */
function isSameRound(one: number | undefined, other: number | undefined): boolean {
  return one === undefined || other === undefined || one === other;
}

function isBetter(before: Finding, left: Finding): boolean {
  if (left.severity !== before.severity) {
    return GRAVITY[left.severity] < GRAVITY[before.severity];
  }
  return beyond(left) <= (1 - WORTHWHILE) * beyond(before);
}

/** How far a finding is beyond its limit, as a share of the limit where that is not 0. */
function beyond({ measured, limit }: Finding): number {
  const distance = Math.abs(measured.value - limit.value);
  return limit.value === 0 ? distance : distance / Math.abs(limit.value);
}
