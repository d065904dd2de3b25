/** Sizes are told apart where so many powers of two that follow each other have none of them (one serves best of 1 to 3: medial-axis.md). */
const GAP_OCTAVES = 1;

/** Classes at most; the smallest sizes share the last one (our choice: 3 to 6 are alike on the families of the bench). */
const MOST_CLASSES = 4;

/** Octaves that are told apart, from 2^-OCTAVES on; a size in mm lies well within. */
const OCTAVES = 64;

/**
 * Tells sizes apart where they leave wide gaps: puts the places of `sizes` into `order`, those of one class next to each other, the class with
 * the most of them first. The end of each class in `order`.
 */
export function sizeClasses(sizes: Float64Array, order: Int32Array): number[] {
  const inOctave = new Int32Array(2 * OCTAVES);
  const octave = new Uint8Array(sizes.length);
  for (let i = 0; i < sizes.length; i++) {
    octave[i] = octaveOf(sizes[i]);
    inOctave[octave[i]]++;
  }
  const classOf = new Int32Array(2 * OCTAVES);
  const counts = [0];
  let empty = 0;
  for (let k = 2 * OCTAVES - 1; k >= 0; k--) {
    const last = counts.length - 1;
    if (inOctave[k] > 0) {
      if (empty >= GAP_OCTAVES && counts[last] > 0 && counts.length < MOST_CLASSES) {
        counts.push(0);
      }
      empty = 0;
      classOf[k] = counts.length - 1;
      counts[counts.length - 1] += inOctave[k];
    } else {
      empty++;
    }
  }
  const byCount = counts.map((_, c) => c).sort((a, b) => counts[b] - counts[a]);
  const ends: number[] = [];
  const at = new Int32Array(counts.length);
  let end = 0;
  for (const c of byCount) {
    at[c] = end;
    end += counts[c];
    ends.push(end);
  }
  for (let i = 0; i < sizes.length; i++) {
    order[at[classOf[octave[i]]]++] = i;
  }
  return ends;
}

function octaveOf(size: number): number {
  return Math.min(Math.max(Math.floor(Math.log2(size)) + OCTAVES, 0), 2 * OCTAVES - 1);
}
