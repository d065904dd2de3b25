import { isHollow, isThrough } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import { byGrain, type Rings, ringCoords, signedArea } from '@pourproof/plane';
import { obstacleOutline } from '../board/obstacle-outline.ts';
import { overHollows } from '../board/over-hollows.ts';
import { type Gap, leastGap } from '../board/rims.ts';
import { leastFloorMm } from '../checks/floor-too-thin.ts';
import { besidePocket } from '../checks/rim-too-thin.ts';
import type { Measured } from '../measured.ts';
import type { Report } from './report.ts';

type BoardPart = NonNullable<Report['board']>;

/**
 * The board of a job and the least wood that its cuts leave, over all rounds.
 *
 * @param rounds measures of each round; of a job of one round its own
 */
export function boardPart(rounds: readonly Measured[]): BoardPart | undefined {
  const [first] = rounds;
  const thicknessMm = first?.job.thicknessMm ?? null;
  if (first === undefined || thicknessMm === null) {
    return;
  }
  const { job, board } = first;
  return {
    sizeMm: job.board === null ? null : [job.board.widthMm, job.board.heightMm],
    thicknessMm,
    marginMm: job.marginMm,
    middleMm:
      job.board === null ? null : [...(job.placeMm ?? [job.board.widthMm / 2, job.board.heightMm / 2])],
    turnDeg: job.turnDeg,
    blocks: blocksOf(first),
    keepClear: job.obstacles.map((each) => ({
      kind: each.kind,
      outline: points(obstacleOutline(each, board)),
      ...(isHollow(each) && !isThrough(each, thicknessMm) ? { fromBackMm: each.fromBackMm } : {}),
    })),
    leastFloor: floorOf(rounds, thicknessMm),
    leastOverHole: overHole(rounds),
    leastRim: rimOf(rounds),
  };
}

function blocksOf({ board }: Measured): BoardPart['blocks'] {
  const kinds = new Map<string, BoardPart['blocks'][number]>();
  for (const { row, part, grainDeg, diveDeg, region } of board.blocks) {
    const key = JSON.stringify([row.name, part, grainDeg, diveDeg]);
    const known = kinds.get(key);
    const face = region === null ? null : signedArea(region);
    kinds.set(key, {
      species: row.name,
      part: part ?? null,
      grainDeg,
      diveDeg,
      blocks: (known?.blocks ?? 0) + 1,
      faceMm2: face === null ? null : face + (known?.faceMm2 ?? 0),
    });
  }
  return [...kinds.values()];
}

function floorOf(rounds: readonly Measured[], thicknessMm: number): BoardPart['leastFloor'] {
  const depths = rounds
    .filter(({ cutArea }) => cutArea > 0)
    .map(({ site, maxDepth }) => site.loweredMm + maxDepth);
  return depths.length === 0
    ? null
    : { woodMm: thicknessMm - Math.max(...depths), leastMm: leastFloorMm(thicknessMm) };
}

function overHole(rounds: readonly Measured[]): BoardPart['leastOverHole'] {
  const [least] = rounds
    .flatMap(overHollows)
    .filter(({ woodMm }) => Number.isFinite(woodMm))
    .toSorted(byGrain(({ woodMm }) => woodMm));
  return least === undefined
    ? null
    : { woodMm: least.woodMm, leastMm: limits.floorUnderPocket.value, atMm: [...least.atMm] };
}

function rimOf(rounds: readonly Measured[]): BoardPart['leastRim'] {
  const [least] = rounds
    .flatMap((measured): readonly Gap[] => {
      const { job, cutRegion, board } = measured;
      const gap =
        job.board === null
          ? null
          : leastGap(cutRegion, { board: job.board, obstacles: besidePocket(measured), placed: board });
      return gap === null ? [] : [gap];
    })
    .toSorted(byGrain(({ widthMm }) => widthMm));
  return least === undefined
    ? null
    : { woodMm: least.widthMm, beside: least.beside, fromMm: [...least.from], toMm: [...least.to] };
}

function points(rings: Rings): [number, number][][] {
  return Array.from(rings.ringEnds, (_, k) => {
    const ring = ringCoords(rings, k);
    return Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [
      ring[2 * i] as number,
      ring[2 * i + 1] as number,
    ]);
  });
}
