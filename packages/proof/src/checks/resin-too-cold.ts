import type { Check } from './check.ts';
import { usesSolvent } from './uses-solvent.ts';

/** A shop colder than this resin cures well in. */
export const resinTooCold: Check = {
  code: 'resin-too-cold',
  run: (measured) => {
    const { job, cutArea } = measured;
    const { minTempC } = job.rows.resin;
    if (cutArea === 0 || job.shopTempC >= minTempC.value) {
      return null;
    }
    return {
      code: 'resin-too-cold',
      severity: 'caution',
      where: [],
      measured: { value: job.shopTempC, quantity: 'temperature', unit: '°C' },
      limit: { value: minTempC.value, quantity: 'temperature', unit: '°C' },
      because: [...minTempC.because],
      // the cautious end, so that a draught does not undo it
      fix: {
        options: [
          {
            do: 'change-temperature',
            toC: Math.max(minTempC.value, minTempC.high),
            besideSolvent: usesSolvent(measured),
            clears: true,
          },
        ],
      },
    };
  },
};
