/** Hands a text file to the browser's downloads. */
export function saveFile(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // the download has its own hold on the data once it has started
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** A name of artwork as the start of a file's name. */
export function fileStem(name: string): string {
  return name.replace(/\.[^.]*$/u, '').replaceAll(/[^\p{L}\p{M}\p{N}-]+/gu, '-');
}
