import { perimeter, signedArea } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import { type Balance, equalWithin } from './balance.ts';

/**
 * Areas by cells and by outlines agree to 1e-9 of the artwork; a thousand times as much is still far below
 * any figure that is printed.
 */
const AREA_REL_TOL = 1e-6;
/** Smallest areas differ by rounding alone, mm². */
const AREA_TOL_MM2 = 1e-6;

/** What is measured of areas: the whole of the artwork and of the cut against their parts. */
export function areaBalances(measured: Measured): readonly Balance[] {
  return [
    ...cutAndLeft(measured),
    cutAndOutline(measured),
    bitsAndCut(measured),
    ...coloursAndCut(measured),
    blocksInCut(measured),
    floorInCut(measured),
  ];
}

/** What rounding may make of areas of an artwork. */
function slack({ artworkArea }: Measured): number {
  return AREA_REL_TOL * artworkArea + AREA_TOL_MM2;
}

/** What joining and flattening of outlines may make of the area of a cut. */
function outlineSlack(measured: Measured): number {
  const { job, carving, wallLength } = measured;
  return slack(measured) + (job.toleranceMm + carving.toleranceMm + resolving(measured)) * wallLength;
}

/** What resolving may move points by; where nothing is drawn that is no number. */
function resolving({ resolved, artworkArea }: Measured): number {
  return artworkArea > 0 ? resolved.toleranceMm : 0;
}

/** The cut by its cells, and what is left by its outlines. */
function cutAndLeft(measured: Measured): readonly Balance[] {
  const { job, artworkArea, cutArea, standingAreaMm2, carving } = measured;
  const vees = job.bits.filter(({ kind }) => kind === 'vee').length;
  // beside a V, other bits cut what it does not, so that what it leaves is too much by as much
  const more = vees > 0 && vees < job.bits.length ? artworkArea : 0;
  const by = slack(measured) + (carving.stepCuts.length > 1 ? carving.toleranceMm * measured.wallLength : 0);
  return [
    {
      id: 'artwork-is-cut-and-left',
      unit: 'mm2',
      got: cutArea + standingAreaMm2,
      least: artworkArea - by,
      most: artworkArea + by + more,
    },
  ];
}

/** The cut by its cells, and by the area of its flattened outline. */
function cutAndOutline(measured: Measured): Balance {
  const { cutArea, cutRegion } = measured;
  return equalWithin('cut-is-its-outline', 'mm2', [cutArea, signedArea(cutRegion), outlineSlack(measured)]);
}

function bitsAndCut(measured: Measured): Balance {
  const { carving, cutArea } = measured;
  const sum = carving.perCutter.reduce((total, { areaMm2 }) => total + areaMm2, 0);
  const by = slack(measured) + carving.perCutter.length * outlineSlack(measured);
  return equalWithin('bits-add-up-to-cut', 'mm2', [sum, cutArea, by]);
}

function coloursAndCut(measured: Measured): readonly Balance[] {
  const { colourCuts, cutRegion } = measured;
  if (colourCuts.length === 0) {
    return [];
  }
  const sum = colourCuts.reduce((total, { cut }) => total + signedArea(cut), 0);
  // the borders between colours are resolved anew
  const borders = colourCuts.reduce((total, { cut }) => total + perimeter(cut), 0);
  const by = slack(measured) + 2 * Math.max(resolving(measured), measured.carving.toleranceMm) * borders;
  return [equalWithin('colours-add-up-to-cut', 'mm2', [sum, signedArea(cutRegion), by])];
}

function blocksInCut(measured: Measured): Balance {
  const { blocks, cutRegion } = measured;
  const sum = blocks.reduce((total, { cut }) => total + signedArea(cut), 0);
  return {
    id: 'blocks-lie-in-cut',
    unit: 'mm2',
    got: sum,
    least: 0,
    most: signedArea(cutRegion) + outlineSlack(measured),
  };
}

function floorInCut(measured: Measured): Balance {
  const { carving, cutArea } = measured;
  return {
    id: 'floor-lies-in-cut',
    unit: 'mm2',
    got: carving.floorAreaMm2,
    least: -slack(measured),
    most: cutArea + outlineSlack(measured),
  };
}
