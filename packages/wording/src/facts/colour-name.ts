import { plainColourWord } from '@pourproof/materials';

/**
 * A colour of the drawing in words: the plain word of its paint, with the paint where another one of the drawing has the same word; layers by their
 * names.
 *
 * @param name as in `pour.colours` of the report
 * @param all names of all colours of the drawing
 */
export function colourName(name: string, all: readonly string[]): string {
  if (!isPaint(name)) {
    return name;
  }
  const word = plainColourWord(name);
  const isOnly = all.every((other) => other === name || !isPaint(other) || plainColourWord(other) !== word);
  return isOnly ? word : `${word} ${name}`;
}

function isPaint(name: string): boolean {
  return /^#[\da-f]{6}$/u.test(name);
}
