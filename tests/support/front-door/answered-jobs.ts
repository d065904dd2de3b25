import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fixture } from '../cli/captured-run.ts';
import {
  ARABIC,
  BARS,
  COVERED,
  JOINED,
  LORA,
  RING,
  ROSETTE,
  SQUARE_BARE,
  SQUARE_MM,
  VARIABLE,
  WORDS,
} from './artwork-at-hand.ts';
import { drawn, held, lettered, type Trial } from './trial.ts';

/** Every job file of the fixtures, with the bars where it names no artwork. */
export const FIXTURE_JOBS: readonly Trial[] = readdirSync(fixture(''), { recursive: true, encoding: 'utf8' })
  .filter((path) => /(?:^|\/)job[^/]*\.json$|^jobs\/.*\.json$/u.test(path))
  .toSorted()
  .map((path) => {
    const { schema: _, artwork, ...job } = JSON.parse(readFileSync(fixture(path), 'utf8'));
    return drawn(path, artwork === undefined ? BARS : held(join(dirname(path), artwork)), job);
  });

const CAPITALS = { bit: ['flat:1mm'], capHeight: '12mm' };

const BITS: readonly Trial[] = (
  [
    ['nothing said', {}],
    ['a flat bit in inches', { bit: ['flat:1/8in'], depth: '1/8in' }],
    ['two flat bits', { bit: ['flat:3mm', 'flat:1mm'], depth: '3mm' }],
    ['a ball', { bit: ['ball:2mm'], depth: '2mm' }],
    ['a bull nose', { bit: ['bull:3mm:corner 0.5mm'], depth: '3mm' }],
    ['a V', { bit: ['vee:60deg:1/2in'], depth: '3mm' }],
    ['a V with a flat tip', { bit: ['vee:60deg:1/2in:tip 0.1mm'], depth: '3mm' }],
    ['a V with a round tip after a flat bit', { bit: ['flat:2mm', 'vee:60deg:1/2in:tip radius 0.2mm'] }],
    ['a tapered ball', { bit: ['taper:0.5mm:5deg:1/4in'], depth: '2mm' }],
    ['a profile', { bit: ['profile:1mm@0mm,3mm@2mm'], depth: '2mm' }],
    [
      'bits and lengths as structures',
      {
        bit: [
          { kind: 'flat', diameterMm: 3.175 },
          { kind: 'ball', diameterMm: 1 },
        ],
        depth: { in: 0.125 },
      },
    ],
    ['a V as a structure', { bit: [{ kind: 'vee', angleDeg: 60, diameterMm: 12.7 }], depth: { mm: 3 } }],
    [
      'a short clearing bit before a long one',
      { bit: ['flat:3mm:length 2mm', 'flat:1mm:length 8mm'], depth: '4mm' },
    ],
  ] as const
).map(([name, job]) => drawn(name, BARS, job));

/** Equal parts, of which rounding alone would tell which is the worst. */
const TIES: readonly Trial[] = [
  drawn('a ring of equal strokes, too thin for the bit', RING, { bit: ['flat:2mm'], grain: '20deg' }),
  drawn('a ring of equal strokes by a V, levelled by much', RING, {
    bit: ['vee:60deg:1/2in'],
    depth: '3mm',
    level: '1mm',
  }),
  drawn('a ring on stripes', RING, {
    bit: ['flat:1.3mm'],
    board: 'stripes 200x200x20mm maple:25mm walnut:25mm',
    turn: '11deg',
    level: '1mm',
  }),
  drawn('stars and equal islands', ROSETTE, { bit: ['flat:1mm'], depth: '4mm', seal: 'epoxy', coats: 3 }),
  drawn('stars and equal islands by a V', ROSETTE, { bit: ['flat:2mm', 'vee:30deg:1/4in'], depth: '3mm' }),
];

const WOOD_AND_RESIN: readonly Trial[] = (
  [
    ['walnut across the bars', { wood: 'walnut', grain: '90deg' }],
    ['fibres that dive', { wood: 'cherry', grain: '30deg', dive: '20deg' }],
    ['an end-grain board, oiled', { dive: '90deg', oiled: true, seal: 'epoxy' }],
    ['two coats of shellac', { seal: 'shellac', coats: 2, sealHours: '9h' }],
    ['coats without a seal', { coats: 2, sealHours: '9h' }],
    ['a colour with its pigment', { colour: 'black', pigmentPct: 5, resin: 'coating' }],
    ['four boards on a fine scale', { boards: 4, weigh: 'fine', wastePct: 20, pricePerG: 0.03 }],
    ['a cold shop and a date', { shopTemp: '60F', start: '2026-12-01 09:00', overpour: '1mm' }],
    ['levelled by the usual way', { levelBy: 'hand' }],
    ['levelled by more than is usual', { level: '1/16in', units: 'in' }],
    [
      'feeds and passes',
      {
        feed: '40in/min',
        plunge: '10in/min',
        rapid: '100in/min',
        accelerationMmPerS2: 300,
        passDepth: '1mm',
        stepoverPct: 30,
      },
    ],
  ] as const
).map(([name, job]) => drawn(name, BARS, job));

