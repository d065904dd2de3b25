/** The edge of a branch on which a way ends, from the rising ways at its nodes: the last one that begins there or before. */
export function stepAtWay(ways: readonly number[], way: number): number {
  let low = 0;
  let high = ways.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (ways[middle] <= way) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return low;
}
