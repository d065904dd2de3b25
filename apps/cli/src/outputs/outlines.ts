import { artworkFile, type OutlinedPart } from 'pourproof';
import type { Io } from '../io.ts';
import { openSource } from '../open-source.ts';
import type { OutlineFlag, Request } from '../request.ts';

const PARTS: Readonly<Record<OutlineFlag, OutlinedPart>> = {
  artwork: 'drawn',
  'cut-outline': 'cut',
  'left-over': 'left',
};

/** A file of outlines of the one artwork that is vetted, and a note of how it was made. */
export async function outlinesContent(
  { flag, path }: { readonly flag: OutlineFlag; readonly path: string },
  { sources, job, options }: Request,
  io: Io,
): Promise<{ readonly text: string; readonly note: string }> {
  const [first] = sources;
  if (first === undefined) {
    throw new RangeError('no source');
  }
  const format = path.toLowerCase().endsWith('.dxf') ? 'dxf' : 'svg';
  const { text, nodes, sourceNodes, pointsRead, offMm } = await artworkFile(
    await openSource(first, io),
    job,
    {
      ...options,
      format,
      part: PARTS[flag],
    },
  );
  return {
    text,
    note: `: ${nodes} nodes for ${sourceNodes === null ? `${pointsRead} points read` : `${sourceNodes} of the source`}, outlines within ${(1000 * offMm).toFixed(1)} µm`,
  };
}
