import { CARVE_MODES, FILE_UNITS, JOB_DEFAULTS, type JobFile } from '@pourproof/job';
import { levelMethods, type MaterialsBook, resinColours } from '@pourproof/materials';

/** Names of a list, by id. */
export type Options = readonly (readonly [id: string, name: string])[];

/** A field of the job ticket: what it sets, how it is asked for, and when it means something. */
export interface JobField {
  readonly key: keyof JobFile;
  readonly label: string;
  /** How it is typed: a text with its unit, a number, a line for each of several, one of a list, a tick, a day and time. */
  readonly form: 'text' | 'number' | 'lines' | 'choice' | 'tick' | 'time';
  /** How it is written, below the field. */
  readonly hint?: string;
  /** What may be chosen. */
  readonly options?: (materials: MaterialsBook) => Options;
  /** Whether it means something for this job and artwork; always where absent. */
  readonly when?: (job: Partial<JobFile>, source: SourceKind) => boolean;
}

/** What is on the sheet. */
export type SourceKind = 'file' | 'lettering' | null;

/** Fields that are shown together under a title. */
export interface JobGroup {
  readonly title: string;
  readonly fields: readonly JobField[];
}

const onBoard = ({ board }: Partial<JobFile>): boolean => board !== undefined;
const offBoard = ({ board }: Partial<JobFile>): boolean => board === undefined;
const isSealed = ({ seal }: Partial<JobFile>): boolean => (seal ?? 'none') !== 'none';
const ofFile = (_: Partial<JobFile>, source: SourceKind): boolean => source !== 'lettering';

/** What every job needs, besides bits and fibres. */
export const FIRST_FIELDS = {
  depth: { key: 'depth', label: 'Depth of the pocket', form: 'text' },
  wood: { key: 'wood', label: 'Wood', form: 'choice', options: ({ woods }) => names(woods), when: offBoard },
  oiled: { key: 'oiled', label: 'This board was oiled or waxed', form: 'tick' },
  seal: {
    key: 'seal',
    label: 'Seal before the colour',
    form: 'choice',
    options: ({ sealers }) => names(sealers),
  },
  coats: { key: 'coats', label: 'Coats', form: 'number', when: isSealed },
  sealHours: { key: 'sealHours', label: 'Left before the pour', form: 'text', when: isSealed },
} as const satisfies Record<string, JobField>;

