import type { Layout, Letter } from './place-lines.ts';

/** Names such as `letter "a" (3rd of line 1)`; spaces do not count. */
export function letterNames({ letters, lines }: Layout): ReadonlyMap<Letter, string> {
  const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
  const names = new Map<Letter, string>();
  lines.forEach((text, n) => {
    const visible = [...graphemes.segment(text)].filter((g) => g.segment.trim() !== '').map((g) => g.index);
    let seen = 0;
    const inOrder = letters.filter((l) => l.line === n + 1).sort((a, b) => a.cluster.start - b.cluster.start);
    for (const letter of inOrder) {
      const { start, end } = letter.cluster;
      while (seen < visible.length && (visible[seen] as number) < start) {
        seen++;
      }
      const count = visible.filter((i) => i >= start && i < end).length;
      const what = count > 1 ? 'letters' : 'letter';
      names.set(letter, `${what} "${letter.text}" (${ordinal(seen + 1)} of line ${n + 1})`);
    }
  });
  return names;
}

function ordinal(n: number): string {
  const suffix = { one: 'st', two: 'nd', few: 'rd', other: 'th', zero: 'th', many: 'th' };
  return `${n}${suffix[new Intl.PluralRules('en', { type: 'ordinal' }).select(n)]}`;
}
