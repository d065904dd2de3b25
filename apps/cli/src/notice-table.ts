import type { Io } from './io.ts';
import { readPage } from './read-page.ts';

/** A notice of the readers, explained. */
export interface NoticeRow {
  readonly code: string;
  readonly meaning: string;
  readonly remedy: string;
}

/** All notices in the order of their codes, from the table of docs/notices.md. */
export async function noticeTable(io: Io): Promise<readonly NoticeRow[]> {
  const page = await readPage('notices.md', io);
  return page.split('\n').flatMap((line) => {
    const [code = '', meaning = '', remedy = ''] = line
      .replace(/^\|\s*|\s*\|$/gu, '')
      .split(/\s*\|\s*/u)
      .map((cell) => cell.replaceAll('`', ''));
    return /^\| `/u.test(line) ? [{ code, meaning, remedy }] : [];
  });
}
