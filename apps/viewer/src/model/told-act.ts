import type { SettingKey, TypedJob } from '@pourproof/job';
import { fieldName } from './field-name.ts';
import type { PageAct } from './page-acts.ts';
import type { PageState } from './page-state.ts';
import { shippedFonts } from './shipped-fonts.ts';

/** Letters of a value that a step is named by (our choice: a step is a few words). */
const MOST_LETTERS = 28;

/** An act in a few words, for the strip of steps. */
export function toldOf(act: PageAct, after: PageState): string {
  switch (act.do) {
    case 'open':
      return `Opened ${short(act.files.names.join(', '))}`;
    case 'show-demo':
      return 'The demo';
    case 'leave-demo':
      return 'Took the demo off';
    case 'set-lettering':
      return `“${short(act.text.replaceAll('\n', ' / '))}” in ${fontName(after)}`;
    case 'change-job':
      return toldPart(act.part);
    case 'take-off':
      return `Took the ${act.what === 'shop' ? 'shop file' : act.what} off`;
    case 'take-shelf':
      return 'Took the shop’s files of another window';
    default:
      return '';
  }
}

function toldPart(part: Partial<TypedJob>): string {
  const [first, ...more] = Object.keys(part) as SettingKey[];
  if (first === undefined) {
    return '';
  }
  const value: unknown = part[first];
  const name = fieldName(first).replace(/^“(.*)”$/u, '$1');
  const rest = more.length === 0 ? '' : ` and ${more.length} more`;
  return `${name}: ${toldValue(value)}${rest}`;
}

function toldValue(value: unknown): string {
  if (value === undefined) {
    return 'as usual';
  }
  if (value === true) {
    return 'yes';
  }
  return short(Array.isArray(value) ? value.map(toldItem).join(', ') : String(value));
}

function toldItem(item: unknown): string {
  return typeof item === 'string' ? item : '…';
}

function fontName({ source }: PageState): string {
  const file = source?.font?.name;
  return file === undefined
    ? 'single strokes'
    : (shippedFonts.find((font) => font.file === file)?.name ?? file);
}

function short(text: string): string {
  const letters = [...text];
  return letters.length > MOST_LETTERS ? `${letters.slice(0, MOST_LETTERS - 1).join('')}…` : text;
}
