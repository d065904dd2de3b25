import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis, openedArea, vVolume } from '@pourproof/geometry';
import { radians, signedArea } from '@pourproof/plane';
import { chorded, trueArea, trueOutline } from './fonts/true-outline.ts';
import { lettered } from './shapes/lettered.ts';

export const FACES = [
  'lora-400',
  'bodoni-moda-400',
  'dancing-script-400',
  'arvo-400',
  'josefin-sans-400',
  'josefin-sans-100',
];
/** Letters whose contours cross in none of the faces, so that Green's theorem gives their area. */
export const LETTERS = 'olsCDGPSU08';
export const CAP_HEIGHTS_MM = [8, 15, 40];
export const TOLERANCES_MM = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05];
export const BIT_MM = 0.8;
export const V_DEG = 60;

const V_CUT = { includedRad: radians(V_DEG), depthMm: Infinity };
/** Chords of the reference leave their curves by this at the cap height below, and by a quarter of it. */
const SAG_MM = 5e-4;
const REFERENCE_CAP_MM = 15;

/** What is measured of a face's letters, in mm² and mm³. */
export interface Measured {
  readonly area: number;
  readonly vVolume: number;
  readonly opened: number;
}

/** One cell of the sweep: errors as shares of the true area and volume, the opened area's of the true area. */
export interface Deviation {
  readonly face: string;
  readonly capHeightMm: number;
  readonly toleranceMm: number;
  readonly share: Measured;
}

/** The whole sweep: our flattening at each tolerance against the font's own curves. */
export async function accuracySweep(): Promise<Deviation[]> {
  const rows: Deviation[] = [];
  for (const face of FACES) {
    const truths = trueMeasures(face);
    for (const [k, capHeightMm] of CAP_HEIGHTS_MM.entries()) {
      const truth = truths[k];
      for (const toleranceMm of TOLERANCES_MM) {
        const got = await ourMeasures(face, capHeightMm, toleranceMm);
        const share = {
          area: got.area / truth.area - 1,
          vVolume: got.vVolume / truth.vVolume - 1,
          opened: (got.opened - truth.opened) / truth.area,
        };
        rows.push({ face, capHeightMm, toleranceMm, share });
      }
    }
  }
  return rows;
}

async function ourMeasures(face: string, capHeightMm: number, toleranceMm: number): Promise<Measured> {
  // each by itself: letters of a script run into each other
  const regions = await Promise.all(
    [...LETTERS].map((letter) => lettered(letter, `${face}.ttf`, capHeightMm, toleranceMm)),
  );
  return sum(
    regions.map((region) => {
      const axis = medialAxis(region);
      return {
        area: signedArea(region),
        vVolume: vVolume(axis, V_CUT),
        opened: openedArea(axis, BIT_MM / 2),
      };
    }),
  );
}

/**
 * For each cap height, from letters of one: area by Green's theorem; volume and opened area of chords with their ends on the curves, carried
 * on to no chord length at all: what chords take falls with the square of their number, so a third of the last step is still to come (Richardson).
 */
function trueMeasures(face: string): Measured[] {
  const outlines = [...LETTERS].map((letter) => trueOutline(letter, `${face}.ttf`, REFERENCE_CAP_MM));
  const scales = CAP_HEIGHTS_MM.map((cap) => cap / REFERENCE_CAP_MM);
  const [coarse, fine] = [1, 2].map((refine) => {
    const axes = outlines.map((outline) => {
      const chords = { ...chorded(outline, SAG_MM, refine), fillRule: 'nonzero' as const };
      return medialAxis(resolveRegions([chords]).region);
    });
    return scales.map((scale) =>
      sum(
        axes.map((axis) => ({
          area: signedArea(axis.region) * scale ** 2,
          vVolume: vVolume(axis, V_CUT) * scale ** 3,
          opened: openedArea(axis, BIT_MM / 2 / scale) * scale ** 2,
        })),
      ),
    );
  });
  const trueAreaMm2 = outlines.reduce((all, outline) => all + trueArea(outline), 0);
  return scales.map((scale, k) => {
    const limit = (key: keyof Measured): number => fine[k][key] + (fine[k][key] - coarse[k][key]) / 3;
    const area = trueAreaMm2 * scale ** 2;
    if (Math.abs(limit('area') / area - 1) > 1e-9) {
      throw new Error(`${face}: chords come to ${limit('area')} mm², the curves to ${area} mm²`);
    }
    return { area, vVolume: limit('vVolume'), opened: limit('opened') };
  });
}

function sum(parts: readonly Measured[]): Measured {
  const total = (key: keyof Measured): number => parts.reduce((all, part) => all + part[key], 0);
  return { area: total('area'), vVolume: total('vVolume'), opened: total('opened') };
}
