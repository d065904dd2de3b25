/** Hebrew, Arabic and the other scripts that run from right to left (Unicode's blocks of them). */
const RTL = '\\u0590-\\u08ff\\ufb1d-\\ufdff\\ufe70-\\ufefc\\u{10800}-\\u{10fff}\\u{1e800}-\\u{1efff}';
/** Marks, embeddings, overrides and isolates: they turn what follows. */
const CONTROLS = '\\u061c\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069';
const TURNED = `[${RTL}${CONTROLS}]`;
/** A name in quotes with such a letter, or else such letters with what stands between them, unless that runs from left to right. */
const FOREIGN = new RegExp(
  `(?<=["“])[^"“”]*${TURNED}[^"“”]*(?=["”])|${TURNED}(?:[^\\p{L}"“”]*${TURNED})*`,
  'gu',
);

/** A part of a sentence; a foreign one must not turn what stands beside it, so it is to be shown isolated. */
export interface BidiPart {
  readonly text: string;
  readonly isForeign: boolean;
}

/** A sentence in parts, those of scripts from right to left by themselves: names of files, layers and woods come in any script. */
export function bidiParts(sentence: string): readonly BidiPart[] {
  const parts: BidiPart[] = [];
  let at = 0;
  for (const found of sentence.matchAll(FOREIGN)) {
    parts.push(
      { text: sentence.slice(at, found.index), isForeign: false },
      { text: found[0], isForeign: true },
    );
    at = found.index + found[0].length;
  }
  return [...parts, { text: sentence.slice(at), isForeign: false }].filter(({ text }) => text !== '');
}

/** The same in one text without markup, each foreign part between the characters that isolate it. */
export function isolatedText(sentence: string): string {
  return bidiParts(sentence)
    .map(({ text, isForeign }) => (isForeign ? `\u2068${closed(text)}\u2069` : text))
    .join('');
}

/** Without characters that would end the isolation early, or begin one that is never ended. */
function closed(text: string): string {
  return text.replaceAll(/[\u2066-\u2069]/gu, '');
}
