import type { Carving } from '@pourproof/cutting';
import {
  arcRingsLength,
  curvedEdges,
  type MedialAxis,
  medialAxis,
  strokeWidths,
  withinFlattening,
} from '@pourproof/geometry';
import type { Bit } from '@pourproof/job';
import { type CleanRegion, perimeter, pollStep, type Rings, radians, ringStart } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import { bitsThatFit } from './bits-that-fit.ts';
import { cutShape } from './cut-shape.ts';
import { type CutJob, type CutMeasures, carveJob, enteredRegion } from './measure-cut.ts';

/** Figures of a cut that depend on where its bits enter. */
interface CutFigures {
  readonly areaMm2: number;
  readonly volumeMm3: number;
  readonly floorAreaMm2: number;
  readonly wallAreaMm2: number;
  readonly wallLengthMm: number;
  readonly maxDepthMm: number;
  /** Length of stroke narrower than the smallest bit. */
  readonly narrowerMm: number;
}

/** How far each figure of a cut may be from that of the curves as drawn, in its unit. */
export interface CutBounds extends CutFigures {
  /**
   * Area of the cut in strokes and dots that are as wide as the bit to the flattening, which the bounds leave out: if they were drawn
   * narrower, by less than it tells, no bit enters them.
   */
  readonly onlyAsDrawnMm2: number;
}

/** A cut with what its bounds depend on besides. */
interface CutToBound {
  readonly measures: CutMeasures;
  /** The job as given: its bits before they were fitted. */
  readonly given: CutJob;
  readonly artworkAreaMm2: number;
  /** Farthest that a curve lies from its chords, and that resolving moved points, mm. */
  readonly curvesMm: number;
  readonly pointsMm: number;
}

/**
 * Bounds of the error of a cut's figures: the same measured on two artworks between which the one drawn lies (docs/method/stated-bounds.md). Of
 * more artwork no less is cut, so that area, floor and volume lie between theirs.
 */
function cutBounds(cut: CutToBound): CutBounds {
  const { measures, given, curvesMm } = cut;
  const { entered, carving, shape, strokes } = measures;
  const figures = figuresOf(carving, strokes.lengthNarrowerThan(shape.entersMm));
  const own = ownErrors(cut);
  const regions = withinFlattening(entered, curvesMm);
  if (regions.least === entered) {
    return { ...own, onlyAsDrawnMm2: 0 };
  }
  const job = { ...given, bits: measures.bits };
  const lower = fittedCut(regions.least, { ...job, toleranceMm: curvesMm });
  // strips that meet beside thin strokes read as strokes of their own: of these the lower side counts alone
  const upper = figuresOf(carveJob(medialAxis(regions.most), job), figures.narrowerMm);
  const most = atMost(cut, upper);
  const narrower = narrowerBit(cut, lower.entersMm);
  const bounds = mapFigures(
    (key) =>
      own[key] +
      narrower[key] +
      Math.max(Math.abs(figures[key] - lower.figures[key]), Math.abs(most[key] - figures[key])),
  );
  if (figures.areaMm2 === 0 && most.areaMm2 === 0) {
    // what is not cut of more artwork is not cut of this, and has no walls
    return { ...bounds, wallLengthMm: 0, wallAreaMm2: 0, onlyAsDrawnMm2: 0 };
  }
  const isFitted = lower.isFitted || shape.entersMm < measures.bitMm;
  const surelyMm2 = isFitted ? carveJob(lower.axis, given).areaMm2 : figures.areaMm2;
  const wallAreaMm2 = pointedWalls(measures.bits, bounds) ?? bounds.wallAreaMm2;
  return {
    ...bounds,
    wallAreaMm2,
    onlyAsDrawnMm2: Math.max(0, figures.areaMm2 - bounds.areaMm2 - surelyMm2),
  };
}

/**
 * The walls of a V with a pointed tip are as steep throughout, so that what lies under them, the cut less its floor, tells their area,
 * and both lie within their bounds. `undefined` for other bits.
 */
