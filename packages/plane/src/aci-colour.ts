/** Colours 1 to 9 of the colour index; 7 is drawn black, as on paper. */
const NAMED: readonly string[] = [
  '#000000',
  '#ff0000',
  '#ffff00',
  '#00ff00',
  '#00ffff',
  '#0000ff',
  '#ff00ff',
  '#000000',
  '#808080',
  '#c0c0c0',
];

/** Brightness of the five steps of each hue. */
const STEPS: readonly number[] = [1, 0.8, 0.6, 0.5, 0.3];
/**
 * `#rrggbb` of a colour index of DXF, 1 to 255: 10 to 249 are 24 hues of 15°, each in five steps of
 * brightness, full and half saturated, and 250 to 255 are even greys (from memory; compared with an
 * independent table in the tests). Others are black.
 */
export function aciColour(index: number): string {
  if (!(index >= 1 && index <= 255)) {
    return '#000000';
  }
  if (index < 10) {
    return NAMED[index] as string;
  }
  if (index >= 250) {
    const grey = 51 + Math.floor(((index - 250) * 204) / 5);
    return rgbHex(grey, grey, grey);
  }
  const hue = Math.floor((index - 10) / 10) * 15;
  const value = Math.floor(255 * (STEPS[(index % 10) >> 1] as number));
  const floor = index % 2 === 1 ? 0.5 : 0;
  const channel = (shift: number): number => {
    // distance of the hue from the channel's own, 0 to 180°
    const away = Math.abs(((hue - shift + 540) % 360) - 180);
    const full = Math.min(1, Math.max(0, (120 - away) / 60));
    return Math.floor(value * (floor + (1 - floor) * full));
  };
  return rgbHex(channel(0), channel(120), channel(240));
}

/** `#rrggbb` of a true colour, 0xRRGGBB. */
export function trueColour(rgb: number): string {
  return rgbHex((rgb >> 16) & 255, (rgb >> 8) & 255, rgb & 255);
}

function rgbHex(r: number, g: number, b: number): string {
  return `#${[r, g, b].map((c) => c.toString(16).padStart(2, '0')).join('')}`;
}
