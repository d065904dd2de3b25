import { readFile } from 'node:fs/promises';
import { resolveRegions } from '@pourproof/arrangement';
import { openFont, readLettering } from '@pourproof/artwork';

/** Faces of the lettering that is measured: sans, slab, didone, script and text serif. */
const FACES = ['josefin-sans-400', 'arvo-400', 'bodoni-moda-400', 'dancing-script-400', 'lora-400'];
const NAME = 'Welcome to Willow Brook Farm';
const SET = Array.from({ length: 94 }, (_, k) => String.fromCharCode(33 + k)).join('');

/** Lettering of one text in all faces, cap heights and flattening tolerances, as drawn and resolved: `{ name, drawing, region }`. */
export async function lettering({
  texts = ['name', 'set'],
  capHeights = [8, 15, 40],
  tolerances = [0.01, 0.002],
} = {}) {
  const cases = [];
  for (const face of FACES) {
    const bytes = await readFile(new URL(`../../../fixtures/fonts/${face}.ttf`, import.meta.url));
    const font = await openFont(new Uint8Array(bytes));
    for (const text of texts) {
      for (const capHeightMm of capHeights) {
        for (const toleranceMm of tolerances) {
          const drawing = await readLettering(text === 'name' ? NAME : SET, {
            font,
            capHeightMm,
            toleranceMm,
          });
          const { region } = resolveRegions(drawing.shapes.map((shape) => shape.region));
          cases.push({
            name: `${face} ${text} ${capHeightMm} mm ${toleranceMm * 1000} um`,
            toleranceMm,
            drawing,
            region,
          });
        }
      }
    }
  }
  return cases;
}
