import { booleans, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { defaultFields } from '@pourproof/materials';
import { type Drawing, signedArea } from '@pourproof/plane';
import { bleedReport, endGrainReport } from '../board/block-report.ts';
import type { DrawnColours } from '../colours/drawn-colours.ts';
import { boundsOfMeasured, type CutBounds } from '../cut/cut-bounds.ts';
import { withVolumeError } from '../pour/pour-plan.ts';
import { pourReport } from '../pour/pour-report.ts';
import { artworkPart } from '../report/artwork-part.ts';
import { boardPart } from '../report/board-part.ts';
import { cutPart, leftStandingArea } from '../report/cut-part.ts';
import type { Finding } from '../report/finding-schema.ts';
import { levellingPart, sealPart } from '../report/levelling-part.ts';
import type { Report } from '../report/report.ts';
import { roundedReport } from '../report/rounded-report.ts';
import { sliversPart, strokesPart } from '../report/strokes-part.ts';
import { scheduleReport } from '../schedule/schedule-report.ts';
import { Stages } from '../stages/stages.ts';
import { verdictOf } from '../verdict.ts';
import type { MeasuredRounds } from './measured-rounds.ts';
import {
  cutterSums,
  mergedLevelling,
  mergedPour,
  mergedSeal,
  mergedSlivers,
  mergedStrokes,
  sumOf,
  timeSum,
} from './merge-parts.ts';
import { roundSchedule } from './round-schedule.ts';
import { resinIn, roundsPart } from './rounds-part.ts';

/** What a job of several rounds is reported from. */
export interface RoundsToReport extends MeasuredRounds {
  readonly drawing: Drawing;
  readonly job: Job;
  readonly colours: DrawnColours;
  readonly findings: readonly Finding[];
}

/**
 * The report on a job of several rounds: every part is that of all rounds together, and part `rounds` has them one by one.
 *
 * @param name file name, or the text that was set
 */
export function mergedReport(whole: RoundsToReport, name: string): Report {
  const { job, colours, rounds, findings } = whole;
  const measured = rounds.map((round) => round.measured);
  const artwork = artworkPart(whole, name, job);
  const [left, top] = artwork.boundsMm;
  const board = boardPart(measured);
  const blocks = measured.flatMap((each) => each.blocks);
  const bounds = measured.map(boundsOfMeasured);
  const pours = measured.map((each, k) =>
    pourReport(withVolumeError(each.pour, bounds[k]?.volumeMm3 ?? 0), each.schedule(), each.job),
  );
  const schedule = scheduleReport(roundSchedule(measured.map((each) => each.schedule())), job.start);
  const cut = cutOf(whole, bounds);
  return roundedReport({
    schema: 'pourproof/report@2',
    frame: 'artwork',
    rulerOffsetMm: [left, top],
    artwork,
    cut,
    strokes: mergedStrokes(measured.map(strokesPart)),
    slivers: mergedSlivers(measured.map(sliversPart)),
    ...(board === undefined ? {} : { board }),
    endGrain: endGrainReport(blocks, job),
    bleed: bleedReport(blocks, { job, colours: colours.all, stages: measured[0]?.stages ?? new Stages() }),
    seal: mergedSeal(measured.map(sealPart)),
    levelling: mergedLevelling(measured.map(levellingPart)),
    pour: { ...mergedPour(pours), schedule },
    rounds: [...roundsPart(rounds, pours, schedule)],
    findings: [...findings],
    defaults: [...job.defaults],
    ...(job.shop === null ? {} : { fromShop: [...job.fromShop] }),
    materialDefaults: Object.entries(job.rows).flatMap(([row, values]) =>
      defaultFields(values).map((field) => `${row}.${field}`),
    ),
    verdict: verdictOf(findings, artwork.notices, cut.areaMm2),
  });
}

/** The cut of all rounds: area and volume of the wood that is gone in the end; surfaces, paths and times are sums over the rounds. */
function cutOf({ rounds, artworkArea }: RoundsToReport, bounds: readonly CutBounds[]): Report['cut'] {
  const cuts = rounds.flatMap(({ measured }, k) =>
    bounds.slice(k, k + 1).map((each) => cutPart(measured, each)),
  );
  const areaMm2 = areaOfAll(rounds);
  const sum = (of: (cut: Report['cut']) => number): number => sumOf(cuts, of);
  const onlyAsDrawnMm2 = sum(({ onlyAsDrawnMm2: each = 0 }) => each);
  const ridged = sum(({ ridgedFloorMm2 = 0 }) => ridgedFloorMm2);
  return {
    areaMm2,
    leftStandingMm2: leftStandingArea(artworkArea, areaMm2),
    volumeMm3: sum(({ volumeMm3 }) => volumeMm3) - sumOf(rounds, ({ measured }) => resinIn(measured)),
    floorAreaMm2: sum(({ floorAreaMm2 }) => floorAreaMm2),
    wallAreaMm2: sum(({ wallAreaMm2 }) => wallAreaMm2),
    wallLengthMm: sum(({ wallLengthMm }) => wallLengthMm),
    maxDepthMm: Math.max(...rounds.map(({ measured }) => measured.site.loweredMm + measured.maxDepth)),
    ...(ridged > 0 ? { ridgedFloorMm2: ridged } : {}),
    errorBound: {
      areaMm2: sum(({ errorBound }) => errorBound.areaMm2),
      volumeMm3: sum(({ errorBound }) => errorBound.volumeMm3),
      floorAreaMm2: sum(({ errorBound }) => errorBound.floorAreaMm2),
      wallAreaMm2: sum(({ errorBound }) => errorBound.wallAreaMm2),
      wallLengthMm: sum(({ errorBound }) => errorBound.wallLengthMm),
      maxDepthMm: Math.max(...cuts.map(({ errorBound }) => errorBound.maxDepthMm)),
      lengthNarrowerThanBitMm: sum(({ errorBound }) => errorBound.lengthNarrowerThanBitMm),
    },
    ...(onlyAsDrawnMm2 > 0 ? { onlyAsDrawnMm2 } : {}),
    perCutter: cutterSums(cuts),
    time: timeSum(cuts),
  };
}

/** Area of the union of all cuts, mm²: exact where none overlap. */
function areaOfAll(rounds: RoundsToReport['rounds']): number {
  let before = resolveRegions([]).region;
  let area = 0;
  for (const { measured } of rounds) {
    const { cutRegion, cutArea } = measured;
    const flattened = signedArea(cutRegion);
    const again = flattened > 0 ? signedArea(booleans(cutRegion, before, 'intersect')) / flattened : 0;
    area += cutArea * (1 - again);
    before = booleans(before, cutRegion, 'union');
  }
  return area;
}
