import { isHollow, isThrough, type Obstacle } from '@pourproof/job';
import type { Bounds, Rings } from '@pourproof/plane';
import { boundsOrZero } from './board/bounds-or-zero.ts';
import { obstacleOutline } from './board/obstacle-outline.ts';
import { type DepthContour, depthContours } from './cut/depth-contours.ts';
import { type PicturedLevelling, picturedLevelling } from './levelling/pictured-levelling.ts';
import type { Measured } from './measured.ts';
import type { Finding } from './report/finding-schema.ts';

/** Shapes in mm to draw a vetted drawing with, all in the frame of the report; plain data throughout. */
export interface Picture {
  readonly artwork: Rings;
  /** What the bits reach, arcs flattened. */
  readonly cut: Rings;
  /** The cut of each colour, in the order in which colours are first drawn, round by round. */
  readonly colours: readonly PicturedColour[];
  /** Pieces that no bit reaches. */
  readonly standing: readonly Rings[];
  /** Strokes narrower than the smallest bit, along their middle. */
  readonly narrow: readonly { readonly path: Float64Array; readonly widths: Float64Array }[];
  /** Wall stretches at high bleed risk, open lines. */
  readonly bleedWalls: readonly Float64Array[];
  /**
   * Face that colour may reach beside the cut, by block: at the low end of the band, at its median, at its
   * high end. Each is made when it is first read.
   */
  readonly bleed: readonly { readonly low: Rings; readonly median: Rings; readonly high: Rings }[];
  /** Blocks of the board; one without an outline where no board is described. */
  readonly blocks: readonly PicturedBlock[];
  /** Holes, grooves and clamps of the board. */
  readonly obstacles: readonly PicturedObstacle[];
  /** What levelling leaves of strokes and areas, and what is never cut. */
  readonly levelling: PicturedLevelling;
  /** Lines of equal depth where a V shapes the walls. */
  readonly depths: readonly DepthContour[];
  readonly boundsMm: Bounds;
}

/** What is seen of a colour. */
export interface PicturedColour {
  /** As in `pour.colours` of the report. */
  readonly name: string;
  readonly cut: Rings;
}

/** A block as it is drawn. */
export interface PicturedBlock {
  /** `null` where the wood is everywhere. */
  readonly outline: Rings | null;
  /** Name of its wood. */
  readonly species: string;
  /** CIE L*a*b* of the wood's sanded face; `null` where it is not known. */
  readonly lab: readonly [lightness: number, a: number, b: number] | null;
  /** Fibres on the face, counter-clockwise from the artwork's x axis. */
  readonly grainDeg: number;
  /** Fibres out of the face; 90 is end grain up. */
  readonly diveDeg: number;
}

/** A hole, a groove or a clamp as it is drawn. */
export interface PicturedObstacle {
  readonly kind: Obstacle['kind'];
  readonly outline: Rings;
  /** Whether it is a hole or groove in the back that does not open the face. */
  readonly isInBack: boolean;
}

function contoursOf({ carving, maxDepth, job, stages }: Measured): readonly DepthContour[] {
  const { units, toleranceMm } = job;
  return stages.of('contours', [carving], { maxDepth, units, toleranceMm }, () =>
    depthContours(carving, maxDepth, job),
  );
}

/** The shapes of a measured drawing and of its findings. */
export function pictureOf(measured: Measured, findings: readonly Finding[]): Picture {
  const bleeding = findings.find((finding) => finding.code === 'high-bleed-wall');
  return {
    artwork: measured.artwork,
    cut: measured.cut,
    colours: measured.colourCuts.map(({ colour, cut }) => ({ name: colour.name, cut })),
    standing: measured.standing.map((piece) => piece.outline),
    narrow: measured.narrowerThan(measured.bitMm).map(({ path, widths }) => ({ path, widths })),
    bleedWalls: (bleeding?.where ?? []).flatMap((place) =>
      place.outline.map((line) => Float64Array.from(line.flat())),
    ),
    bleed: measured.blocks.map(({ bleed }) => bleed),
    blocks: measured.board.blocks.map(({ region, row, grainDeg, diveDeg }) => ({
      outline: region,
      species: row.name,
      lab: row.lab?.value ?? null,
      grainDeg,
      diveDeg,
    })),
    obstacles: measured.job.obstacles.map((each) => ({
      kind: each.kind,
      outline: obstacleOutline(each, measured.board),
      isInBack: isHollow(each) && !isThrough(each, measured.job.thicknessMm ?? 0),
    })),
    levelling: picturedLevelling(measured.levellingMap, measured.cutRegion, measured.artwork),
    depths: measured.shape.includedRad === null ? [] : contoursOf(measured),
    boundsMm: boundsOrZero(measured.artwork),
  };
}
