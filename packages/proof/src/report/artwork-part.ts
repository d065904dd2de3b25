import { holeCount, outerRingCount, resolveRegions } from '@pourproof/arrangement';
import { type Drawing, signedArea } from '@pourproof/plane';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import type { Measured } from '../measured.ts';
import type { Report } from './report.ts';

/**
 * The artwork as it was read.
 *
 * @param name file name, or the text that was set
 */
export function artworkPart(
  measured: Pick<Measured, 'drawing' | 'artwork' | 'artworkArea' | 'artworkPerimeter'>,
  name: string,
): Report['artwork'] {
  const { drawing, artwork } = measured;
  return {
    file: name,
    format: drawing.format,
    scaleSource: drawing.scaleSource,
    areaMm2: measured.artworkArea,
    perimeterMm: measured.artworkPerimeter,
    boundsMm: boundsOrZero(artwork),
    regions: outerRingCount(artwork),
    holes: holeCount(artwork),
    layers: layersOf(drawing),
    notices: drawing.notices.map((notice) => ({
      code: notice.code,
      text: notice.text,
      severity: notice.severity,
      ...(notice.effect === undefined ? {} : { effect: notice.effect }),
      where: notice.where.map((place) => ({ ...place })),
    })),
  };
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
