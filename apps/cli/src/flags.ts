/** Where help shows a flag: first the few that most jobs need, then the rest. */
export type FlagGroup = 'simple' | 'lettering' | 'board' | 'size' | 'output';

/** A flag of `vet`. */
export interface Flag {
  readonly name: string;
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
    takes: 'KIND:SIZE',
    many: true,
    group: 'simple',
    help: 'A bit at hand, such as flat:1/8in; repeat it in the order of use',
  },
  { name: 'depth', takes: 'LENGTH', group: 'simple', help: 'Depth of the pocket, such as 1/8in or 3mm' },
  {
    name: 'grain',
    takes: 'ANGLE',
    group: 'simple',
    help: 'Fibre direction on the face: 0deg runs left to right, turning counter-clockwise',
  },
  { name: 'wood', takes: 'NAME', group: 'simple', help: 'Wood of the board (pourproof list woods)' },
  {
    name: 'seal',
    takes: 'NAME',
    group: 'simple',
    help: 'Seal coat before the colour (pourproof list seals)',
  },
  { name: 'report', takes: 'SHEET.html', group: 'simple', help: 'Write a sheet to print' },
  { name: 'text', takes: '"WORDS"', group: 'lettering', help: 'Vet lettering instead of a file' },
  { name: 'font', takes: 'FILE', group: 'lettering', help: 'Font file for the lettering' },
  { name: 'cap-height', takes: 'LENGTH', group: 'lettering', help: 'Height of its capitals' },
  { name: 'width', takes: 'LENGTH', group: 'size', help: 'Scale the artwork to this width' },
  { name: 'height', takes: 'LENGTH', group: 'size', help: 'Scale the artwork to this height' },
  { name: 'scale', takes: 'NUMBER', group: 'size', help: 'Scale the artwork by this factor' },
  {
    name: 'dive',
    takes: 'ANGLE',
    group: 'board',
    help: 'Fibre direction out of the face; 90deg is an end-grain board',
  },
  { name: 'coats', takes: 'COUNT', group: 'board', help: 'Number of seal coats' },
  {
    name: 'seal-hours',
    takes: 'TIME',
    group: 'board',
    help: 'Time from the last coat to the pour, such as 24h',
  },
  { name: 'resin', takes: 'NAME', group: 'board', help: 'Class of resin (pourproof list resins)' },
  { name: 'level', takes: 'LENGTH', group: 'board', help: 'How much of the face levelling takes off' },
  { name: 'overpour', takes: 'LENGTH', group: 'board', help: 'How proud of the face the resin is poured' },
  { name: 'waste-pct', takes: 'PERCENT', group: 'board', help: 'Resin that stays in the cup, in percent' },
  {
    name: 'job',
    takes: 'JOB.json',
    group: 'output',
    help: 'Take all of this from a job file; flags override it',
  },
  {
    name: 'units',
    takes: 'mm|in',
    group: 'output',
    help: 'Unit of the answer; else the unit that you typed',
  },
  {
    name: 'tolerance',
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
    name: 'fail-on',
    takes: 'LEVEL',
    group: 'output',
    help: 'Exit with 1 from this level up: stop, caution, note or never',
  },
];
