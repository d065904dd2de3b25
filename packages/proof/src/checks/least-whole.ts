/**
 * The least whole number that is enough, by halving, where all greater ones are enough too.
 *
 * @param low is not enough
 * @param high is enough
 */
export function leastWhole(low: number, high: number, isEnough: (whole: number) => boolean): number {
  let [below, enough] = [low, high];
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2);
    if (isEnough(middle)) {
      enough = middle;
    } else {
      below = middle;
    }
  }
  return enough;
}
