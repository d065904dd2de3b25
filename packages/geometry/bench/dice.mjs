/** Numbers in 0 … 1 that repeat from run to run (a linear congruence, constants from memory). */
export function dice(seed = 1) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
