/**
 * The least number of steps, from 1 to `most`, that is enough, if more steps of it never do worse; `null` where none is.
 *
 * @param guess where to begin: a formula's proposal
 * @param isEnough asked about few numbers of steps, about none twice
 */
export async function leastSteps(
  guess: number,
  most: number,
  isEnough: (steps: number) => Promise<boolean>,
): Promise<number | null> {
  let enough = Math.min(guess, most);
  let short = 0;
  // a proposal is mostly the least already, or lacks little
  for (let stride = 1; !(await isEnough(enough)); stride *= 4) {
    if (enough >= most) {
      return null;
    }
    short = enough;
    enough = Math.min(most, enough + stride);
  }
  for (let stride = 1; enough - short > 1; stride *= 4) {
    const next = Math.max(short + 1, enough - stride);
    if (await isEnough(next)) {
      enough = next;
    } else {
      short = next;
      break;
    }
  }
  while (enough - short > 1) {
    const middle = Math.floor((short + enough) / 2);
    if (await isEnough(middle)) {
      enough = middle;
    } else {
      short = middle;
    }
  }
  return enough;
}
