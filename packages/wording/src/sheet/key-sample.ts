/** An entry of a key: a small drawing in the patterns of the picture, and what it stands for. */
export function keySample(drawing: string, name: string): string {
  return `<li><svg width="9mm" height="5mm" viewBox="0 0 34 19" aria-hidden="true">${drawing}</svg>${name}</li>`;
}
