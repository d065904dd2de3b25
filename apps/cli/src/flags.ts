import type { JobFile } from '@pourproof/proof';

/** Where help shows a flag: first the few that most jobs need, then the rest. */
export type FlagGroup = 'simple' | 'lettering' | 'size' | 'glue-up' | 'board' | 'output';

/** A flag of `vet`. */
export interface Flag {
  readonly name: string;
  /** The key of a job file that it sets. */
  readonly key?: keyof JobFile;
  /** Set where that key holds a number and not a text with a unit: how the number looks. */
  readonly number?: string;
  /** What is typed after it; absent for a switch. */
  readonly takes?: string;
  /** May be given several times. */
  readonly many?: true;
  readonly group: FlagGroup;
  readonly help: string;
}

/** All flags of `vet`, in the order of the help text. */
export const FLAGS: readonly Flag[] = [
  {
    name: 'bit',
    key: 'bit',
    takes: 'KIND:SIZE',
    many: true,
    group: 'simple',
    help: 'A bit at hand, such as flat:1/8in; repeat it in the order of use',
  },
  {
    name: 'depth',
    key: 'depth',
    takes: 'LENGTH',
    group: 'simple',
    help: 'Depth of the pocket, such as 1/8in or 3mm',
  },
  {
    name: 'grain',
    key: 'grain',
    takes: 'ANGLE',
    group: 'simple',
    help: 'Fibre direction on the face: 0deg runs left to right, turning counter-clockwise',
  },
  {
    name: 'wood',
    key: 'wood',
    takes: 'NAME',
    group: 'simple',
    help: 'Wood of the board (pourproof list woods)',
  },
  {
    name: 'seal',
    key: 'seal',
    takes: 'NAME',
    group: 'simple',
    help: 'Seal coat before the colour (pourproof list seals)',
  },
  { name: 'report', takes: 'SHEET.html', group: 'simple', help: 'Write a sheet to print' },
  {
    name: 'text',
    key: 'text',
    takes: '"WORDS"',
    group: 'lettering',
    help: 'Vet lettering instead of a file',
  },
  { name: 'font', takes: 'FILE', group: 'lettering', help: 'Font file for the lettering' },
  {
    name: 'cap-height',
    key: 'capHeight',
    takes: 'LENGTH',
    group: 'lettering',
    help: 'Height of its capitals',
  },
  {
    name: 'single-line',
    group: 'lettering',
    help: 'Letters of single strokes as wide as the smallest bit, without a font',
  },
  { name: 'align', takes: 'SIDE', group: 'lettering', help: 'left (default), centre or right' },
  {
    name: 'tracking',
    takes: 'LENGTH',
    group: 'lettering',
    help: 'Room added between letters',
  },
  {
    name: 'line-spacing',
    takes: 'NUMBER',
    group: 'lettering',
    help: 'Distance of lines, as a factor of the font’s own',
  },
  {
    name: 'arc',
    takes: '"RADIUS SIDE"',
    group: 'lettering',
    help: 'Bend it over a circle, such as 80mm or "80mm under"',
  },
  {
    name: 'axis',
    takes: 'TAG=NUMBER',
    many: true,
    group: 'lettering',
    help: 'Axis of a variable font, such as wght=600',
  },
  { name: 'width', key: 'width', takes: 'LENGTH', group: 'size', help: 'Scale the artwork to this width' },
  { name: 'height', key: 'height', takes: 'LENGTH', group: 'size', help: 'Scale the artwork to this height' },
  {
    name: 'scale',
    key: 'scale',
    number: 'a factor without a unit, such as 1.25',
    takes: 'NUMBER',
    group: 'size',
    help: 'Scale the artwork by this factor',
  },
  {
    name: 'board',
    key: 'board',
    takes: '"PATTERN"',
    group: 'glue-up',
    help: 'Glue-up in one line, as "stripes 300x180x20mm maple:60mm walnut:20mm"',
  },
  {
    name: 'block',
    key: 'block',
    takes: '"BLOCK"',
    many: true,
    group: 'glue-up',
    help: 'A block of any outline, as "walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm"; repeat it',
  },
  {
    name: 'place',
    key: 'place',
    takes: 'X,Y',
    group: 'glue-up',
    help: 'Where the middle of the artwork comes on the board, as 150mm,90mm',
  },
  {
    name: 'turn',
    key: 'turn',
    takes: 'ANGLE',
    group: 'glue-up',
    help: 'Turn of the artwork, counter-clockwise',
  },
  {
    name: 'margin',
    key: 'margin',
    takes: 'LENGTH',
    group: 'glue-up',
    help: 'Rim of the board that the cut stays off',
  },
  {
    name: 'keep-clear',
    key: 'keepClear',
    takes: '"WHAT"',
    many: true,
    group: 'glue-up',
    help: 'As "hole 20mm,30mm 8mm" or "groove 0mm,160mm 300mm,160mm 6mm"; repeat it',
  },
  {
    name: 'reading',
    key: 'reading',
    takes: '"X,Y H"',
    many: true,
    group: 'glue-up',
    help: 'Height of the face at a place, as "20mm,30mm 19.8mm"; 5 to 9 of them',
  },
  {
    name: 'dive',
    key: 'dive',
    takes: 'ANGLE',
    group: 'board',
    help: 'Fibre direction out of the face; 90deg is an end-grain board',
  },
  {
    name: 'coats',
    key: 'coats',
    number: 'a whole number, such as 2',
    takes: 'COUNT',
    group: 'board',
    help: 'Number of seal coats',
  },
  {
    name: 'seal-hours',
    key: 'sealHours',
    takes: 'TIME',
    group: 'board',
    help: 'Time from the last coat to the pour, such as 24h',
  },
  {
    name: 'resin',
    key: 'resin',
    takes: 'NAME',
    group: 'board',
    help: 'Class of resin (pourproof list resins)',
  },
  {
    name: 'level',
    key: 'level',
    takes: 'LENGTH',
    group: 'board',
    help: 'How much of the face levelling takes off',
  },
  {
    name: 'overpour',
    key: 'overpour',
    takes: 'LENGTH',
    group: 'board',
    help: 'How proud of the face the resin is poured',
  },
  {
    name: 'waste-pct',
    key: 'wastePct',
    number: 'a number of percent, such as 15',
    takes: 'PERCENT',
    group: 'board',
    help: 'Resin that stays in the cup, in percent',
  },
  {
    name: 'colour',
    key: 'colour',
    takes: 'NAME',
    group: 'board',
    help: 'Colour of the resin, to tell whether a streak shows',
  },
  {
    name: 'pigment-pct',
    key: 'pigmentPct',
    number: 'a number of percent, such as 3',
    takes: 'PERCENT',
    group: 'board',
    help: 'Pigment by weight of the mix',
  },
  { name: 'oiled', key: 'oiled', group: 'board', help: 'The board was oiled or waxed before' },
  { name: 'level-by', key: 'levelBy', takes: 'METHOD', group: 'board', help: 'How the face is levelled' },
  {
    name: 'boards',
    key: 'boards',
    number: 'a whole number, such as 4',
    takes: 'COUNT',
    group: 'board',
    help: 'Equal boards that are poured together',
  },
  { name: 'weigh', key: 'weigh', takes: 'NAME', group: 'board', help: 'Scale that the parts are weighed on' },
  {
    name: 'price-per-g',
    key: 'pricePerG',
    number: 'a number, such as 0.03',
    takes: 'PRICE',
    group: 'board',
    help: 'Price of a gram of mixed resin, in your money',
  },
  {
    name: 'shop-temp',
    key: 'shopTemp',
    takes: 'TEMPERATURE',
    group: 'board',
    help: 'Temperature of shop and resin, such as 21C',
  },
  {
    name: 'start',
    key: 'start',
    takes: 'TIME',
    group: 'board',
    help: 'When carving starts, such as "2026-12-01 09:00"',
  },
  {
    name: 'job',
    takes: 'JOB.json',
    group: 'output',
    help: 'Take all of this from a job file; flags override it',
  },
  {
    name: 'materials',
    takes: 'FILE.json',
    group: 'output',
    help: 'Your own woods, seals, resins and scales; else materials.json beside the job file',
  },
  {
    name: 'coupons',
    takes: 'FILE.json',
    group: 'output',
    help: 'Test slots that you have cut and read: they say how far colour runs on your board',
  },
  {
    name: 'units',
    key: 'units',
    takes: 'mm|in',
    group: 'output',
    help: 'Unit of the answer; else the unit that you typed',
  },
  {
    name: 'carve',
    takes: 'all|visible',
    group: 'output',
    help: 'Carve all that is painted, or only what no other paint covers (SVG)',
  },
  { name: 'file-unit', takes: 'UNIT', group: 'output', help: 'Unit of a DXF drawing: mm, cm, m, in or ft' },
  {
    name: 'join',
    takes: 'LENGTH',
    group: 'output',
    help: 'Widest gap that is closed between lines of a DXF drawing',
  },
  {
    name: 'tolerance',
    key: 'tolerance',
    takes: 'LENGTH',
    group: 'output',
    help: 'Largest deviation when curves become short straight lines',
  },
  { name: 'json', group: 'output', help: 'Print the report as JSON (several FILEs: an array)' },
  {
    name: 'overlay',
    takes: 'OUT.svg',
    group: 'output',
    help: 'Write a drawing in real size that shows what is cut and what is not',
  },
  {
    name: 'calendar',
    takes: 'OUT.ics',
    group: 'output',
    help: 'Write the work from --start to full cure as a calendar',
  },
  {
    name: 'fail-on',
    takes: 'LEVEL',
    group: 'output',
    help: 'Exit with 1 from this level up: stop, caution, note or never',
  },
];
