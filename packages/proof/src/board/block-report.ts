import type { Job } from '@pourproof/job';
import { bleedIndex, type CalibratedTravel, type Wood } from '@pourproof/materials';
import { byGrain, radians } from '@pourproof/plane';
import type { DrawnColour } from '../colours/drawn-colours.ts';
import { differenceIn } from '../colours/streaks.ts';
import type { Report } from '../report/report.ts';
import type { Stages } from '../stages/stages.ts';
import { type BlockMeasures, inFace } from './block-measures.ts';

/** Blocks of one wood and one fibre direction. */
interface BlockKind {
  readonly first: BlockMeasures;
  readonly all: readonly BlockMeasures[];
}

/** End grain by kind of block; the totals are the sums over the kinds. */
export function endGrainReport(
  blocks: readonly BlockMeasures[],
  job: { readonly grainDeg: number; readonly diveDeg: number },
): Report['endGrain'] {
  const wallArea = sum(blocks, (each) => each.wallAreaMm2);
  const wallExposedMm2 = sum(blocks, (each) => each.wallExposedMm2);
  return {
    grainDeg: job.grainDeg,
    diveDeg: job.diveDeg,
    wallExposedMm2,
    floorExposedMm2: sum(blocks, (each) => each.floorExposedMm2),
    wallFraction: wallArea > 0 ? wallExposedMm2 / wallArea : 0,
    byBlock: kindsOf(blocks).map(({ first, all }) => ({
      species: first.block.row.name,
      part: first.block.part,
      blocks: new Set(all.map(({ index }) => index)).size,
      grainDeg: first.block.grainDeg,
      diveDeg: first.block.diveDeg,
      wallAreaMm2: sum(all, (each) => each.wallAreaMm2),
      wallLengthMm: sum(all, (each) => each.wallLengthMm),
      wallExposedMm2: sum(all, (each) => each.wallExposedMm2),
      floorAreaMm2: sum(all, (each) => each.floorAreaMm2),
      floorExposedMm2: sum(all, (each) => each.floorExposedMm2),
    })),
  };
}

/** What the colour travel of blocks is told with. */
interface ToldBeside {
  readonly job: Job;
  readonly colours: readonly DrawnColour[];
  readonly stages: Stages;
}

/** Colour travel by kind of block. */
export function bleedReport(
  blocks: readonly BlockMeasures[],
  { job, colours, stages }: ToldBeside,
): Report['bleed'] {
  const used = new Set(blocks.flatMap(({ travel }) => travel.couponRows));
  const met = new Set(blocks.map(({ block }) => block.row));
  return {
    basis: used.size > 0 ? 'calibrated' : 'prior',
    coupons: used.size,
    couponsUnused: job.coupons
      .filter(({ row }) => !used.has(row))
      .map(({ row, made }) => ({ row, why: met.has(made.wood as Wood) ? 'one-other-board' : 'other-wood' })),
    blocks: kindsOf(blocks).map(({ first, all }) => ({
      species: first.block.row.name,
      part: first.block.part,
      basis: first.travel.basis,
      coupons: first.travel.couponRows.length,
      slots: first.travel.slots,
      spreadWithin: first.travel.spreadWithin,
      ...ownSlotsOf(first.travel),
      grainDeg: first.block.grainDeg,
      travelMm: {
        median: first.travel.medianMm,
        low: first.travel.lowMm,
        high: first.travel.highMm,
      },
      bounds: first.travel.flow,
      visibleProbability: first.travel.visibleProbability,
      ...streaksOf(first, colours),
      ...bleedAreasOf(all, stages),
    })),
  };
}

function bleedAreasOf(
  all: readonly BlockMeasures[],
  stages: Stages,
): Pick<Report['bleed']['blocks'][number], 'areaMm2' | 'areaLowMm2' | 'areaHighMm2'> {
  const areas = all.map(({ bleedAreas }) => bleedAreas(stages));
  return {
    areaMm2: sum(areas, ({ median }) => median),
    areaLowMm2: sum(areas, ({ low }) => low),
    areaHighMm2: sum(areas, ({ high }) => high),
  };
}

function ownSlotsOf({ ownSlots }: CalibratedTravel): Pick<Report['bleed']['blocks'][number], 'ownSlots'> {
  if (ownSlots === null) {
    return {};
  }
  const { slots, bleeding, chance } = ownSlots;
  return { ownSlots: { slots, bleeding, chance: chance.mean, chanceUpper95: chance.upper95 } };
}

type BlockReport = Report['bleed']['blocks'][number];

/** How streaks look in this wood, the plainest first told; nothing where no colour or not that of the wood is known. */
function streaksOf(
  { block, travel }: BlockMeasures,
  colours: readonly DrawnColour[],
): Pick<BlockReport, 'streak' | 'streaks'> {
  const streaks = colours.flatMap((colour) => {
    const deltaE00 = differenceIn(colour, block);
    return deltaE00 === null
      ? []
      : [
          {
            colour: colour.name,
            deltaE00,
            index: bleedIndex(travel.medianMm, inFace(radians(block.diveDeg)), deltaE00),
          },
        ];
  });
  const [plainest] = streaks.toSorted(byGrain(({ deltaE00 }) => -deltaE00));
  if (plainest === undefined) {
    return {};
  }
  const { colour: _, ...streak } = plainest;
  return { streak, ...(colours.length > 1 ? { streaks } : {}) };
}

function kindsOf(blocks: readonly BlockMeasures[]): readonly BlockKind[] {
  const kinds = new Map<string, BlockMeasures[]>();
  for (const each of blocks) {
    const { row, part, grainDeg, diveDeg } = each.block;
    // after a turn, blocks of one direction may differ by rounding
    const key = `${row.name} ${part} ${grainDeg.toFixed(6)} ${diveDeg.toFixed(6)}`;
    kinds.set(key, [...(kinds.get(key) ?? []), each]);
  }
  return [...kinds.values()].map((all) => ({ first: all[0] as BlockMeasures, all }));
}

function sum<T>(list: readonly T[], value: (each: T) => number): number {
  return list.reduce((total, each) => total + value(each), 0);
}
