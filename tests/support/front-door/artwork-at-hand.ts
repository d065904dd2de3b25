import { type Held, held, made } from './trial.ts';

const svg = (size: string, content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 60 60">${content}</svg>`;
const rectangles =
  '<path d="M5 5H45V11H5Z"/><path fill="red" d="M5 20H25V21.2H5Z"/><path d="M30 20H50V21.2H30Z"/>';
const square = (unit: number): string =>
  `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n${unit}\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n` +
  '0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n10\n0\n20\n0\n10\n20\n20\n0\n10\n20\n20\n20\n10\n0\n20\n20\n0\nENDSEC\n0\nEOF\n';

/** A bar of 40 × 6 mm and two of 20 × 1.2 mm, too narrow for a 1/8 in bit. */
export const BARS: Held = made('bars.svg', svg('60mm', rectangles));
/** A dark square half under a white one. */
export const COVERED: Held = made(
  'covered.svg',
  svg('60mm', '<path d="M5 5H45V45H5Z"/><path fill="white" d="M25 5H45V45H25Z"/>'),
);
/** Live text beside a bar. */
export const WORDS: Held = made('words.svg', svg('60mm', '<text x="4" y="30" font-size="20">Ok</text>'));
/** A drawing with nothing in it. */
export const NOTHING: Held = made('nothing.svg', svg('60mm', ''));
/** A square of 20 units, in millimetres and without a unit. */
export const SQUARE_MM: Held = made('square.dxf', square(4));
export const SQUARE_BARE: Held = made('bare.dxf', square(0));

export const LORA: Held = held('fonts/lora-400.ttf');
export const VARIABLE: Held = held('fonts/josefin-sans-latin-variable.woff2');
export const JOINED: Held = held('fonts/dancing-script-400.ttf');
export const ARABIC: Held = held('fonts/amiri-arabic-400.woff2');

/** Bytes that are no file of any kind. */
export const JUNK: Uint8Array = Uint8Array.from({ length: 4096 }, (_, k) => (k * 197 + (k >> 3) * 31) & 0xff);

const TURNS = Array.from({ length: 12 }, (_, k) => 30 * k);

/** Twelve equal strokes, a petal each, turned about one middle: what is measured on them is equal but for rounding. */
export const RING: Held = made(
  'ring.svg',
  `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="-60 -60 120 120">
  <defs><path id="s" d="M20 -0.7h18v1.4h-18z"/><path id="p" d="M42 0q5 -4 10 0q-5 4 -10 0z"/></defs>
  ${TURNS.map((deg) => `<use href="#s" transform="rotate(${deg})"/><use href="#p" transform="rotate(${deg + 7})"/>`).join('')}</svg>`,
);

/** Stars and a ring of equal islands of wood in a disc. */
export const ROSETTE: Held = made(
  'rosette.svg',
  `<svg xmlns="http://www.w3.org/2000/svg" width="130mm" height="130mm" viewBox="-65 -65 130 130">
  <path fill-rule="evenodd" d="M-50 0a50 50 0 1 0 100 0a50 50 0 1 0 -100 0z ${TURNS.map((deg) => {
    const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
    const at = (x: number, y: number): string => `${x * c - y * s} ${x * s + y * c}`;
    return `M${at(30, -0.5)}L${at(42, -0.5)}L${at(42, 0.5)}L${at(30, 0.5)}Z`;
  }).join(' ')}"/>
  ${[0, 72, 144, 216, 288].map((deg) => `<path transform="rotate(${deg}) translate(57 0)" d="${Array.from({ length: 10 }, (_, k) => `${k === 0 ? 'M' : 'L'}${(k % 2 === 0 ? 6 : 2.5) * Math.cos((k * Math.PI) / 5)} ${(k % 2 === 0 ? 6 : 2.5) * Math.sin((k * Math.PI) / 5)}`).join('')}Z"/>`).join('')}</svg>`,
);
