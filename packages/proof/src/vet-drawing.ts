import { holeCount, outerRingCount, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { type Bit, bitText } from '@pourproof/job';
import { defaultFields, levelMethods, sealerMassG } from '@pourproof/materials';
import {
  type Bounds,
  type Drawing,
  invariant,
  type LengthUnit,
  type Rings,
  radians,
  ringsBounds,
  signedArea,
} from '@pourproof/plane';
import { bleedReport, endGrainReport } from './board/block-report.ts';
import type { FaceHeights } from './board/face-heights.ts';
import { veeWidthErrors } from './board/vee-width-errors.ts';
import type { Advice } from './checks/check.ts';
import { checks } from './checks/checks.ts';
import type { BitEffort } from './cut/bit-efforts.ts';
import { type DepthContour, depthContours } from './cut/depth-contours.ts';
import { refuseShortBit } from './cut/refuse-short-bit.ts';
import type { LevellingMap } from './levelling/levelling-map.ts';
import { type Measured, measure } from './measured.ts';
import { pourReport } from './pour/pour-report.ts';
import type { Finding, Report } from './report/report.ts';
import { verdictOf } from './verdict.ts';

/** Edges of the stroke-width classes of the report, in mm (our choice: fine where bits are small). */
const WIDTH_CLASSES_MM: readonly number[] = [
  0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 25, 50, 100, 1000,
];

/** What a proof hands over: the report, and the shapes to draw it with; plain data throughout. */
export interface Proof {
  readonly report: Report;
  readonly picture: Picture;
}

/** Shapes in mm for a picture of the proof. */
export interface Picture {
  readonly artwork: Rings;
  /** What the bits reach, arcs flattened. */
  readonly cut: Rings;
  /** Pieces that no bit reaches. */
  readonly standing: readonly Rings[];
  /** Strokes narrower than the smallest bit, along their middle. */
  readonly narrow: readonly { readonly path: Float64Array; readonly widths: Float64Array }[];
  /** Wall stretches at high bleed risk, open lines. */
  readonly bleedWalls: readonly Float64Array[];
  /** Face that colour may reach beside the cut, by block: at the low end of the band, at its median, at its high end. */
  readonly bleed: readonly { readonly low: Rings; readonly median: Rings; readonly high: Rings }[];
  /** Blocks of the board, in the artwork's frame; one without an outline where no board is described. */
  readonly blocks: readonly PicturedBlock[];
  /** Every stroke that is cut, along its middle, by how much levelling it stands. */
  readonly levelling: LevellingMap;
  /** Lines of equal depth where a V shapes the walls. */
  readonly depths: readonly DepthContour[];
  readonly boundsMm: Bounds;
}

/** A block as it is drawn. */
export interface PicturedBlock {
  /** `null` where the wood is everywhere. */
  readonly outline: Rings | null;
  /** Name of its wood. */
  readonly species: string;
  /** Fibres on the face, counter-clockwise from the artwork's x axis. */
  readonly grainDeg: number;
  /** Fibres out of the face; 90 is end grain up. */
  readonly diveDeg: number;
}

/**
 * Vets a drawing for a job: measures it, runs every check and gives the verdict.
 *
 * @param name file name, or the text that was set, for the report
 * @throws {JobError} when a bit is too short for the depth and no later bit makes up for it
 */
export function vetDrawing(drawing: Drawing, name: string, job: Job): Proof {
  refuseShortBit(job);
  const measured = measure(drawing, job);
  const findings = checks.flatMap((check) => check.run(measured) ?? []);
  return {
    report: reportOf(measured, name, findings),
    picture: pictureOf(measured, findings),
  };
}

/** The words for a finding, with its title. */
export function adviceFor(finding: Finding, unit: LengthUnit): Advice & { readonly title: string } {
  const check = checks.find((each) => each.code === finding.code);
  if (check === undefined) {
    throw new RangeError(`no check has the code "${finding.code}"`);
  }
  return { title: check.title, ...check.advise(finding, unit) };
}

function reportOf(measured: Measured, name: string, findings: readonly Finding[]): Report {
  const { job, drawing } = measured;
  return {
    schema: 'pourproof/report@1',
    artwork: {
      file: name,
      format: drawing.format,
      scaleSource: drawing.scaleSource,
      areaMm2: measured.artworkArea,
      perimeterMm: measured.artworkPerimeter,
      boundsMm: boundsOrZero(measured.artwork),
      regions: outerRingCount(measured.artwork),
      holes: holeCount(measured.artwork),
      layers: layersOf(drawing),
      notices: drawing.notices.map((notice) => ({
        code: notice.code,
        text: notice.text,
        severity: notice.severity,
        where: notice.where.map((place) => ({ ...place })),
      })),
    },
    cut: cutOf(measured),
    strokes: strokesOf(measured),
    slivers: sliversOf(measured),
    endGrain: endGrainReport(measured.blocks, job),
    bleed: bleedReport(measured.blocks, job),
    seal: sealOf(measured),
    levelling: levellingOf(measured),
    pour: pourReport(measured.pour, measured.schedule, job),
    findings: [...findings],
    defaults: [...job.defaults],
    materialDefaults: Object.entries(job.rows).flatMap(([row, values]) =>
      defaultFields(values).map((field) => `${row}.${field}`),
    ),
    verdict: verdictOf(findings, drawing.notices, measured.cutArea),
  };
}

function boundsOrZero(rings: Rings): Bounds {
  return rings.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(rings);
}

function layersOf(drawing: Drawing): Report['artwork']['layers'] {
  const groups = new Map<string, Drawing['shapes'][number][]>();
  for (const shape of drawing.shapes) {
    const key = JSON.stringify([shape.layer, shape.colour]);
    groups.set(key, [...(groups.get(key) ?? []), shape]);
  }
  return [...groups.values()].map((shapes) => ({
    name: shapes[0]?.layer ?? '',
    colour: shapes[0]?.colour ?? '',
    areaMm2: signedArea(resolveRegions(shapes.map((shape) => shape.region)).region),
  }));
}

function cutOf(measured: Measured): Report['cut'] {
  const { job, carving, cutArea, efforts, wallLength, artworkArea, artworkPerimeter, maxDepth } = measured;
  // every point of the flattened outline lies within the tolerance of the true one, and resolving rarely is coarser than that
  const areaError =
    artworkPerimeter > 0 ? Math.max(job.toleranceMm, measured.resolved.toleranceMm) * artworkPerimeter : 0;
  return {
    areaMm2: cutArea,
    leftStandingMm2: leftStandingArea(artworkArea, cutArea),
    volumeMm3: carving.volumeMm3,
    floorAreaMm2: carving.floorAreaMm2,
    wallAreaMm2: carving.wallAreaMm2,
    wallLengthMm: wallLength,
    maxDepthMm: maxDepth,
    ...(carving.scallopedFloorMm2 > 0 ? { ridgedFloorMm2: carving.scallopedFloorMm2 } : {}),
    errorBound: { areaMm2: areaError, volumeMm3: carving.volumeErrorMm3 + areaError * maxDepth },
    perCutter: carving.perCutter.map((added, k) => ({
      cutter: bitText(job.bits[k] as Bit, job.units),
      depthMm: added.depthMm,
      areaMm2: Math.max(0, added.areaMm2),
      volumeMm3: Math.max(0, added.volumeMm3),
      floorMm2: added.floorMm2,
      places: added.places.length,
      outlineMm: Math.max(0, added.lengthMm),
      ...effortAt(measured, k),
    })),
    time: {
      minutes: efforts.bits.reduce((sum, { minutes }) => sum + minutes, 0),
      ...(efforts.leftOutMm2 > 0 ? { floorLeftOutMm2: efforts.leftOutMm2 } : {}),
      assumptions: efforts.assumptions.map((each) => ({ ...each })),
    },
  };
}

/** What rounding leaves of two areas that are the same is nothing. */
function leftStandingArea(artworkArea: number, cutArea: number): number {
  const left = artworkArea - cutArea;
  return left > 1e-9 * artworkArea ? left : 0;
}

function effortAt({ efforts }: Measured, k: number): BitEffort {
  const effort = efforts.bits[k];
  invariant(effort !== undefined, 'every bit has its effort');
  return effort;
}

function strokesOf(measured: Measured): Report['strokes'] {
  const { strokes, bitMm, shape } = measured;
  const lengths = strokes.histogram(WIDTH_CLASSES_MM);
  return {
    narrowestMm: strokes.narrowestMm,
    narrowestAt: strokes.narrowestMm === null ? null : strokes.narrowestAt,
    // the tip of a V says nothing of how wide a stroke it cuts
    narrowestToBit:
      strokes.narrowestMm === null || bitMm === 0 || shape.includedRad !== null
        ? null
        : strokes.narrowestMm / bitMm,
    lengthMm: strokes.lengthMm,
    lengthNarrowerThanBitMm: strokes.lengthNarrowerThan(bitMm),
    widthHistogram: Array.from(lengths, (lengthMm, k) => ({
      fromMm: WIDTH_CLASSES_MM[k] ?? 0,
      toMm: WIDTH_CLASSES_MM[k + 1] ?? 0,
      lengthMm,
    })).filter((row) => row.lengthMm > 0),
  };
}

function sliversOf({ slivers }: Measured): Report['slivers'] {
  return {
    narrowestMm: slivers.narrowestMm,
    narrowestAt: slivers.narrowestMm === null ? null : slivers.narrowestAt,
    shortGrain: slivers.thin.map(({ path: _, ...sliver }) => sliver),
  };
}

function sealOf({ job, sealFilm, carving, levelling }: Measured): Report['seal'] {
  return {
    filmMm: sealFilm,
    massG: sealerMassG(job.rows.seal, job.coats, carving.floorAreaMm2 + carving.wallAreaMm2),
    ghostBelowMm: Number.isFinite(levelling.ghostBelowMm) ? levelling.ghostBelowMm : null,
    ghostLengthMm: levelling.ghostLengthMm,
  };
}

function levellingOf({ job, levelling, levellingMap, heights }: Measured): Report['levelling'] {
  const method = levelMethods[job.levelBy];
  const { value: usual, low, high } = method.removalMm;
  return {
    planMm: levelling.planMm,
    marginMm: levelling.marginMm,
    leftMm: levelling.leftMm,
    leftWidthMm: levelling.leftWidthMm,
    firstLostAt: levelling.firstLostAt,
    lostLengthMm: levellingMap.lengthMm.lost,
    strokesMm: levellingMap.lengthMm,
    ...(heights === null
      ? {}
      : {
          flatness: {
            rangeMm: heights.highestMm - heights.lowestMm,
            lowestAt: heights.lowestAt,
            highestAt: heights.highestAt,
            residualMm: heights.surface.residualMm,
            ...veeErrors(heights, job),
          },
        }),
    method: method.name,
    methodMm: { low, usual, high },
  };
}

/** Width errors of the V bits of the job, the bluntest told: it errs most. */
function veeErrors(
  heights: FaceHeights,
  job: Job,
): Pick<NonNullable<Report['levelling']['flatness']>, 'veeWidthMm'> {
  const angles = job.bits.flatMap((bit) => (bit.kind === 'vee' ? [radians(bit.angleDeg)] : []));
  if (angles.length === 0) {
    return {};
  }
  const { narrowerByMm, widerByMm } = veeWidthErrors(heights, Math.max(...angles));
  return { veeWidthMm: { narrowerBy: narrowerByMm, widerBy: widerByMm } };
}

function pictureOf(measured: Measured, findings: readonly Finding[]): Picture {
  const bleeding = findings.find((finding) => finding.code === 'high-bleed-wall');
  return {
    artwork: measured.artwork,
    cut: measured.cut,
    standing: measured.standing.map((piece) => piece.outline),
    narrow: measured.narrowerThan(measured.bitMm).map(({ path, widths }) => ({ path, widths })),
    bleedWalls: (bleeding?.where ?? []).flatMap((place) =>
      place.outline.map((line) => Float64Array.from(line.flat())),
    ),
    bleed: measured.blocks.map(({ bleed }) => bleed),
    blocks: measured.board.blocks.map(({ region, row, grainDeg, diveDeg }) => ({
      outline: region,
      species: row.name,
      grainDeg,
      diveDeg,
    })),
    levelling: measured.levellingMap,
    depths:
      measured.shape.includedRad === null
        ? []
        : depthContours(measured.carving, measured.maxDepth, measured.job),
    boundsMm: boundsOrZero(measured.artwork),
  };
}
