/** A round that leaves more than this share of its keys has parted off little. */
const LITTLE_LESS = 7 / 8;

/**
 * Moves the items with the smallest keys of places `low` … `high − 1` in front of place `middle`, the others
 * behind; keys move with their items. Quickselect by Hoare's partition. The pivot is the median of the first, the middle and the last, which
 * is best for keys in order; where that parts off less than an eighth, as in keys in order but for a few at an end, the next is the median of
 * three from places by chance: O(high − low) on average whatever the keys are.
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
  let isOneSided = false;
  let chance = 1;
  while (left < right) {
    const size = right - left + 1;
    let pivot = medianOfThree(keys[left], keys[(left + right) >> 1], keys[right]);
    if (isOneSided) {
      const a = nextByChance(chance);
      const b = nextByChance(a);
      chance = nextByChance(b);
      pivot = medianOfThree(keys[left + (a % size)], keys[left + (b % size)], keys[left + (chance % size)]);
    }
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
    isOneSided = right - left + 1 > LITTLE_LESS * size;
  }
}

/** Numbers that repeat from run to run (Lehmer's generator modulo 2³¹ − 1 with factor 16807, from memory). */
function nextByChance(last: number): number {
  return (last * 16807) % 2147483647;
}

function medianOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
