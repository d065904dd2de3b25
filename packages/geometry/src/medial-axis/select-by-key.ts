/**
 * Moves the items with the smallest keys of places `low` … `high − 1` in front of place `middle`, the others
 * behind; keys move with their items. Quickselect by Hoare's partition with the median of three as pivot,
 * O(high − low) but for inputs made against it.
 */
export function selectByKey(
  keys: Float64Array,
  items: Int32Array,
  low: number,
  middle: number,
  high: number,
): void {
  let left = low;
  let right = high - 1;
  while (left < right) {
    const pivot = medianOfThree(keys[left], keys[(left + right) >> 1], keys[right]);
    let i = left;
    let j = right;
    while (i <= j) {
      while (keys[i] < pivot) {
        i++;
      }
      while (keys[j] > pivot) {
        j--;
      }
      if (i <= j) {
        const key = keys[i];
        keys[i] = keys[j];
        keys[j] = key;
        const item = items[i];
        items[i] = items[j];
        items[j] = item;
        i++;
        j--;
      }
    }
    // the middle is at the border of what it parts: places from `middle` on hold the larger keys
    if (middle <= j) {
      right = j;
    } else if (middle >= i) {
      left = i;
    } else {
      return;
    }
  }
}

function medianOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
