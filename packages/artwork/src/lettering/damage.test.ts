import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { ArtworkError } from '../artwork-error.ts';
import { openFont } from './open-font.ts';
import { readLettering } from './read-lettering.ts';
import { readStickLettering } from './read-stick-lettering.ts';

const bytes = (file: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../../../fixtures/fonts/${file}`, import.meta.url)));

/** Runs a reading; a drawing must be finite, and what is refused must be refused as artwork with a remedy. */
async function sound(
  read: () => ReturnType<typeof readLettering> | ReturnType<typeof readStickLettering>,
): Promise<void> {
  try {
    const drawing = await read();
    for (const { region } of drawing.shapes) {
      expect(region.coords.every(Number.isFinite)).toBe(true);
    }
  } catch (error) {
    expect(error).toBeInstanceOf(ArtworkError);
    expect((error as ArtworkError).remedy).not.toBe('');
  }
}

test.each([
  ['arvo-400.ttf', 'Oak fi AV'],
  ['junction-400.otf', 'Oak fi AV'],
  ['josefin-sans-latin-100.woff', 'Oak fi AV'],
  ['josefin-sans-latin-variable.woff2', 'Oak fi AV'],
  ['frank-ruhl-libre-400.ttf', 'שָׁלוֹם'],
])('a damaged %s gives a sound drawing or a clear refusal', async (file, text) => {
  const whole = bytes(file);
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 40 }),
      // damage to the directory and table heads, at the front, is the kind that misleads a reader
      fc.array(fc.tuple(fc.nat(400), fc.nat(255)), { maxLength: 3 }),
      fc.option(fc.nat(whole.length), { freq: 8 }),
      async (spots, headSpots, cut) => {
        const font = whole.slice(0, cut ?? whole.length);
        for (const [at, value] of [...spots, ...headSpots]) {
          if (at < font.length) {
            font[at] = value;
          }
        }
        await sound(() => readLettering(text, { font, widthMm: 80 }));
      },
    ),
    cases(60),
  );
});

test('any text whatever gives a sound drawing or a clear refusal', async () => {
  const font = await openFont(bytes('frank-ruhl-libre-400.ttf'));
  const letters = fc.constantFrom(
    ...'aÉfi של\u05b8\u05c1()[]12.\u0301\u200d\u200f\u202e\u2067\u2069\t\n\ud800\u{1f600}',
  );
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(fc.string({ unit: letters, maxLength: 12 }), fc.string({ unit: 'binary', maxLength: 8 })),
      fc.constantFrom({ capHeightMm: 12 }, { widthMm: 60 }, { capHeightMm: 5, arc: { radiusMm: 80 } }),
      fc.constantFrom(0, -0.4, 2),
      async (text, size, trackingMm) => {
        await sound(() => readLettering(text, { font, ...size, trackingMm }));
        await sound(async () => readStickLettering(text, { ...size, trackingMm, strokeMm: 0.5 }));
      },
    ),
    cases(300),
  );
});