function pointedWalls(bits: readonly Bit[], bounds: CutFigures): number | undefined {
  const [bit, second] = bits;
  return bit?.kind === 'vee' && bit.tipMm === 0 && bit.tipRadiusMm === 0 && second === undefined
    ? (bounds.areaMm2 + bounds.floorAreaMm2) / Math.sin(radians(bit.angleDeg) / 2)
    : undefined;
}

const KEYS = [
  'areaMm2',
  'volumeMm3',
  'floorAreaMm2',
  'wallAreaMm2',
  'wallLengthMm',
  'maxDepthMm',
  'narrowerMm',
] as const satisfies readonly (keyof CutFigures)[];

function mapFigures(of: (key: keyof CutFigures) => number): CutFigures {
  return Object.fromEntries(KEYS.map((key) => [key, of(key)])) as unknown as CutFigures;
}

function figuresOf(carving: Carving, narrowerMm: number): CutFigures {
  return {
    areaMm2: carving.areaMm2,
    volumeMm3: carving.volumeMm3,
    floorAreaMm2: carving.floorAreaMm2,
    wallAreaMm2: carving.wallAreaMm2,
    wallLengthMm: arcRingsLength(carving.outline),
    maxDepthMm: carving.maxDepthMm,
    narrowerMm,
  };
}

/** The upper end, where no more of the artwork is cut than there is: flattening keeps its area. */
function atMost({ measures, artworkAreaMm2 }: CutToBound, upper: CutFigures): CutFigures {
  const areaMm2 = Math.min(upper.areaMm2, artworkAreaMm2);
  const [bit, second] = measures.bits;
  // one flat bit cuts to one depth throughout
  const isPrism = bit?.kind === 'flat' && second === undefined;
  return isPrism ? { ...upper, areaMm2, volumeMm3: areaMm2 * upper.maxDepthMm } : { ...upper, areaMm2 };
}

function figuresAt(axis: MedialAxis, job: CutJob): CutFigures {
  const { entersMm } = cutShape(job.bits, job.depthMm);
  // no stroke is narrower than nothing
  const narrowerMm = entersMm > 0 ? strokeWidths(axis).lengthNarrowerThan(entersMm) : 0;
  return figuresOf(carveJob(axis, job), narrowerMm);
}

/** A cut with its bits fitted to an artwork, whose axis is told too. */
interface FittedCut {
  readonly axis: MedialAxis;
  readonly figures: CutFigures;
  readonly entersMm: number;
  readonly isFitted: boolean;
}

/** The figures of a region whose strokes are narrower than the artwork's by the flattening, where bits enter as they do there. */
function fittedCut(region: CleanRegion, job: CutJob): FittedCut {
  const axis = medialAxis(region);
  const { bits, tooNarrow } = bitsThatFit(axis, job);
  const entered = tooNarrow.length === 0 ? axis : medialAxis(enteredRegion(region, tooNarrow));
  const { entersMm } = cutShape(bits, job.depthMm);
  const isFitted = entersMm < cutShape(job.bits, job.depthMm).entersMm;
  return { axis, figures: figuresAt(entered, { ...job, bits }), entersMm, isFitted };
}

/**
 * What a bit taken as narrower changes besides letting it in. What a bit leaves in corners and tips grows with the square of its width, and the
 * wall that it spares there is four times that over the width. A round end does not reach the same width at every height.
 */
