/** Id of a group of settings. */
export type GroupId =
  | 'first'
  | 'lettering'
  | 'size'
  | 'outlines'
  | 'board'
  | 'seal'
  | 'resin'
  | 'levelling'
  | 'machine'
  | 'shop'
  | 'reading'
  | 'output';

/** A group of settings as help and forms show it; forms show groups of one title together. */
export interface SettingGroup {
  readonly id: GroupId;
  /** Its heading in the help text, without the colon. */
  readonly help: string;
  /** Its title in a form. */
  readonly title: string;
}

/** Groups in the order in which they are shown. */
export const SETTING_GROUPS: readonly SettingGroup[] = [
  { id: 'first', help: 'Most jobs need only these', title: 'Cut, wood and seal' },
  { id: 'lettering', help: 'Lettering', title: 'Lettering' },
  {
    id: 'size',
    help: 'Size of the artwork (one of them; else the size that the file states)',
    title: 'Size and reading of the artwork',
  },
  { id: 'outlines', help: 'Changes of the outlines, made first', title: 'Changes of the outlines' },
  { id: 'board', help: 'Board, glued up from blocks or plain', title: 'Board' },
  { id: 'seal', help: 'State of the wood and its seal', title: 'State of the wood and its seal' },
  { id: 'resin', help: 'Resin and colour', title: 'Resin and colour' },
  { id: 'levelling', help: 'Levelling', title: 'Levelling' },
  { id: 'machine', help: 'Machine, for the time it takes', title: 'Feeds and passes' },
  { id: 'shop', help: 'Shop and dates', title: 'Shop and dates' },
  { id: 'reading', help: 'How a file is read', title: 'Size and reading of the artwork' },
  { id: 'output', help: 'Input and output', title: 'Answer' },
];
