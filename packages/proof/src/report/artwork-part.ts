import { holeCount, outerRingCount, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { type Drawing, type Notice, signedArea } from '@pourproof/plane';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import { maySeeToNotice } from '../fixes/may-see-to-notice.ts';
import type { Measured } from '../measured.ts';
import type { Report } from './report.ts';

/**
 * The artwork as it was read, its texts in the unit of the job.
 *
 * @param name file name, or the text that was set
 */
export function artworkPart(
  measured: Pick<Measured, 'drawing' | 'artwork' | 'artworkArea' | 'artworkPerimeter'>,
  name: string,
  job: Job,
): Report['artwork'] {
  const { drawing, artwork } = measured;
  return {
    file: name,
    format: drawing.format,
    scaleSource: drawing.scaleSource[job.units],
    areaMm2: measured.artworkArea,
    perimeterMm: measured.artworkPerimeter,
    boundsMm: boundsOrZero(artwork),
    regions: outerRingCount(artwork),
    holes: holeCount(artwork),
    layers: layersOf(drawing, measured.artworkArea),
    notices: drawing.notices.map((notice) => toldNotice(notice, job)),
  };
}

function toldNotice(notice: Notice, job: Job): Report['artwork']['notices'][number] {
  const { code, params, text, severity, effect, where } = notice;
  return {
    code,
    ...(params === undefined ? {} : { params: copied(params) }),
    text: text[job.units],
    severity,
    ...(effect === undefined ? {} : { effect }),
    ...(maySeeToNotice(notice) ? { seenTo: job.seenTo.includes(code) } : {}),
    where: where.map((place) => ({ ...place })),
  };
}

function copied(
  params: NonNullable<Notice['params']>,
): Record<string, string | number | (string | number)[]> {
  return Object.fromEntries(
    Object.entries(params).map(([name, value]) => [name, typeof value === 'object' ? [...value] : value]),
  );
}

type Layers = Report['artwork']['layers'];

/** Layers of the shapes of a drawing, kept as long as these are: each takes resolving them. */
const known = new WeakMap<Drawing['shapes'], Layers>();

function layersOf({ shapes }: Drawing, artworkArea: number): Layers {
  const layers = known.get(shapes) ?? resolvedLayers(shapes, artworkArea);
  known.set(shapes, layers);
  return layers.map((layer) => ({ ...layer }));
}

function resolvedLayers(all: Drawing['shapes'], artworkArea: number): Layers {
  const groups = new Map<string, Drawing['shapes'][number][]>();
  for (const shape of all) {
    const key = JSON.stringify([shape.layer, shape.colour]);
    const group = groups.get(key);
    if (group === undefined) {
      groups.set(key, [shape]);
    } else {
      group.push(shape);
    }
  }
  return [...groups.values()].map((shapes) => ({
    name: shapes[0]?.layer ?? '',
    colour: shapes[0]?.colour ?? '',
    areaMm2:
      groups.size === 1 ? artworkArea : signedArea(resolveRegions(shapes.map(({ region }) => region)).region),
  }));
}
