import { signedArea } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import type { ColourPour } from '../pour/pour-plan.ts';
import type { Balance } from './balance.ts';

/** Slabs between whose slices the volume lies: of cuts of several bits a slice is joined anew, which costs. */
const SLABS = 6;
const SLABS_OF_SEVERAL = 2;
/** Just above the deepest floor, as a share of its depth: at the floor itself a slice is the floor. */
const ABOVE_FLOOR = 1 - 1e-9;
/** Rounding of volumes and depths. */
const VOLUME_REL_TOL = 1e-6;
const DEPTH_TOL_MM = 1e-6;

/** What is measured of volumes and depths. */
export function volumeBalances(measured: Measured): readonly Balance[] {
  return [
    betweenSlices(measured),
    bitsAndVolume(measured),
    {
      id: 'depth-is-within-limit',
      unit: 'mm',
      got: measured.maxDepth,
      least: 0,
      most: measured.job.depthMm + DEPTH_TOL_MM,
    },
    ...fillsAndVolume(measured),
  ];
}

/** What joining and flattening of outlines may make of the volume of a cut. */
function slack({ job, carving, wallLength }: Measured): number {
  return (
    VOLUME_REL_TOL * carving.volumeMm3 +
    carving.volumeErrorMm3 +
    (carving.stepCuts.length > 1 ? carving.toleranceMm : 0) * wallLength * job.depthMm
  );
}

/** Prisms on the slices lie in the cut, prisms under them hold it: slices shrink downwards. */
function betweenSlices(measured: Measured): Balance {
  const { carving } = measured;
  const count = carving.stepCuts.length > 1 ? SLABS_OF_SEVERAL : SLABS;
  const height = carving.maxDepthMm / count;
  const slices = Array.from({ length: count + 1 }, (_, k) =>
    carving.sliceArea(k === count ? carving.maxDepthMm * ABOVE_FLOOR : k * height),
  );
  const below = slices.slice(1).reduce((sum, area) => sum + area, 0) * height;
  const above = slices.slice(0, -1).reduce((sum, area) => sum + area, 0) * height;
  const by = slack(measured);
  return {
    id: 'volume-lies-between-slices',
    unit: 'mm3',
    got: carving.volumeMm3,
    least: below - by,
    most: above + by,
  };
}

function bitsAndVolume(measured: Measured): Balance {
  const { carving } = measured;
  const sum = carving.perCutter.reduce((total, { volumeMm3 }) => total + volumeMm3, 0);
  const by = (1 + carving.perCutter.length) * slack(measured);
  return {
    id: 'bits-add-up-to-cut',
    unit: 'mm3',
    got: sum,
    least: carving.volumeMm3 - by,
    most: carving.volumeMm3 + by,
  };
}

/** Fills of all colours are the cut less its film of seal, and none is more than its colour's area holds at full depth. */
function fillsAndVolume(measured: Measured): readonly Balance[] {
  const { carving, colourCuts, maxDepth, cutArea, pour, sealFilm } = measured;
  const volume = carving.volumeMm3;
  const by = slack(measured);
  const film = Math.min(
    volume,
    sealFilm * (carving.floorAreaMm2 + carving.ledgeAreaMm2 + carving.wallAreaMm2),
  );
  const fills = pour.colours.map(fillMm3);
  const areas = colourCuts.map(({ cut }) => signedArea(cut));
  const all = areas.reduce((sum, area) => sum + area, 0);
  // between upright walls down to one floor a fill is its area by the depth, less film
  const isUpright = measured.job.bits.every(({ kind }) => kind === 'flat') && carving.stepCuts.length === 1;
  return [
    {
      id: 'fills-add-up-to-volume',
      unit: 'mm3',
      got: fills.reduce((sum, fill) => sum + fill, 0),
      least: volume - film - sealFilm * carving.wallAreaErrorMm2 - by,
      most: volume + by,
    },
    ...(areas.length === fills.length ? fills : []).map((fill, index): Balance => {
      const whole = (all > 0 ? (areas[index] ?? 0) / all : 0) * cutArea * maxDepth;
      return {
        id: 'fill-fits-its-colour',
        unit: 'mm3',
        got: fill,
        least: isUpright ? whole - film - by : -by,
        most: isUpright || fills.length === 1 ? whole + by : volume + by,
        index,
      };
    }),
  ];
}

/** The cut that one colour fills on one board, less film, mm³. */
function fillMm3({ budget }: ColourPour): number {
  return 1000 * budget.cutMl;
}
