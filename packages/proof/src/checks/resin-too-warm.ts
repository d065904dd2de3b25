import type { Check } from './check.ts';

/** A shop warmer than this resin can be poured in. */
export const resinTooWarm: Check = {
  code: 'resin-too-warm',
  run: ({ job, cutArea }) => {
    const { maxTempC } = job.rows.resin;
    if (cutArea === 0 || job.shopTempC <= maxTempC.value) {
      return null;
    }
    return {
      code: 'resin-too-warm',
      severity: 'caution',
      where: [],
      measured: { value: job.shopTempC, quantity: 'temperature', unit: '°C' },
      limit: { value: maxTempC.value, quantity: 'temperature', unit: '°C' },
      because: [...maxTempC.because],
      fix: {
        options: [
          {
            do: 'change-temperature',
            toC: Math.min(maxTempC.value, maxTempC.low),
            // cooling needs no heat
            besideSolvent: false,
            clears: true,
          },
        ],
      },
    };
  },
};
