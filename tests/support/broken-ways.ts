import { JobError, type JobInput, settleJob } from '@pourproof/job';
import type { Point } from '@pourproof/plane';
import { applyFix, type Finding, type Fix, judgeDrawing, type Report } from '@pourproof/proof';
import { ArtworkError, type MaterialsBook, readDrawing, type Source, sourceName } from 'pourproof';
import { flagsOfJob, jobOfFlags } from './job-of-flags.ts';

const GRAVITY = { note: 1, caution: 2, stop: 3 } as const;

/** Places nearer than this, mm, are one place, beyond what a way out moves or widens by itself. */
const SAME_PLACE_MM = 1;
/** Rounding of printed numbers. */
const ROUNDING = 1e-6;

/**
 * What is wrong with the ways out that a vetted job offers; empty where each holds what it says. Each is made as a maker makes it who
 * types the flags of the changed job.
 *
 * @param report that of the job
 * @param materials those that ship with pourproof if left out
 */
export async function brokenWays(
  source: Source,
  job: JobInput,
  report: Report,
  materials?: MaterialsBook,
): Promise<readonly string[]> {
  const wrong: string[] = [];
  for (const finding of report.findings) {
    for (const fix of finding.fix.options) {
      const changed = applyFix(job, fix, { materials, isLettering: source.kind === 'lettering' });
      if (changed === null) {
        continue;
      }
      const typed = jobOfFlags(flagsOfJob(changed));
      const told = await broken(source, { job: typed, before: report, finding, fix, materials });
      const name = `${finding.code} (${finding.severity}): ${JSON.stringify(fix)}`;
      wrong.push(...told.map((what) => `${name} ${what}`));
    }
  }
  return wrong;
}

interface Made {
  /** The changed job. */
  readonly job: JobInput;
  readonly before: Report;
  readonly finding: Finding;
  readonly fix: Fix;
  readonly materials: MaterialsBook | undefined;
}

async function broken(source: Source, made: Made): Promise<readonly string[]> {
  try {
    const hasFont = source.font !== null && source.font !== undefined;
    const settled = settleJob(made.job, { source: source.kind, hasFont, materials: made.materials });
    const drawing = await readDrawing(source, settled);
    return differences(made, judgeDrawing(drawing, sourceName(source), settled).report);
  } catch (error) {
    if (error instanceof JobError || error instanceof ArtworkError) {
      return [`is refused: ${error.message}`];
    }
    throw error;
  }
}

function differences({ before, finding, fix }: Made, after: Report): readonly string[] {
  const left = after.findings
    .filter(({ code, round }) => code === finding.code && isSameRound(round, finding.round))
    .toSorted((a, b) => GRAVITY[b.severity] - GRAVITY[a.severity])[0];
  const known = fix.brings ?? [];
  const brought = after.findings.filter(
    (each) => GRAVITY[each.severity] >= GRAVITY[finding.severity] && isNew(each, before, after, slackMm(fix)),
  );
  return [
    ...remains(finding, fix, left),
    ...brought
      .filter(
        ({ code }) =>
          !known.includes(code) && !before.findings.some((f) => f.seenTo === true && f.code === code),
      )
      .map(
        ({ code, severity, round }) =>
          `brings ${code} (${severity}${round === undefined ? '' : ` in round ${round}`})`,
      ),
  ];
}

/** Whether what is left of a finding is what the way out says. */
function remains(finding: Finding, fix: Fix, left: Finding | undefined): readonly string[] {
  if (left === undefined) {
    return fix.clears ? [] : ['clears it and does not say so'];
  }
  if (fix.clears || fix.leaves === undefined) {
    return ['does not clear it'];
  }
  const { severity, value } = fix.leaves;
  return [
    ...(severity === left.severity ? [] : [`leaves a ${left.severity}`]),
    ...(Math.abs(value - left.measured.value) <= ROUNDING * Math.max(1, Math.abs(value))
      ? []
      : [`leaves ${left.measured.value}`]),
    ...(GRAVITY[left.severity] > GRAVITY[finding.severity] ? ['makes it worse'] : []),
  ];
}

/** Whether a finding is there that was not, graver than it was, or at a place where it was not. */
function isNew(finding: Finding, before: Report, after: Report, slack: number): boolean {
  const was = before.findings.filter(
    ({ code, severity, round }) =>
      code === finding.code &&
      GRAVITY[severity] >= GRAVITY[finding.severity] &&
      isSameRound(round, finding.round),
  );
  if (was.length === 0) {
    return true;
  }
  const to = mapped(before, after);
  const old = was.flatMap(({ where }) =>
    where.map((place) => ({
      ...place,
      atMm: to(place.atMm),
      outline: place.outline.map((line) => line.map(to)),
    })),
  );
  return finding.where.some((place) => {
    const points = pointsOf(place);
    return !old.some(
      (other) =>
        areNear(points, pointsOf(other), slack) || encloses(other, place.atMm) || encloses(place, other.atMm),
    );
  });
}

/** Whether an area has a point within. */
function encloses({ areaMm2, outline }: Finding['where'][number], [x, y]: Point): boolean {
  const edges = outline.flatMap((ring) => ring.map((a, k) => [a, ring[(k + 1) % ring.length] ?? a] as const));
  const crossed = edges.filter(
    ([[ax, ay], [bx, by]]) => ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax),
  );
  return areaMm2 !== undefined && crossed.length % 2 === 1;
}

/** How far a way out moves walls by itself, mm. */
function slackMm(fix: Fix): number {
  return [fix, ...(fix.also ?? [])].reduce(
    (sum, step) => sum + (step.do === 'widen' ? step.byMm : 0),
    SAME_PLACE_MM,
  );
}

/** From a place of the artwork to the same one after it has another size. */
function mapped({ artwork: one }: Report, { artwork: other }: Report): (point: Point) => Point {
  const [a, b] = [one.boundsMm, other.boundsMm];
  const [wide, high] = [(b[2] - b[0]) / (a[2] - a[0] || 1), (b[3] - b[1]) / (a[3] - a[1] || 1)];
  return ([x, y]) => [b[0] + (x - a[0]) * wide, b[1] + (y - a[1]) * high];
}

/** Points of a place, close enough to each other to stand for its lines. */
function pointsOf({ atMm, outline }: Finding['where'][number]): readonly Point[] {
  return [
    atMm,
    ...outline.flatMap((line) =>
      line.flatMap((from, k) => {
        const to = line[k + 1] ?? from;
        const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP_MM));
        return Array.from(
          { length: steps },
          (_, i): Point => [
            from[0] + ((to[0] - from[0]) * i) / steps,
            from[1] + ((to[1] - from[1]) * i) / steps,
          ],
        );
      }),
    ),
  ];
}

const STEP_MM = 0.5;

function areNear(some: readonly Point[], others: readonly Point[], reach: number): boolean {
  return some.some(([x, y]) => others.some(([u, v]) => Math.hypot(u - x, v - y) <= reach));
}

function isSameRound(one: number | undefined, other: number | undefined): boolean {
  return one === undefined || other === undefined || one === other;
}
