/** A stretch of one writing system: UTF-16 indices from `start` to `end` (excluded) and its ISO 15924 tag. */
export interface ScriptRun {
  readonly start: number;
  readonly end: number;
  readonly script: string;
}

// tags that have been in Unicode since before 2020, so that every engine in use knows them
const TAGS: readonly string[] = (
  'Latn Grek Cyrl Armn Hebr Arab Syrc Thaa Nkoo Deva Beng Guru Gujr Orya Taml Telu Knda Mlym Sinh Thai Laoo Tibt Mymr ' +
  'Geor Hang Ethi Cher Cans Ogam Runr Khmr Mong Hira Kana Bopo Hani Yiii Goth Copt Glag Tfng Java Bali Adlm'
).split(' ');

const TESTS: readonly (readonly [string, RegExp])[] = TAGS.map((tag) => [
  tag,
  new RegExp(`^\\p{Script=${tag}}$`, 'u'),
]);

/**
 * Splits `text` from `start` to `end` into runs of one script (Unicode Standard Annex 24). Characters that
 * all scripts share take the script before them, or after them at the beginning; a stretch of shared
 * characters alone is `Zyyy`.
 */
export function scriptRuns(text: string, start: number, end: number): readonly ScriptRun[] {
  const runs: { start: number; end: number; script: string }[] = [];
  for (let i = start; i < end; ) {
    const char = String.fromCodePoint(text.codePointAt(i) ?? 0);
    const next = i + char.length;
    const script = scriptOf(char);
    const last = runs.at(-1);
    if (!last) {
      runs.push({ start: i, end: next, script });
    } else if (script === 'Zyyy' || script === last.script) {
      last.end = next;
    } else if (last.script === 'Zyyy') {
      last.script = script;
      last.end = next;
    } else {
      runs.push({ start: i, end: next, script });
    }
    i = next;
  }
  return runs;
}

/**
 * ISO 15924 tag of a character's script, `Zyyy` when it belongs to several or to one that needs no shaping of
 * its own.
 */
export function scriptOf(char: string): string {
  return TESTS.find(([, test]) => test.test(char))?.[0] ?? 'Zyyy';
}
