import { resolveRegions } from '@pourproof/arrangement';
import { type Carving, carve } from '@pourproof/cutting';
import {
  leftStanding,
  type MedialAxis,
  medialAxis,
  type NarrowStretch,
  narrowStretches,
  polygonFromArcs,
  type StandingPiece,
  type StrokeWidths,
  strokeWidths,
} from '@pourproof/geometry';
import type { Bit, Job } from '@pourproof/job';
import { type CleanRegion, perimeter, type Rings } from '@pourproof/plane';
import { Stages } from '../stages/stages.ts';
import { bitEfforts, type Efforts } from './bit-efforts.ts';
import { bitsThatFit } from './bits-that-fit.ts';
import { type CutShape, cutShape } from './cut-shape.ts';
import { cutterOf } from './cutter-of.ts';
import { deepestOfCut } from './deepest-of-cut.ts';

/** What the bits of a job make of an artwork. Lengths in mm, areas in mm². */
export interface CutMeasures {
  readonly axis: MedialAxis;
  /** The bits of the job as they enter the flattened artwork. */
  readonly bits: readonly Bit[];
  /** What the bits make of strokes of any width. */
  readonly shape: CutShape;
  /** What the bits remove together. */
  readonly carving: Carving;
  /** Paths and times of the bits. */
  readonly efforts: Efforts;
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
  /** Stretches of stroke narrower than a width. */
  readonly narrowerThan: (widthMm: number) => readonly NarrowStretch[];
}

/** The part of a job that its cut depends on. */
export type CutJob = Pick<
  Job,
  'bits' | 'depthMm' | 'toleranceMm' | 'machine' | 'stepoverPct' | 'passDepthMm'
>;

/** Measures the cut of an artwork and its strokes. */
export function measureCut(artwork: CleanRegion, given: CutJob, stages: Stages = new Stages()): CutMeasures {
  const { depthMm, toleranceMm, machine, stepoverPct, passDepthMm } = given;
  const axis = stages.of('axis', [artwork], null, () => medialAxis(artwork));
  const bits = stages.of('fit', [axis], { bits: given.bits, depthMm, toleranceMm }, () =>
    bitsThatFit(axis, given),
  );
  const job = { ...given, bits };
  const shape = cutShape(bits, depthMm);
  const carving = stages.of('cut', [axis], { bits, depthMm }, () => carveJob(axis, job));
  const { cut, cutRegion } = stages.of('outline', [carving], { toleranceMm }, () =>
    outlineOf(carving, toleranceMm),
  );
  return {
    axis,
    shape,
    carving,
    efforts: stages.of(
      'paths',
      [axis, carving],
      { bits, depthMm, toleranceMm, machine, stepoverPct, passDepthMm },
      () => bitEfforts(axis, carving, job),
    ),
    bits,
    bitMm: cutShape(given.bits, depthMm).entersMm,
    cut,
    cutRegion,
    cutArea: carving.areaMm2,
    maxDepth: deepestOfCut(carving, shape),
    wallLength: perimeter(cut),
    ...stages.of('standing', [axis], { widthMm: shape.entersMm, toleranceMm }, () =>
      leftOver(axis, shape, toleranceMm),
    ),
    strokes: stages.of('widths', [axis], null, () => strokeWidths(axis)),
    narrowerThan: (widthMm) => narrowStretches(axis, widthMm),
  };
}

/** What the bits leave of the artwork. */
function leftOver(
  axis: MedialAxis,
  { entersMm }: CutShape,
  toleranceMm: number,
): Pick<CutMeasures, 'standing' | 'standingAreaMm2'> {
  if (entersMm === 0) {
    return { standing: [], standingAreaMm2: 0 };
  }
  const { pieces, facetAreaMm2 } = leftStanding(axis, entersMm / 2, toleranceMm);
  return {
    standing: pieces,
    standingAreaMm2: pieces.reduce((sum, { areaMm2 }) => sum + areaMm2, facetAreaMm2),
  };
}

/** Outline of a cut at the face. */
function outlineOf({ outline }: Carving, toleranceMm: number): Pick<CutMeasures, 'cut' | 'cutRegion'> {
  const cut = polygonFromArcs(outline, toleranceMm);
  return { cut, cutRegion: resolveRegions([{ ...cut, fillRule: 'nonzero' }]).region };
}

/** What the bits of a job remove: a V follows the artwork's edge, others clear at full depth. */
export function carveJob(axis: MedialAxis, { bits, depthMm }: Pick<CutJob, 'bits' | 'depthMm'>): Carving {
  const steps = bits.map((bit) => ({
    cutter: cutterOf(bit),
    way: bit.kind === 'vee' ? ('follow' as const) : ('clear' as const),
  }));
  return carve(axis, steps, { depthMm });
}
