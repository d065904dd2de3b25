import { readFileSync } from 'node:fs';
import { resolveRegions } from '@pourproof/arrangement';
import { readLettering } from '@pourproof/artwork';
import type { CleanRegion } from '@pourproof/plane';

/** Text in one of the faces of fixtures/fonts, as a region. */
export async function lettered(
  text: string,
  face: string,
  capHeightMm: number,
  toleranceMm: number,
): Promise<CleanRegion> {
  const font = readFileSync(new URL(`../../../fixtures/fonts/${face}`, import.meta.url));
  const { shapes } = await readLettering(text, { font, capHeightMm, toleranceMm });
  return resolveRegions(shapes.map((shape) => shape.region)).region;
}
