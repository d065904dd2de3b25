import {
  type Job,
  JobError,
  type JobInput,
  SETTING_KEYS,
  SETTINGS,
  settleJob,
  typedJob,
} from '@pourproof/job';
import type { Point } from '@pourproof/plane';
import {
  applyFix,
  FIX_WORK,
  type Finding,
  type Fix,
  type FixWork,
  judgeDrawing,
  type Report,
} from '@pourproof/proof';
import { ArtworkError, type MaterialsBook, readDrawing, type Source, sourceName } from 'pourproof';
import { expect } from 'vitest';
import { flagsOfJob, jobOfFlags } from './job-of-flags.ts';
import { redrawn } from './redrawn.ts';

const GRAVITY = { note: 1, caution: 2, stop: 3 } as const;

/** Places nearer than this, mm, are one place, beyond what a way out moves or widens by itself. */
const SAME_PLACE_MM = 1;
/** Rounding of printed numbers. */
const ROUNDING = 1e-6;

/**
 * What is wrong with the ways out that a vetted job offers; empty where each holds what it says. Each is made as a maker makes it: one of
 * the job by typing the flags of the changed job, one of the drawing by changing the file and typing the same flags, and what no proof can
 * follow by saying that it is seen to.
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
      const made = await followed(source, job, { finding, fix, materials });
      if (made !== null) {
        const told = await broken(made, { before: report, finding, fix, materials });
        const name = `${finding.code} (${finding.severity}): ${JSON.stringify(fix)}`;
        wrong.push(...told.map((what) => `${name} ${what}`));
      }
    }
  }
  return [...wrong, ...(await notSeenTo(source, job, report, materials))];
}

/** What a maker vets who has made a way out: of several that are as good, each. */
interface Followed {
  readonly source: Source;
  readonly jobs: readonly JobInput[];
}

interface WayOut {
  readonly finding: Finding;
  readonly fix: Fix;
  readonly materials: MaterialsBook | undefined;
}

/** `null` where the way out is an instruction. */
async function followed(
  source: Source,
  job: JobInput,
  { finding, fix, materials }: WayOut,
): Promise<Followed | null> {
  const work = FIX_WORK[fix.do];
  if (fix.do === 'move-clamp') {
    return { source, jobs: clampsMoved(job, fix.byMm) };
  }
  if (work === 'setting') {
    const changed = applyFix(job, fix, { materials, isLettering: source.kind === 'lettering' });
    expect(changed, `${fix.do} changes a setting`).not.toBeNull();
    return changed === null ? null : { source, jobs: [jobOfFlags(flagsOfJob(changed))] };
  }
  if (work !== 'drawing') {
    return null;
  }
  const drawing = await readDrawing(source, settled(source, job, materials));
  const bytes = redrawn(drawing, fix, finding);
  expect(bytes, `${fix.do} is followed in the drawing`).not.toBeNull();
  const rest = Object.entries(typedJob(job)).filter(([key]) => !OF_ARTWORK.has(key));
  return bytes === null
    ? null
    : {
        source: { kind: 'file', name: 'redrawn.svg', bytes },
        jobs: [jobOfFlags(flagsOfJob(Object.fromEntries(rest) as JobInput))],
      };
}

/** Settings that say how the artwork is read: a file that is drawn anew in mm has its own. */
const OF_ARTWORK: ReadonlySet<string> = new Set(
  SETTING_KEYS.filter((key) => ['lettering', 'size'].includes(SETTINGS[key].group) || key === 'fileUnit'),
);

/** Each clamp and hold-down by itself farther to one of the four sides: one of these jobs is the maker's. */
function clampsMoved(job: JobInput, byMm: number): readonly JobInput[] {
  const flags = flagsOfJob(job);
  const sides = [
    [byMm, 0],
    [-byMm, 0],
    [0, byMm],
    [0, -byMm],
  ] as const;
  return flags.flatMap((text, k) => {
    const [, kind, x, y, rest] = /^(clamp|hold-down) (-?[\d.]+)mm,(-?[\d.]+)mm (.*)$/u.exec(text) ?? [];
    return kind === undefined
      ? []
      : sides.map(([dx, dy]) =>
          jobOfFlags(flags.with(k, `${kind} ${Number(x) + dx}mm,${Number(y) + dy}mm ${rest}`)),
        );
  });
}

/**
 * What is wrong with findings whose ways out are work at the bench or take a look: saying that they are seen to has to count, and for a
 * stop that takes more than a look it must not.
 */
async function notSeenTo(
  source: Source,
  job: JobInput,
  { findings }: Report,
  materials: MaterialsBook | undefined,
): Promise<readonly string[]> {
  const has = ({ fix }: Finding, work: FixWork): boolean =>
    fix.options.some((option) => option.do !== 'move-clamp' && FIX_WORK[option.do] === work);
  const open = findings.filter(({ seenTo }) => seenTo !== true);
  const may = open.filter((each) => has(each, 'bench') || (has(each, 'look') && each.severity !== 'stop'));
  if (may.length === 0) {
    return [];
  }
  const codes = [...new Set(may.map(({ code }) => code))].filter((code) =>
    open.every((each) => each.code !== code || may.includes(each)),
  );
  const typed = [...flagsOfJob(job), ...codes.flatMap((code) => ['--seen-to', code])];
  const again = settled(source, jobOfFlags(typed), materials);
  const after = judgeDrawing(await readDrawing(source, again), sourceName(source), again).report;
  const left = after.findings.filter(({ seenTo, severity }) => seenTo !== true && severity !== 'note');
  const isTold = after.artwork.notices.some(({ severity }) => severity !== 'note');
  return [
    ...after.findings
      .filter(({ code, seenTo }) => codes.includes(code) && seenTo !== true)
      .map(({ code }) => `${code} is seen to and still counts`),
    ...(left.length === 0 && !isTold && after.verdict !== 'clear'
      ? ['all is seen to and it is not clear']
      : []),
  ];
}

function settled(source: Source, job: JobInput, materials: MaterialsBook | undefined): Job {
  const hasFont = source.font !== null && source.font !== undefined;
  return settleJob(job, { source: source.kind, hasFont, materials });
}

interface Made extends WayOut {
  readonly before: Report;
}

/** What is wrong with the best of the jobs that a maker may have made. */
async function broken({ source, jobs }: Followed, made: Made): Promise<readonly string[]> {
  const wrong: (readonly string[])[] = [];
  for (const job of jobs) {
    const told = await brokenAs(source, job, made);
    if (told.length === 0) {
      return [];
    }
    wrong.push(told);
  }
  return wrong.at(0) ?? ['is followed by nothing'];
}

async function brokenAs(source: Source, job: JobInput, made: Made): Promise<readonly string[]> {
  try {
    const again = settled(source, job, made.materials);
    const drawing = await readDrawing(source, again);
    return differences(made, judgeDrawing(drawing, sourceName(source), again).report);
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
    (sum, step) =>
      sum +
      (step.do === 'widen' || step.do === 'move-apart' ? step.byMm : 0) +
      (step.do === 'part-by-wall' ? step.widthMm : 0),
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
