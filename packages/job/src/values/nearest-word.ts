/**
 * The known word that is most like a mistyped one, or `null` when none is near: at most a third of the
 * letters (one at least) inserted, dropped, changed or swapped with a neighbour; where none is, the first that begins with what was typed.
 */
export function nearestWord(typed: string, known: readonly string[]): string | null {
  const most = Math.max(1, Math.floor(typed.length / 3));
  let best: string | null = null;
  let least = most + 1;
  for (const word of known) {
    const distance = editDistance(typed.toLowerCase(), word.toLowerCase());
    if (distance < least) {
      least = distance;
      best = word;
    }
  }
  const begun = typed.toLowerCase();
  return (
    best ??
    (typed.length < LEAST_BEGUN ? null : (known.find((word) => word.toLowerCase().startsWith(begun)) ?? null))
  );
}

/** Fewer letters than these begin too many words. */
const LEAST_BEGUN = 4;

/** Edit distance with swaps of neighbours (optimal string alignment), by rows of the usual table. */
function editDistance(a: string, b: string): number {
  let twoBack: number[] = [];
  let back = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (back[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swap =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (twoBack[j - 2] ?? 0) + 1 : change;
      row.push(Math.min(change, swap, (back[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    twoBack = back;
    back = row;
  }
  return back[b.length] ?? 0;
}
