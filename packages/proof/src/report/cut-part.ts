import { type Job, SETTINGS, shopBit } from '@pourproof/job';
import { invariant } from '@pourproof/plane';
import type { Efforts } from '../cut/bit-efforts.ts';
import type { CutBounds } from '../cut/cut-bounds.ts';
import type { Measured } from '../measured.ts';
import type { Report } from './report.ts';

/** What is left of the artwork's area, as a share of it, when all of it is cut: rounding. */
const SAME_AREA_REL_TOL = 1e-9;

/** What the bits remove, bit by bit, with the bounds of its error and the time that it takes. */
export function cutPart(measured: Measured, bounds: CutBounds): Report['cut'] {
  const { carving, cutArea, wallLength, artworkArea, maxDepth } = measured;
  const efforts = measured.efforts();
  const { onlyAsDrawnMm2, narrowerMm: lengthNarrowerThanBitMm, ...errorBound } = bounds;
  return {
    areaMm2: cutArea,
    leftStandingMm2: leftStandingArea(artworkArea, cutArea),
    volumeMm3: carving.volumeMm3,
    floorAreaMm2: carving.floorAreaMm2,
    wallAreaMm2: carving.wallAreaMm2,
    wallLengthMm: wallLength,
    maxDepthMm: maxDepth,
    ...(carving.scallopedFloorMm2 > 0 ? { ridgedFloorMm2: carving.scallopedFloorMm2 } : {}),
    errorBound: { ...errorBound, lengthNarrowerThanBitMm },
    ...(onlyAsDrawnMm2 > 0 ? { onlyAsDrawnMm2 } : {}),
    perCutter: cuttersOf(measured, efforts),
    time: timeOf(efforts, measured.job),
  };
}

function cuttersOf({ job, carving }: Measured, efforts: Efforts): Report['cut']['perCutter'] {
  return carving.perCutter.map((added, k) => {
    const cutter = job.bits[k];
    const effort = efforts.bits[k];
    invariant(cutter !== undefined && effort !== undefined, 'every step of the carving is of one bit');
    return {
      cutter,
      depthMm: added.depthMm,
      areaMm2: Math.max(0, added.areaMm2),
      volumeMm3: Math.max(0, added.volumeMm3),
      floorMm2: added.floorMm2,
      places: added.places.length,
      outlineMm: Math.max(0, added.lengthMm),
      ...effort,
    };
  });
}

function timeOf(efforts: Efforts, job: Job): Report['cut']['time'] {
  const fromShop = job.fromShop.map((key) => SETTINGS[key].field);
  const changes = changeMinutes(efforts, job);
  return {
    minutes: efforts.bits.reduce((sum, { minutes }) => sum + minutes, 0),
    ...(changes === null ? {} : { changeMinutes: changes }),
    ...(efforts.leftOutMm2 > 0 ? { floorLeftOutMm2: efforts.leftOutMm2 } : {}),
    assumptions: efforts.assumptions.map((each) =>
      each.origin === 'given' && fromShop.includes(each.name) ? { ...each, origin: 'shop' } : { ...each },
    ),
  };
}

/** Minutes to put in the bits that have something to do; `null` where the shop does not say it of each. */
function changeMinutes({ bits }: Efforts, job: Job): number | null {
  const minutes = job.bits
    .filter((_, k) => (bits[k]?.passes ?? 0) > 0)
    .map((bit) => shopBit(job.shop, bit)?.changeMinutes ?? null);
  const known = minutes.filter((each) => each !== null);
  return known.length === 0 || known.length < minutes.length
    ? null
    : known.reduce((sum, each) => sum + each, 0);
}

/** Artwork that no bit reaches, mm²; rounding is none. */
export function leftStandingArea(artworkArea: number, cutArea: number): number {
  const left = artworkArea - cutArea;
  return left > SAME_AREA_REL_TOL * artworkArea ? left : 0;
}
