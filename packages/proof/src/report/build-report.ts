import { defaultFields } from '@pourproof/materials';
import { bleedReport, endGrainReport } from '../board/block-report.ts';
import { boundsOfMeasured } from '../cut/cut-bounds.ts';
import type { Measured } from '../measured.ts';
import { withVolumeError } from '../pour/pour-plan.ts';
import { pourReport } from '../pour/pour-report.ts';
import { verdictOf } from '../verdict.ts';
import { artworkPart } from './artwork-part.ts';
import { boardPart } from './board-part.ts';
import { cutPart } from './cut-part.ts';
import type { Finding } from './finding-schema.ts';
import { levellingPart, sealPart } from './levelling-part.ts';
import type { Report } from './report.ts';
import { roundedReport } from './rounded-report.ts';
import { sliversPart, strokesPart } from './strokes-part.ts';

/**
 * The report on a measured drawing.
 *
 * @param name file name, or the text that was set
 */
export function buildReport(measured: Measured, name: string, findings: readonly Finding[]): Report {
  const { job, blocks } = measured;
  const artwork = artworkPart(measured, name, job);
  const bounds = boundsOfMeasured(measured);
  const [left, top] = artwork.boundsMm;
  const board = boardPart([measured]);
  return roundedReport({
    schema: 'pourproof/report@2',
    frame: 'artwork',
    rulerOffsetMm: [left, top],
    artwork,
    cut: cutPart(measured, bounds),
    strokes: strokesPart(measured),
    slivers: sliversPart(measured),
    ...(board === undefined ? {} : { board }),
    endGrain: endGrainReport(blocks, job),
    bleed: bleedReport(blocks, { job, colours: measured.colours.all, stages: measured.stages }),
    seal: sealPart(measured),
    levelling: levellingPart(measured),
    pour: pourReport(withVolumeError(measured.pour, bounds.volumeMm3), measured.schedule(), job),
    findings: [...findings],
    defaults: [...job.defaults],
    ...(job.shop === null ? {} : { fromShop: [...job.fromShop] }),
    materialDefaults: Object.entries(job.rows).flatMap(([row, values]) =>
      defaultFields(values).map((field) => `${row}.${field}`),
    ),
    verdict: verdictOf(findings, artwork.notices, measured.cutArea),
  });
}
