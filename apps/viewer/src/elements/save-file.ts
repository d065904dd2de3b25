import type { SavedFile } from '../model/saved-files.ts';

/** Hands a file to the browser's downloads. */
export function saveFile({ name, type, content }: SavedFile): void {
  const url = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // the download has its own hold on the data once it has started
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
