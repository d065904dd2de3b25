import type { FindingCode } from '../codes.ts';
import type { Finding, Severity } from '../report/finding-schema.ts';

const GRAVITY: Readonly<Record<Severity, number>> = { note: 1, caution: 2, stop: 3 };
/** A finding counts as better from this share less beyond its limit (our choice, as for turns of the artwork). */
const WORTHWHILE = 0.2;

/** What a changed job makes of the findings of another. */
export interface Comparison {
  /** What is left of the finding that was to be cleared. */
  readonly left: Finding | undefined;
  /** Whether it is gone, milder, or clearly less beyond its limit. */
  readonly isBetter: boolean;
  /** New findings, or such as have become graver, of its grade or a worse one. */
  readonly asGrave: readonly Finding[];
  /** Those among them of a worse grade than its own. */
  readonly graver: readonly Finding[];
  /** All that is new or graver, but for notes where it is none. */
  readonly brought: readonly FindingCode[];
}

/**
 * Compares the findings of a job with those of a changed one, for the sake of one of the former.
 *
 * @param seenTo codes that the maker has seen to, which do not count
 */
export function compareFindings(
  target: Finding,
  before: readonly Finding[],
  after: readonly Finding[],
  seenTo: readonly string[],
): Comparison {
  const was = (code: FindingCode): number => gravest(before.filter((each) => each.code === code));
  const worse = after.filter(
    ({ code, severity }) => code !== target.code && !seenTo.includes(code) && GRAVITY[severity] > was(code),
  );
  const grade = GRAVITY[target.severity];
  const left = after
    .filter(({ code, round }) => code === target.code && isSameRound(round, target.round))
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

function gravest(findings: readonly Finding[]): number {
  return Math.max(0, ...findings.map(({ severity }) => GRAVITY[severity]));
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
