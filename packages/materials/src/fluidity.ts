/**
 * How the viscosity rises: not at all, exponentially, or as a power that is infinite at gel. Times in s,
 * viscosity in Pa·s.
 */
export type ViscosityLaw =
  | { readonly kind: 'constant'; readonly startPaS: number }
  | { readonly kind: 'exponential'; readonly startPaS: number; readonly ratePerS: number }
  | {
      readonly kind: 'power';
      readonly startPaS: number;
      readonly gelS: number;
      readonly exponent: number;
    };

/**
 * Fluidity summed over time, ∫ dt/η in 1/Pa, from mixing to `timeS` (may be Infinity where the viscosity
 * rises).
 *
 * Constant: t/η₀. Exponential: (1 − e^(−kt))/(k η₀). Power: t_g/((n+1) η₀)·[1 − (1 − t/t_g)^(n+1)], complete
 * at gel.
 */
export function fluidity(law: ViscosityLaw, timeS: number): number {
  if (!(timeS >= 0)) {
    throw new RangeError(`timeS is ${timeS}; it must be 0 or more.`);
  }
  switch (law.kind) {
    case 'constant':
      return timeS / law.startPaS;
    case 'exponential':
      return -Math.expm1(-law.ratePerS * timeS) / (law.ratePerS * law.startPaS);
    case 'power': {
      const left = Math.max(0, 1 - timeS / law.gelS);
      const order = law.exponent + 1;
      return (law.gelS / (order * law.startPaS)) * (1 - left ** order);
    }
  }
}
