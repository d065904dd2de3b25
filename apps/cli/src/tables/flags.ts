import {
  flagOf,
  type GroupId,
  SETTING_GROUPS,
  SETTING_KEYS,
  SETTINGS,
  type SettingKey,
} from '@pourproof/job';

/** A command that takes flags. */
export type FlagCommand = 'vet' | 'compare' | 'remedy';

/** A flag of `vet` and of what is like it. */
export interface Flag {
  readonly name: string;
  /** The setting of a job that it sets. */
  readonly key?: SettingKey;
  /** Set where that setting is a number without a unit: how the number looks. */
  readonly number?: string;
  /** Set where that number may be typed as percent: whether it is percent itself or a factor. */
  readonly percent?: 'itself' | 'hundredths';
  /** Set where it takes one of a few words. */
  readonly choices?: readonly string[];
  /** What choices are called where their ids do not say it. */
  readonly names?: Readonly<Record<string, string>>;
  /** What is typed after it; absent for a switch. */
  readonly takes?: string;
  /** Commands that take it; all that take flags if left out. */
  readonly of?: readonly FlagCommand[];
  /** May be given several times. */
  readonly many?: true;
  readonly group: GroupId;
  readonly help: string;
}

/** Flags that are no settings of a job: files that are read and written, and the form of the answer. */
const OWN_FLAGS: readonly Flag[] = [
  {
    name: 'report',
    takes: 'SHEET.html',
    group: 'first',
    of: ['vet', 'compare'],
    help: 'Write a sheet to print',
  },
  {
    name: 'texts',
    takes: 'FILE',
    group: 'lettering',
    of: ['vet'],
    help: 'Vet each line of a text file instead; - stands for the standard input',
  },
  { name: 'full', group: 'output', of: ['vet'], help: 'Print the whole answer, not one screen of it' },
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
    name: 'shop',
    takes: 'FILE.json',
    group: 'output',
    help: 'Your shop: bits, woods, seals, resins, scales, speeds and prices, instead of what is usual; else shop.json beside the job file',
  },
  { name: 'coupons', takes: 'FILE.json', group: 'output', help: SETTINGS.coupons.help },
  { name: 'json', group: 'output', help: 'Print the report as JSON (several FILEs, or --texts: an array)' },
  {
    name: 'may',
    takes: 'PARTS',
    group: 'output',
    help: 'Of remedy: what may be changed, parted by commas, as "bit, depth, size"; all of it if left out',
    of: ['remedy'],
  },
  {
    name: 'clear',
    takes: 'GRADE',
    group: 'output',
    help: 'Of remedy: what is to go, stops or cautions too',
    of: ['remedy'],
  },
  {
    name: 'write-job',
    takes: 'OUT.json',
    group: 'output',
    help: 'Of remedy: write a way as a job file, which names the file of --artwork where that is given too',
    of: ['remedy'],
  },
  {
    name: 'way',
    takes: 'NUMBER',
    group: 'output',
    help: 'Of remedy: the way that is written, by its number; the first if left out',
    of: ['remedy'],
  },
  {
    name: 'within',
    takes: 'SECONDS',
    group: 'output',
    help: 'Of remedy: end the search after so long, with the ways found till then',
    of: ['remedy'],
  },
  { name: 'csv', group: 'output', help: 'Of compare: print comma-separated values', of: ['compare'] },
  {
    name: 'overlay',
    takes: 'OUT.svg',
    group: 'output',
    of: ['vet'],
    help: 'Write a drawing in real size that shows what is cut and what is not',
  },
  {
    name: 'artwork',
    takes: 'OUT.svg|OUT.dxf',
    group: 'output',
    of: ['vet', 'remedy'],
    help: 'Write the artwork as it is vetted: clean closed shapes in mm, a group for each colour and round',
  },
  {
    name: 'cut-outline',
    takes: 'OUT.svg|OUT.dxf',
    group: 'output',
    of: ['vet'],
    help: 'Write in the same way the outline that the bits really cut',
  },
  {
    name: 'left-over',
    takes: 'OUT.svg|OUT.dxf',
    group: 'output',
    of: ['vet'],
    help: 'Write in the same way what the bits leave for a later round',
  },
  {
    name: 'placement',
    takes: 'SHEETS.html',
    group: 'output',
    of: ['vet'],
    help: 'Write sheets to print in real size and lay on the board, with the numbers to type',
  },
  {
    name: 'customer',
    takes: 'SHEETS.html',
    group: 'output',
    of: ['vet'],
    help: 'Write sheets for the customer to read, measure in real size and sign',
  },
  {
    name: 'paper',
    takes: 'a4|letter',
    group: 'output',
    of: ['vet'],
    help: 'Paper of --placement and --customer; letter where the job is in inches, else a4',
  },
  {
    name: 'calendar',
    takes: 'OUT.ics',
    group: 'output',
    of: ['vet'],
    help: 'Write the work from --start to full cure as a calendar',
  },
  {
    name: 'fail-on',
    takes: 'LEVEL',
    group: 'output',
    of: ['vet'],
    help: 'Exit with 1 from this level up: stop, caution, note or never',
  },
];

/** All flags of `vet`, in the order of the help text. */
export const FLAGS: readonly Flag[] = SETTING_GROUPS.flatMap(({ id }) => [
  ...SETTING_KEYS.filter((key) => SETTINGS[key].group === id).flatMap(flagsOf),
  ...OWN_FLAGS.filter(({ group }) => group === id),
]);

function flagsOf(key: SettingKey): readonly Flag[] {
  const name = flagOf(key);
  const { holds, takes, group, help } = SETTINGS[key];
  const { control, form, percent, choices, names, isList } = holds;
  return name === null
    ? []
    : [
        {
          name,
          key,
          group,
          help,
          ...(control === 'number' ? { number: form } : {}),
          ...(percent === undefined ? {} : { percent }),
          ...(choices === undefined ? {} : { choices }),
          ...(names === undefined ? {} : { names }),
          ...(takes === undefined ? {} : { takes }),
          ...(isList === true ? { many: true } : {}),
        },
      ];
}

/** The groups of flags with their headings, in the order of the help text. */
export const FLAG_GROUPS: readonly { readonly id: GroupId; readonly help: string }[] = SETTING_GROUPS.map(
  ({ id, help }) => ({ id, help }),
);