const BOARDS: readonly Trial[] = (
  [
    ['stripes', { board: 'stripes 300x180x20mm maple:60mm walnut:20mm', turn: '15deg' }],
    [
      'a plain board with a rim and a hole',
      { board: 'plain 300x180x20mm cherry', margin: '10mm', keepClear: ['hole 150mm,90mm 8mm'] },
    ],
    [
      'polygons',
      {
        board: 'polygons 100x100x20mm',
        block: [
          'maple 0mm,0mm 100mm,0mm 100mm,50mm 0mm,50mm',
          'walnut grain:45deg 0mm,50mm 100mm,50mm 100mm,100mm 0mm,100mm',
        ],
        place: '50mm,50mm',
      },
    ],
    [
      'heights of the face',
      {
        board: 'plain 300x180x20mm maple',
        reading: [
          '0mm,0mm 20mm',
          '300mm,0mm 20.2mm',
          '0mm,180mm 20mm',
          '300mm,180mm 19.9mm',
          '150mm,90mm 20.1mm',
        ],
      },
    ],
  ] as const
).map(([name, job]) => drawn(name, BARS, job));

const READING: readonly Trial[] = [
  drawn('a width in inches, answered in inches', BARS, { width: '3in' }),
  drawn('a height', BARS, { height: '30mm' }),
  drawn('a factor and a coarse tolerance', BARS, { scale: 1.5, tolerance: '0.05mm' }),
  drawn('what no other paint covers', COVERED, { carve: 'visible', bit: ['flat:2mm'] }),
  drawn('settings for other artwork', BARS, {
    fileUnit: 'in',
    join: '0.2mm',
    tracking: '1mm',
    capHeight: '9mm',
  }),
  drawn('a DXF in millimetres', SQUARE_MM, { bit: ['flat:2mm'] }),
  drawn('a DXF whose unit the job says', SQUARE_BARE, { fileUnit: 'in', join: '0.2mm' }),
  drawn('a DXF of arcs', held('dxf/slot-of-lines-and-arcs.dxf'), { bit: ['flat:1mm'] }),
  drawn('a hatch with an island', held('dxf/hatch-with-an-island.dxf'), { bit: ['ball:1mm'] }),
  drawn('a stroke with round ends', held('svg/stroke-cap-round.svg'), { wood: 'walnut' }),
  drawn('a compressed SVG', held('svg/xml-compressed.svg'), { scale: 0.5 }),
  drawn('a file with notices', held('svg/not-taken-filter.svg'), {}),
  drawn('live text in a font', WORDS, { bit: ['flat:1mm'] }, { font: LORA }),
  drawn('a font that no text asks for', BARS, {}, { font: LORA }),
];

const LETTERING: readonly Trial[] = [
  lettered('lettering by its capitals', 'Ok', LORA, CAPITALS),
  lettered('lettering by its width', 'Ok', LORA, { bit: ['flat:1mm'], width: '2in' }),
  lettered('two lines, typed as on a command line', 'It\\nL', LORA, {
    ...CAPITALS,
    align: 'right',
    lineSpacing: 1.4,
  }),
  lettered('two lines with a line break', 'L\nIt', LORA, {
    ...CAPITALS,
    align: 'centre',
    tracking: '1mm',
  }),
  lettered('settings without effect on one line', ' It ', LORA, { ...CAPITALS, align: 'left', join: '1mm' }),
  lettered('an arc', 'It', LORA, { ...CAPITALS, arc: '60mm under' }),
  lettered('an axis of a variable font', 'It', VARIABLE, { ...CAPITALS, axis: ['wght=600'] }),
  lettered('joined letters', 'elm', JOINED, { bit: ['vee:60deg:1/4in'], capHeight: '15mm' }),
  lettered('letters from right to left', 'خشب', ARABIC, { bit: ['flat:0.5mm'], width: '50mm' }),
  lettered('single strokes', 'It 7', null, { bit: ['ball:1mm'], singleLine: true, capHeight: '12mm' }),
  lettered('single strokes on an arc, by a V', 'IL', null, {
    bit: ['vee:60deg:1/4in'],
    depth: '1mm',
    singleLine: true,
    width: '50mm',
    arc: '60mm',
  }),
];

const SLOTS = [{ slots: ['1.2mm', '1.6mm', '0.9mm'] }, { wood: 'walnut', slots: ['none below 0.45mm'] }];
const MATERIALS = {
  schema: 'pourproof/materials@1',
  woods: {
    'shed-walnut': { like: 'walnut', name: 'walnut from the shed', lab: [42, 7, 14], bleedPriorMm: 0.6 },
  },
  sealers: { shellac: { readyHours: 2 } },
  resins: { shelf: { like: 'coating', name: 'two to one', ratioByVolume: { a: 2, b: 1 }, potLifeMin: 30 } },
  scales: { bench: { name: 'bench scale', resolutionG: 0.1 } },
};

const OWN: readonly Trial[] = [
  drawn('coupons in the job', BARS, { wood: 'cherry', coats: 0, coupons: SLOTS }),
  drawn(
    'coupons beside the job',
    BARS,
    { wood: 'cherry' },
    {
      coupons: { schema: 'pourproof/coupons@1', coupons: SLOTS },
    },
  ),
  drawn(
    'materials of the maker’s own',
    BARS,
    { wood: 'shed-walnut', seal: 'shellac', resin: 'shelf', weigh: 'bench' },
    {
      materials: MATERIALS,
    },
  ),
  drawn(
    'both',
    BARS,
    { wood: 'shed-walnut', resin: 'shelf' },
    {
      materials: MATERIALS,
      coupons: { schema: 'pourproof/coupons@1', coupons: [{ wood: 'shed-walnut', slots: ['2mm'] }] },
    },
  ),
];

/** Jobs of every kind that have an answer. */
export const ANSWERED_JOBS: readonly Trial[] = [
  ...TIES,
  ...BITS,
  ...WOOD_AND_RESIN,
  ...BOARDS,
  ...READING,
  ...LETTERING,
  ...OWN,
];
