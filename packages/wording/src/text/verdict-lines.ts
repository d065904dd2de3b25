import type { Report } from '@pourproof/proof';
import { noticesSeenTo } from '../facts/reader-notices.ts';
import { VERDICT_WORDS } from '../facts/verdict-words.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import type { Layout } from './layout.ts';
import { wrap } from './wrap.ts';

/** The verdict on one artwork, and how many findings it rests on. */
export function verdictLines(report: Report, { columns, mark }: Layout): readonly string[] {
  return wrap(verdictText(report), columns, `${report.verdict.toUpperCase()}  `).map((line, k) =>
    k === 0 ? line.replace(/^\S+/u, (word) => mark(word, report.verdict)) : line,
  );
}

function verdictText(report: Report): string {
  const open = report.findings.filter(({ seenTo }) => seenTo !== true);
  const counts = (['stop', 'caution', 'note'] as const)
    .map((severity) => ({ severity, n: open.filter((each) => each.severity === severity).length }))
    .filter(({ n }) => n > 0)
    .map(({ severity, n }) => counted(n, severity));
  const read = report.artwork.notices.filter(({ seenTo }) => seenTo === false).length;
  if (read > 0) {
    counts.push(`${counted(read, 'caution')} from reading the artwork`);
  }
  const seenTo = report.findings.length - open.length + noticesSeenTo(report).length;
  if (seenTo > 0) {
    counts.push(`${seenTo} seen to by you`);
  }
  const words = VERDICT_WORDS[report.verdict];
  return `${report.artwork.file}: ${words}${counts.length > 0 ? ` (${counts.join(', ')})` : ''}.`;
}
