import { shopBit } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { Finding, Severity } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { FIX_SETTINGS } from './apply-fix.ts';
import { completed } from './completed-way.ts';
import { FIX_WORK } from './fix-work.ts';
import { isFirst, untried } from './joined-ways.ts';
import { clearsAll, hasFewer, isGood, judged, type Tried } from './judged-way.ts';
import type { Proved } from './prove.ts';
import { type Redrawing, type TrialResult, type Trials, trialsOf } from './trials.ts';

/** The gravest first, as far as the number of proofs is limited. */
const ORDER: readonly Severity[] = ['stop', 'caution', 'note'];

/**
 * The findings of a proof with those ways out alone that hold: each is made, and the changed job proved in full. It stays where the
 * finding is gone, or clearly milder, and nothing as grave is new; where something is, it is completed with what clears that too, or
 * is offered with what it brings if there is no better one. What is work at the bench, or takes a maker's eye, stays as it was proposed.
 *
 * The gravest findings come first, and among them the first ways out of all before the second ones, then what completes one where a finding
 * has no other: so each has its turn where the drawing is so large that few jobs are proved. What is not tried for that is told.
 */
export function* triedFindings(proved: Proved): Redrawing<readonly Finding[]> {
  const trials = trialsOf(proved);
  const tasks = proved.findings.map(
    (finding): Task => ({
      finding,
      ways: finding.fix.options.map((fix) => withEdge(fix, proved)),
      alone: [],
      untried: [],
    }),
  );
  const tried = new Map<Finding, Finding>();
  for (const severity of ORDER) {
    const graded = tasks.filter(({ finding }) => finding.severity === severity);
    yield* triedInTurn(graded, proved, trials);
    for (const task of graded.filter((each) => !hasWay(each))) {
      tried.set(task.finding, yield* triedFinding(task, proved, trials));
    }
  }
  for (const task of tasks.filter(hasWay)) {
    tried.set(task.finding, yield* triedFinding(task, proved, trials));
  }
  return proved.findings.map((finding) => tried.get(finding) ?? finding);
}

/** A finding with its ways out: all that are proposed, those that were tried by themselves, and those that no proof was left for. */
interface Task {
  readonly finding: Finding;
  readonly ways: readonly Fix[];
  readonly alone: TriedAlone[];
  readonly untried: Fix[];
}

/** Whether a finding has a way out by itself that holds, or clears it as far as anyone can tell. */
function hasWay({ alone }: Task): boolean {
  return alone.some(({ tried }) => isGood(tried) && (tried.fix.clears || !isUnproved(tried.fix)));
}

/** Each way out of some findings by itself, the first of all before the second ones. */
function* triedInTurn(tasks: readonly Task[], proved: Proved, trials: Trials): Redrawing<void> {
  const most = tasks.reduce((count, { ways }) => Math.max(count, ways.length), 0);
  for (let k = 0; k < most; k++) {
    for (const { finding, ways, alone, untried: left } of tasks) {
      const fix = ways[k];
      const found = fix === undefined ? null : yield* triedAlone(fix, finding, proved, trials);
      if (found === 'spent' && fix !== undefined) {
        left.push(fix);
      } else if (found !== null && found !== 'spent') {
        alone.push(found);
      }
    }
  }
}

function* triedFinding(
  { finding, alone, untried: left }: Task,
  proved: Proved,
  trials: Trials,
): Redrawing<Finding> {
  const enough = alone.filter(({ tried }) => clearsAll(tried)).map(({ tried: { fix } }) => fix);
  const all: Tried[] = [];
  for (const { tried, result } of alone) {
    const longer =
      result === null || clearsAll(tried) || (isGood(tried) && !hasFewer(finding, result))
        ? null
        : yield* completed(untried(tried.fix), result, { finding, enough }, proved, trials);
    all.push(longer ?? tried);
  }
  const offered = all.filter((each) => each.rank !== null);
  const isEasy = offered.some(isGood);
  const options = offered
    .filter(({ rank }) => !isEasy || rank !== 3)
    .toSorted((a, b) => (a.rank ?? 0) - (b.rank ?? 0))
    .map(({ fix }) => fix)
    .filter(isFirst);
  const dropped = all.flatMap((each) =>
    each.rank === null ? [{ fix: each.fix, brings: [...each.brings] }] : [],
  );
  return {
    ...finding,
    fix: {
      options,
      ...(dropped.length > 0 ? { dropped } : {}),
      ...(left.length > 0 ? { untried: left } : {}),
    },
  };
}

/**
 * What is not at hand of a bit that a way out asks for: an edge for what is this much deeper than wide, or the bit itself, where the shop
 * would have to buy it.
 */
function withEdge(fix: Fix, { job }: Proved): Fix {
  if (fix.do !== 'use-bit') {
    return fix;
  }
  const isDeep = job.depthMm > limits.usualEdgeToBit.value * fix.diameterMm;
  const row = shopBit(job.shop, { kind: 'flat', diameterMm: fix.diameterMm, cuttingLengthMm: null });
  return {
    ...fix,
    ...(isDeep ? { edgeMm: Math.ceil(job.depthMm * 100) / 100 } : {}),
    ...(row?.isToBuy === true ? { isToBuy: true as const } : {}),
  };
}

/** A way out after its own trial, and that trial where another change may complete it. */
interface TriedAlone {
  readonly tried: Tried;
  readonly result: TrialResult | null;
}

/** Whether no proof can follow a way out: it is work at the bench, or for the maker to judge or to choose. */
function isUnproved(fix: Fix): boolean {
  const work = FIX_WORK[fix.do];
  return work === 'bench' || work === 'look' || (work === 'setting' && FIX_SETTINGS[fix.do].length === 0);
}

/** A way out by itself: `null` where it changes nothing or nobody can read the artwork for it, `spent` where no proof is left for it. */
function* triedAlone(
  fix: Fix,
  finding: Finding,
  proved: Proved,
  trials: Trials,
): Redrawing<TriedAlone | 'spent' | null> {
  const asProposed: TriedAlone = { tried: { fix, rank: 0 }, result: null };
  if (isUnproved(fix)) {
    return asProposed;
  }
  const isDrawn = FIX_WORK[fix.do] === 'drawing';
  const result = isDrawn ? trials.drawn(fix, finding) : yield* trials.tried([fix]);
  if (result === null || (result.is === 'unread' && fix.do === 'join-ends')) {
    // where nobody reads the artwork anew, its reader's own trial holds
    return asProposed;
  }
  switch (result.is) {
    case 'spent':
      return 'spent';
    case 'same':
    case 'unread':
      return null;
    default:
      return { tried: judged(fix, result, finding, proved), result: isDrawn ? null : result };
  }
}