/** The rest, folded away by subject. */
export const JOB_GROUPS: readonly JobGroup[] = [
  {
    title: 'Board',
    fields: [
      {
        key: 'board',
        label: 'Glue-up in one line',
        form: 'text',
        hint: 'As in “stripes 300x180x20mm maple:60mm walnut:20mm” or “plain 300x180x20mm cherry”; empty for one plain wood',
      },
      {
        key: 'block',
        label: 'Blocks, one a line',
        form: 'lines',
        hint: 'As in “walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm”',
        when: ({ board, block }) => block !== undefined || (board ?? '').trim().startsWith('polygons'),
      },
      {
        key: 'place',
        label: 'Middle of the artwork on the board',
        form: 'text',
        hint: 'From the board’s left and top edge, as in “150mm,90mm”; empty for its middle',
        when: onBoard,
      },
      { key: 'turn', label: 'Turn of the artwork, counter-clockwise', form: 'text', when: onBoard },
      { key: 'margin', label: 'Rim that the cut stays off', form: 'text', when: onBoard },
      {
        key: 'keepClear',
        label: 'Holes and grooves, one a line',
        form: 'lines',
        hint: 'As in “hole 20mm,30mm 8mm” or “groove 0mm,160mm 300mm,160mm 6mm”',
        when: onBoard,
      },
      {
        key: 'reading',
        label: 'Heights of the face, 5 to 9, one a line',
        form: 'lines',
        hint: 'Place and height, as in “20mm,30mm 19.8mm”',
        when: onBoard,
      },
      {
        key: 'dive',
        label: 'Fibres dive into the face by',
        form: 'text',
        hint: '90deg is an end-grain board',
        when: offBoard,
      },
    ],
  },
  {
    title: 'Resin and colour',
    fields: [
      { key: 'resin', label: 'Resin', form: 'choice', options: ({ resins }) => names(resins) },
      {
        key: 'colour',
        label: 'Colour',
        form: 'choice',
        options: () => [['', 'not said'], ...Object.keys(resinColours).map((id) => [id, id] as const)],
      },
      { key: 'pigmentPct', label: 'Pigment, percent of the mix', form: 'number' },
      { key: 'overpour', label: 'Poured proud of the face by', form: 'text' },
      { key: 'wastePct', label: 'Stays in the cup, percent', form: 'number' },
      { key: 'boards', label: 'Equal boards poured together', form: 'number' },
      { key: 'weigh', label: 'Scale', form: 'choice', options: ({ scales }) => names(scales) },
      { key: 'pricePerG', label: 'Price of a gram of mix', form: 'number' },
    ],
  },
  {
    title: 'Levelling',
    fields: [
      { key: 'levelBy', label: 'Levelled by', form: 'choice', options: () => names(levelMethods) },
      { key: 'level', label: 'Takes off the face', form: 'text' },
    ],
  },
  {
    title: 'Feeds and passes',
    fields: [
      {
        key: 'feed',
        label: 'Speed in the wood',
        form: 'text',
        hint: 'As in 1000mm/min or 40in/min; the measures say what is taken where nothing is typed',
      },
      { key: 'plunge', label: 'Speed straight down', form: 'text' },
      { key: 'rapid', label: 'Speed above the wood', form: 'text' },
      { key: 'accelerationMmPerS2', label: 'Acceleration, mm/s²', form: 'number' },
      { key: 'passDepth', label: 'Most depth of one pass', form: 'text' },
      { key: 'stepoverPct', label: 'Between rounds, percent of the bit', form: 'number' },
    ],
  },
  {
    title: 'Shop and dates',
    fields: [
      { key: 'shopTemp', label: 'Temperature of shop and resin', form: 'text' },
      {
        key: 'start',
        label: 'Carving starts',
        form: 'time',
        hint: 'Gives the work its dates and a calendar',
      },
    ],
  },
  {
    title: 'Size and reading of the artwork',
    fields: [
      {
        key: 'width',
        label: 'Width of the artwork',
        form: 'text',
        hint: 'One of width, height and factor; empty for the size as drawn',
      },
      { key: 'height', label: 'Height of the artwork', form: 'text', when: ofFile },
      { key: 'scale', label: 'Factor', form: 'number', when: ofFile },
      {
        key: 'carve',
        label: 'Carve of an SVG',
        form: 'choice',
        options: () => [
          ['', 'all that is painted'],
          ...CARVE_MODES.filter((mode) => mode !== 'all').map(
            (mode) => [mode, 'what no other paint covers'] as const,
          ),
        ],
        when: ofFile,
      },
      {
        key: 'fileUnit',
        label: 'Unit of a DXF drawing',
        form: 'choice',
        options: () => [['', 'as the file says'], ...FILE_UNITS.map((unit) => [unit, unit] as const)],
        when: ofFile,
      },
      { key: 'join', label: 'Widest gap closed in a DXF drawing', form: 'text', when: ofFile },
      { key: 'tolerance', label: 'Largest deviation of flattened curves', form: 'text' },
    ],
  },
];

/** What a field stands for while it is empty, as typed; `''` where nothing does. */
export function usualValue(key: keyof JobFile, { levelBy }: Partial<JobFile>): string {
  if (key === 'level' && levelBy !== undefined) {
    return `${levelMethods[levelBy].removalMm.value}mm`;
  }
  const usual = JOB_DEFAULTS[key];
  return usual === undefined || Array.isArray(usual) ? '' : String(usual);
}

function names(rows: Readonly<Record<string, { readonly name: string }>>): Options {
  return Object.entries(rows).map(([id, { name }]) => [id, name]);
}
