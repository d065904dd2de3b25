import { combineShapes, resolveRegions } from '@pourproof/arrangement';
import { type Carving, carve } from '@pourproof/cutting';
import {
  arcRingsLength,
  leftStanding,
  type MedialAxis,
  medialAxis,
  type NarrowStretch,
  polygonFromArcs,
  type StandingPiece,
  type StrokeWidths,
  strokeWidths,
} from '@pourproof/geometry';
import type { Bit, Job } from '@pourproof/job';
import { type CleanRegion, type Rings, signedArea } from '@pourproof/plane';
import { Stages } from '../stages/stages.ts';
import { bitEfforts, type Efforts } from './bit-efforts.ts';
import { bitsThatFit } from './bits-that-fit.ts';
import { type CutShape, cutShape } from './cut-shape.ts';
import { cutterOf } from './cutter-of.ts';
import { narrowerOf } from './of-axis.ts';

/** What the bits of a job make of an artwork. Lengths in mm, areas in mm². */
export interface CutMeasures {
  readonly axis: MedialAxis;
  /** The bits of the job as they enter the flattened artwork. */
  readonly bits: readonly Bit[];
  /** The artwork without strokes that none of them is to enter although they are hardly narrower. */
  readonly entered: CleanRegion;
  /** What the bits make of strokes of any width. */
  readonly shape: CutShape;
  /** What the bits remove together. */
  readonly carving: Carving;
  /** Paths and times of the bits, found when they are asked for: no verdict hangs on them. */
  readonly efforts: () => Efforts;
  /** Narrowest stroke that any bit enters at this depth; 0 for a V with a pointed or rounded tip. */
  readonly bitMm: number;
  /** Outline of the cut at the face, arcs flattened within the job's tolerance. */
  readonly cut: Rings;
  /** The same as a clean region. */
  readonly cutRegion: CleanRegion;
  readonly cutArea: number;
  /** Greatest depth of the cut: a V stays above its limit where no stroke is wide enough. */
  readonly maxDepth: number;
  readonly wallLength: number;
  readonly standing: readonly StandingPiece[];
  /** Area of what the bits leave, specks and all. */
  readonly standingAreaMm2: number;
  readonly strokes: StrokeWidths;
  /** Length of the strokes that are narrower than the smallest bit. */
  readonly narrowerLength: number;
  /** Stretches of stroke narrower than a width. */
  readonly narrowerThan: (widthMm: number) => readonly NarrowStretch[];
}

/** The part of a job that its cut depends on. */
export type CutJob = Pick<
  Job,
  'bits' | 'depthMm' | 'toleranceMm' | 'machine' | 'stepoverPct' | 'passDepthMm'
>;

/**
 * Measures the cut of an artwork and its strokes.
 *
 * @param curvesMm farthest that a curve lies from its chords
 */
export function measureCut(
  artwork: CleanRegion,
  given: CutJob,
  curvesMm: number,
  stages: Stages = new Stages(),
): CutMeasures {
  const { depthMm, toleranceMm, machine, stepoverPct, passDepthMm } = given;
  const axis = stages.of('axis', [artwork], null, () => medialAxis(artwork));
  const { bits, tooNarrow, entered } = stages.of(
    'fit',
    [axis],
    { bits: given.bits, depthMm, curvesMm },
    () => {
      const fit = bitsThatFit(axis, { ...given, toleranceMm: curvesMm });
      return { ...fit, entered: enteredRegion(artwork, fit.tooNarrow) };
    },
  );
  const enteredAxis = stages.of('axis', [entered], null, () => medialAxis(entered));
  const job = { ...given, bits };
  const shape = cutShape(bits, depthMm);
  const carving = stages.of('cut', [enteredAxis], { bits, depthMm }, () => carveJob(enteredAxis, job));
  const { cut, cutRegion } = stages.of('outline', [carving], { toleranceMm }, () =>
    outlineOf(carving, toleranceMm),
  );
  const strokes = stages.of('widths', [axis], null, () => strokeWidths(axis));
  return {
    axis,
    shape,
    carving,
    efforts: () =>
      stages.of(
        'paths',
        [enteredAxis, carving],
        { bits, depthMm, toleranceMm, machine, stepoverPct, passDepthMm },
        () => bitEfforts(enteredAxis, carving, job),
      ),
    bits,
    entered,
    bitMm: cutShape(given.bits, depthMm).entersMm,
    cut,
    cutRegion,
    cutArea: carving.areaMm2,
    maxDepth: carving.maxDepthMm,
    wallLength: arcRingsLength(carving.outline),
    ...stages.of('standing', [enteredAxis, ...tooNarrow], { widthMm: shape.entersMm, toleranceMm }, () =>
      leftOver(enteredAxis, shape, toleranceMm, [tooNarrow, signedArea(artwork) - signedArea(entered)]),
    ),
    strokes,
    narrowerLength:
      strokes.lengthNarrowerThan(shape.entersMm) + tooNarrow.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    narrowerThan: (widthMm) => narrowerOf(axis, widthMm),
  };
}

/** What the bits leave of what they may enter, and the pieces that they may not, with the area of these. */
function leftOver(
  axis: MedialAxis,
  { entersMm }: CutShape,
  toleranceMm: number,
  [tooNarrow, tooNarrowMm2]: readonly [readonly StandingPiece[], number],
): Pick<CutMeasures, 'standing' | 'standingAreaMm2'> {
  if (entersMm === 0) {
    return { standing: [], standingAreaMm2: 0 };
  }
  const { pieces, facetAreaMm2 } = leftStanding(axis, entersMm / 2, toleranceMm);
  return {
    standing: [...pieces, ...tooNarrow],
    standingAreaMm2: pieces.reduce((sum, { areaMm2 }) => sum + areaMm2, facetAreaMm2 + tooNarrowMm2),
  };
}

/** Outline of a cut at the face. */
function outlineOf({ outline }: Carving, toleranceMm: number): Pick<CutMeasures, 'cut' | 'cutRegion'> {
  const cut = polygonFromArcs(outline, toleranceMm);
  return { cut, cutRegion: resolveRegions([{ ...cut, fillRule: 'nonzero' }]).region };
}

/** The artwork without pieces that no bit is to enter. */
export function enteredRegion(artwork: CleanRegion, pieces: readonly StandingPiece[]): CleanRegion {
  return pieces.length === 0
    ? artwork
    : combineShapes(
        [{ ...artwork, fillRule: 'nonzero' }],
        pieces.map(({ outline }) => ({ ...outline, fillRule: 'nonzero' })),
        'subtract',
      );
}

/** What the bits of a job remove: a V follows the artwork's edge, others clear at full depth. */
export function carveJob(axis: MedialAxis, { bits, depthMm }: Pick<CutJob, 'bits' | 'depthMm'>): Carving {
  const steps = bits.map((bit) => ({
    cutter: cutterOf(bit),
    way: bit.kind === 'vee' ? ('follow' as const) : ('clear' as const),
  }));
  return carve(axis, steps, { depthMm });
}