function narrowerBit({ measures, artworkAreaMm2 }: CutToBound, entersMm: number): CutFigures {
  const { bits, bitMm, carving, cutArea, standing, maxDepth, wallLength } = measures;
  if (!(entersMm < bitMm)) {
    return mapFigures(() => 0);
  }
  const lost = standing
    .filter(({ kind }) => kind === 'stroke' || kind === 'part')
    .reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const ratio = bitMm / entersMm;
  const corners = Math.max(0, artworkAreaMm2 - cutArea - lost) * ratio * ratio;
  const areaMm2 = corners * (ratio * ratio - 1);
  const lengthMm = ((4 * corners) / bitMm) * (ratio - 1);
  const isFlat = bits.every(({ kind }) => kind === 'flat');
  const besideMm2 = isFlat ? 0 : (wallLength * (bitMm - entersMm)) / 2;
  return {
    areaMm2,
    volumeMm3: (areaMm2 + besideMm2) * maxDepth,
    floorAreaMm2: areaMm2 + besideMm2,
    wallAreaMm2: lengthMm * maxDepth + (isFlat ? 0 : carving.wallAreaMm2 * (ratio - 1)),
    wallLengthMm: lengthMm,
    maxDepthMm: 0,
    narrowerMm: 0,
  };
}

/** Errors of the figures of the flattened artwork itself, and how much longer curves may be than their chords. */
function ownErrors({ measures, curvesMm, pointsMm }: CutToBound): CutFigures {
  const { entered, carving, maxDepth } = measures;
  const outlineMm = perimeter(entered);
  // of no shapes there is no tolerance of resolving
  const areaMm2 = outlineMm > 0 ? pointsMm * outlineMm : 0;
  const lengthMm = longerCurves(entered, curvesMm);
  return {
    areaMm2: carving.areaErrorMm2 + areaMm2,
    volumeMm3: carving.volumeErrorMm3 + areaMm2 * maxDepth,
    floorAreaMm2: carving.floorAreaErrorMm2 + areaMm2,
    wallAreaMm2: carving.wallAreaErrorMm2 + lengthMm * maxDepth,
    wallLengthMm: lengthMm,
    maxDepthMm: 0,
    narrowerMm: lengthMm > 0 ? lengthMm + tipsTaken(measures, curvesMm) : 0,
  };
}

/**
 * Where a stroke begins in a round tip is told by the chords of the tip, by two of them or less (measured). They are as long as an arc that is as wide
 * as the smallest bit lets them be, in each narrow stretch and in one that may have been missed.
 */
function tipsTaken({ shape: { entersMm }, narrowerThan }: CutMeasures, curvesMm: number): number {
  const chordMm = Math.sqrt(4 * entersMm * curvesMm);
  return entersMm > 0 ? 2 * chordMm * (1 + narrowerThan(entersMm).length) : 0;
}

/** Chords with a turn φ between them differ from their curve by about φ²/24 of their length, one way or the other: twice that. */
const LONGER_SHARE = 1 / 12;

function longerCurves(rings: Rings, toleranceMm: number): number {
  const { coords, ringEnds } = rings;
  const isCurved = curvedEdges(rings, toleranceMm);
  let sum = 0;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = ringEnds[k] ?? from;
    const edge = (i: number): readonly [number, number] => {
      const j = i + 1 === to ? from : i + 1;
      const at = (n: number): number => coords[n] ?? 0;
      return [at(2 * j) - at(2 * i), at(2 * j + 1) - at(2 * i + 1)];
    };
    for (let i = from; i < to; i++) {
      pollStep();
      const h = i === from ? to - 1 : i - 1;
      if (isCurved[h] === 1 && isCurved[i] === 1) {
        const [ax, ay] = edge(h);
        const [bx, by] = edge(i);
        const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
        sum += (LONGER_SHARE * turn * turn * (Math.hypot(ax, ay) + Math.hypot(bx, by))) / 2;
      }
    }
  }
  return sum;
}

/** The bounds of the cut of a job for a drawing. */
export function boundsOfMeasured(measured: Measured): CutBounds {
  const { axis, entered, carving, standing, job, drawing, resolved, stages } = measured;
  const { bits, depthMm } = job;
  const [curvesMm, pointsMm] = [drawing.toleranceMm, resolved.toleranceMm];
  return stages.of('bounds', [axis, entered, carving, standing], { bits, depthMm, curvesMm, pointsMm }, () =>
    cutBounds({
      measures: measured,
      given: job,
      artworkAreaMm2: measured.artworkArea,
      curvesMm,
      pointsMm,
    }),
  );
}
