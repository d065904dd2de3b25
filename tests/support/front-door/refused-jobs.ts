import { BARS, JUNK, LORA, NOTHING, SQUARE_MM, VARIABLE } from './artwork-at-hand.ts';
import { drawn, lettered, made, type Trial } from './trial.ts';

/** A trial that must be refused, and a word or two that what is said has to hold. */
export type RefusedTrial = readonly [trial: Trial, says: string];

const sized = (side: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>`;
const onBars = (
  rows: readonly (readonly [name: string, job: object, says: string])[],
): readonly RefusedTrial[] => rows.map(([name, job, says]) => [drawn(name, BARS, job), says]);

const SHAPES = onBars([
  ['an unknown key', { wod: 'maple' }, 'wod'],
  ['two unknown keys', { wod: 'maple', toString: 'x' }, 'toString'],
  ['a bare number for a depth', { depth: 3 }, 'depth'],
  ['one bit that is no list', { bit: 'flat:1/8in' }, 'bit'],
  ['no bit at all', { bit: [] }, 'bit'],
  ['bits under the name of their plural', { bits: ['flat:1/8in'] }, 'bits'],
  ['a number in the place of a bit', { bit: [3] }, 'bit'],
  ['a switch in words', { oiled: 'yes' }, 'oiled'],
  ['coats in words', { coats: 'two' }, 'coats'],
  ['nothing in the place of a wood', { wood: null }, 'wood'],
  ['no coupon slots', { coupons: [{ slots: [] }] }, 'coupons'],
]);

const VALUES = onBars([
  ['a depth without its unit', { depth: '3' }, 'Did you mean 3mm or 3in?'],
  ['a depth in words', { depth: 'deep' }, 'depth'],
  ['a depth of nothing', { depth: '0mm' }, 'depth'],
  ['a depth beyond any board', { depth: '3m' }, 'depth'],
  ['a grain without its unit', { grain: '45' }, 'Did you mean 45deg or 45rad?'],
  ['a dive beyond upright', { dive: '120deg' }, 'dive'],
  ['half a coat', { seal: 'epoxy', coats: 1.5 }, 'coats'],
  ['more coats than anybody brushes', { seal: 'epoxy', coats: 99 }, 'coats'],
  ['levelling below nothing', { level: '-1mm' }, 'level'],
  ['a hot shop', { shopTemp: '90C' }, 'shopTemp'],
  ['no board', { boards: 0 }, 'boards'],
  ['a negative price', { pricePerG: -1 }, 'pricePerG'],
  ['more pigment than cures', { pigmentPct: 50 }, 'pigmentPct'],
  ['a coarse tolerance', { tolerance: '2mm' }, 'tolerance'],
  ['a start that is no day', { start: 'next week' }, 'start'],
  ['a wood that is not known', { wood: 'mapel' }, 'mapel'],
  ['a seal that is not known', { seal: 'wax' }, 'wax'],
  ['a resin that is not known', { resin: 'glue' }, 'glue'],
  ['a scale that is not known', { weigh: 'bathroom' }, 'bathroom'],
  ['a colour that is not known', { colour: 'plaid' }, 'colour'],
  ['a way of levelling that is not known', { levelBy: 'axe' }, 'levelBy'],
  ['a kind of bit that is not known', { bit: ['drill:3mm'] }, 'drill'],
  ['a bit without a size', { bit: ['flat'] }, 'flat'],
  ['a bit of no size', { bit: ['flat:0mm'] }, 'Diameters lie between'],
  ['a V that is more than flat', { bit: ['vee:200deg:1/2in'] }, '200'],
  ['a bit too short for the pocket', { bit: ['flat:3mm:length 2mm'], depth: '6mm' }, 'cutting edge'],
  ['a width of nothing', { width: '0mm' }, 'width'],
  ['a width beyond any board', { width: '1e30mm' }, 'width'],
  ['a factor of nothing', { scale: 0 }, 'scale'],
  ['a gap of nothing', { join: '0mm' }, 'join'],
  ['a feed of nothing', { feed: '0mm/min' }, 'feed'],
]);

const CONTRADICTIONS = onBars([
  ['two sizes', { width: '40mm', height: '40mm' }, 'width and height'],
  ['a board and a wood', { board: 'plain 300x180x20mm walnut', wood: 'maple' }, 'wood'],
  ['a pocket deeper than the board', { board: 'plain 300x180x4mm walnut', depth: '5mm' }, 'thick'],
  ['a board that cannot be read', { board: 'planks 300x180x20mm walnut' }, 'planks'],
  ['too few heights', { board: 'plain 300x180x20mm maple', reading: ['0mm,0mm 20mm'] }, 'reading'],
  ['a hole that cannot be read', { board: 'plain 300x180x20mm maple', keepClear: ['hole'] }, 'keepClear'],
  ['a margin without a board', { margin: '10mm' }, 'board'],
]);

const SIZED = { capHeight: '12mm' };

const LETTERING: readonly RefusedTrial[] = [
  [lettered('lettering without a size', 'Oak', LORA, {}), 'size'],
  [lettered('capitals and a width', 'Oak', LORA, { ...SIZED, width: '90mm' }), 'capHeight and width'],
  [lettered('lettering with a height', 'Oak', LORA, { height: '20mm' }), 'height'],
  [lettered('lettering with a height and capitals', 'Oak', LORA, { ...SIZED, height: '20mm' }), 'height'],
  [lettered('lettering with a factor', 'Oak', LORA, { ...SIZED, scale: 2 }), '24mm'],
  [lettered('lettering without a font', 'Oak', null, SIZED), 'font'],
  [lettered('single strokes and a font', 'Oak', LORA, { ...SIZED, singleLine: true }), 'singleLine'],
  [
    lettered('single strokes and an axis', 'Oak', null, { ...SIZED, singleLine: true, axis: ['wght=600'] }),
    'axis',
  ],
  [lettered('no words', '', LORA, SIZED), 'text'],
  [lettered('blanks', ' \n ', LORA, SIZED), 'text'],
  [lettered('an axis that cannot be read', 'Oak', VARIABLE, { ...SIZED, axis: ['weight'] }), 'axis'],
  [lettered('an arc that cannot be read', 'Oak', LORA, { ...SIZED, arc: '80mm around' }), 'arc'],
  [lettered('lines pushed into each other', 'Oak', LORA, { ...SIZED, lineSpacing: -1 }), 'lineSpacing'],
  [lettered('an edge that is not known', 'Oak', LORA, { ...SIZED, align: 'middle' }), 'align'],
  [lettered('a letter that the font has not', '木', LORA, SIZED), '木'],
  [
    lettered('strokes too wide for the letters', 'Oak', null, {
      bit: ['flat:6mm'],
      singleLine: true,
      ...SIZED,
    }),
    'run together',
  ],
  [lettered('a font that is noise', 'Oak', made('junk.ttf', JUNK), SIZED), 'font'],
  [lettered('a font of no bytes', 'Oak', made('empty.ttf', ''), SIZED), 'font'],
];

const FILES: readonly RefusedTrial[] = [
  [drawn('no bytes', made('empty.svg', ''), {}), 'empty.svg is empty'],
  [drawn('a drawing wider than any board', made('huge.svg', sized('224000mm')), {}), '224 mm × 224 mm if'],
  [drawn('a drawing smaller than any bit', made('tiny.svg', sized('0.02mm')), {}), '20 mm × 20 mm if'],
  [drawn('noise in the place of an SVG', made('junk.svg', JUNK), {}), 'junk.svg'],
  [drawn('noise in the place of a DXF', made('junk.dxf', JUNK), {}), 'junk.dxf'],
  [drawn('an SVG that breaks off', made('cut-off.svg', BARS.bytes.slice(0, 120)), {}), 'cut-off.svg, line'],
  [drawn('a DXF that breaks off', made('cut-off.dxf', SQUARE_MM.bytes.slice(0, 70)), {}), 'cut-off.dxf'],
  [
    drawn('a picture of dots', made('dots.png', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10)), {}),
    'PNG',
  ],
  [drawn('a letter', made('letter.txt', 'Dear maker, carve my name.\n'), {}), 'neither an SVG nor a DXF'],
  [drawn('nothing painted', NOTHING, {}), 'nothing to cut'],
  [drawn('a font that is noise, for live text', BARS, {}, { font: made('junk.ttf', JUNK) }), 'font'],
];

/** Jobs that must be refused, and the same words for it whichever way in they take. */
export const REFUSED_JOBS: readonly RefusedTrial[] = [
  ...SHAPES,
  ...VALUES,
  ...CONTRADICTIONS,
  ...LETTERING,
  ...FILES,
];
