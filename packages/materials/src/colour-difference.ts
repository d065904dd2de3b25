import { radians } from '@pourproof/plane';

/** CIE L*a*b* under D65: lightness 0 to 100, a* red over green, b* yellow over blue. */
export type Lab = readonly [lightness: number, a: number, b: number];

const POWER_25_7 = 25 ** 7;

/**
 * Colour difference ΔE00 (CIEDE2000, all weighting factors 1) of two colours: about 1 to 2 is just
 * noticeable.
 *
 * The formula is not continuous where hues differ by 180°.
 * @see sharma-2005
 */
export function ciede2000(first: Lab, second: Lab): number {
  const meanChroma = (Math.hypot(first[1], first[2]) + Math.hypot(second[1], second[2])) / 2;
  const stretch = 1.5 - 0.5 * Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + POWER_25_7));
  const a1 = first[1] * stretch;
  const a2 = second[1] * stretch;
  const c1 = Math.hypot(a1, first[2]);
  const c2 = Math.hypot(a2, second[2]);
  const h1 = hue(a1, first[2]);
  const h2 = hue(a2, second[2]);
  const grey = c1 * c2 === 0;

  const deltaHue = grey ? 0 : shortestTurn(h2 - h1);
  const dL = second[0] - first[0];
  const dC = c2 - c1;
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin(deltaHue / 2);

  const light = (first[0] + second[0]) / 2;
  const chroma = (c1 + c2) / 2;
  const meanHue = grey ? h1 + h2 : middleHue(h1, h2);
  const scale = scales(light, chroma, meanHue);

  const l = dL / scale.lightness;
  const c = dC / scale.chroma;
  const h = dH / scale.hue;
  return Math.sqrt(l * l + c * c + h * h + scale.rotation * c * h);
}

/** Hue angle in [0, 2π); 0 for grey. */
function hue(a: number, b: number): number {
  const angle = Math.atan2(b, a);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

function shortestTurn(turn: number): number {
  if (turn > Math.PI) {
    return turn - 2 * Math.PI;
  }
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}

function middleHue(h1: number, h2: number): number {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= Math.PI) {
    return sum / 2;
  }
  return sum < 2 * Math.PI ? sum / 2 + Math.PI : sum / 2 - Math.PI;
}

interface Scales {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
  readonly rotation: number;
}

function scales(light: number, chroma: number, meanHue: number): Scales {
  const fromMiddle = (light - 50) ** 2;
  const hueWeight =
    1 -
    0.17 * Math.cos(meanHue - radians(30)) +
    0.24 * Math.cos(2 * meanHue) +
    0.32 * Math.cos(3 * meanHue + radians(6)) -
    0.2 * Math.cos(4 * meanHue - radians(63));
  // the blue region around 275° is turned, most where chroma is high
  const blue = radians(30) * Math.exp(-(((meanHue - radians(275)) / radians(25)) ** 2));
  const turned = 2 * Math.sqrt(chroma ** 7 / (chroma ** 7 + POWER_25_7));
  return {
    lightness: 1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle),
    chroma: 1 + 0.045 * chroma,
    hue: 1 + 0.015 * chroma * hueWeight,
    rotation: -Math.sin(2 * blue) * turned,
  };
}
