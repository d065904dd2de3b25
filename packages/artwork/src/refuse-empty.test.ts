import { expect, test } from 'vitest';
import { ArtworkError } from './artwork-error.ts';
import { readArtwork } from './read.ts';
import { refuseEmpty } from './refuse-empty.ts';

const svg = (content: string) =>
  readArtwork(
    new TextEncoder().encode(
      `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="30mm" viewBox="0 0 50 30">${content}</svg>`,
    ),
    'sign.svg',
    { toleranceMm: 0.005 },
  );

test('a drawing that holds a picture only is refused with what the reader noticed', () => {
  const drawing = svg('<image width="50" height="30" href="data:image/png;base64,AAAA"/>');
  expect(() => refuseEmpty(drawing, 'sign.svg')).toThrow(ArtworkError);
  expect(() => refuseEmpty(drawing, 'sign.svg')).toThrow(
    /^sign\.svg has nothing painted in it, so there is nothing to cut\. 1 picture is left out/u,
  );
});

test('a drawing with a shape beside it is taken', () => {
  expect(() => refuseEmpty(svg('<rect width="5" height="5"/>'), 'sign.svg')).not.toThrow();
});
