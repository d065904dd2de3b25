import { type BleedJob, bleedTravel, resins, sealers, woods } from '@pourproof/materials';

interface Turn {
  readonly input: string;
  readonly from: string;
  readonly to: string;
  readonly job: (end: 'low' | 'high') => BleedJob;
}

const BASE: BleedJob = {
  wood: 'cherry',
  seal: 'epoxy',
  coats: 1,
  sealHours: 12,
  resin: 'coating',
  temperatureC: 25,
};

const TURNS: readonly Turn[] = [
  {
    input: 'wood prior, one standard deviation between boards (factor 2.01)',
    from: '÷ 2.01',
    to: '× 2.01',
    job: (end) => ({ ...BASE, wood: scaledWood(end === 'low' ? Math.exp(-0.7) : Math.exp(0.7)) }),
  },
  {
    input: 'hours that the seal has cured',
    from: '24 h',
    to: '2 h',
    job: (end) => ({ ...BASE, sealHours: end === 'low' ? 24 : 2 }),
  },
  {
    input: 'class of seal, cured as practice says',
    from: 'epoxy, 24 h',
    to: 'sanding sealer, 2 h',
    job: (end) =>
      end === 'low'
        ? { ...BASE, sealHours: 24 }
        : { ...BASE, seal: 'sanding-sealer', sealHours: sealers['sanding-sealer'].readyHours.value },
  },
  { input: 'coats', from: '2', to: '1', job: (end) => ({ ...BASE, coats: end === 'low' ? 2 : 1 }) },
  {
    input: 'temperature of shop and resin (seal and resin cure, resin thins)',
    from: '30 °C',
    to: '15 °C',
    job: (end) => ({ ...BASE, temperatureC: end === 'low' ? 30 : 15 }),
  },
  {
    input: 'viscosity within the class',
    from: '4 Pa·s',
    to: '0.5 Pa·s',
    job: (end) => ({
      ...BASE,
      resin: { ...resins.coating, viscosityPaS: at(resins.coating.viscosityPaS, end === 'low' ? 4 : 0.5) },
    }),
  },
  {
    input: 'gel time of a thin layer, against the pot life of a cup',
    from: '75 min',
    to: '225 min',
    job: (end) => ({
      ...BASE,
      resin: { ...resins.coating, gelMin: at(resins.coating.gelMin, end === 'low' ? 75 : 225) },
    }),
  },
  {
    input: 'class of resin',
    from: 'coating',
    to: 'deep-pour',
    job: (end) => ({ ...BASE, resin: end === 'low' ? 'coating' : 'deep-pour' }),
  },
];

/** The page docs/method/travel-sensitivity.md: how one uncertain input at a time moves the travel and its class. */
export function renderSensitivityPage(): string {
  const base = bleedTravel(BASE);
  const rows = TURNS.map(({ input, from, to, job }) => {
    const [low, high] = [bleedTravel(job('low')), bleedTravel(job('high'))];
    const factor = high.medianMm / low.medianMm;
    return {
      factor,
      line: `| ${input} | ${from} | ${show(low)} | ${to} | ${show(high)} | ${factor.toFixed(1)} |`,
    };
  }).sort((a, b) => b.factor - a.factor);
  return `# Colour travel: what each uncertain input moves

One input at a time, all others as in the reference: black cherry, one coat of clear epoxy cured 12 h, coating resin, 25 °C. The reference gives
${show(base)}, with a 95 % band of ${base.lowMm.toFixed(2)} to ${base.highMm.toFixed(2)} mm. The figures are the median, its class, and the probability
that a streak longer than 0.45 mm is seen. Computed by a test from the formulas in [colour travel](colour-travel.md).

| input | from | gives | to | gives | factor |
| --- | --- | --- | --- | --- | --- |
${rows.map((row) => row.line).join('\n')}

What to take from it: the seal and its hours decide, then the resin and the board. Surface tension and contact angle are not listed because they move
the travel by less than a third over their whole range. A coupon from the same board replaces the largest of these at once.
`;
}

function show(travel: ReturnType<typeof bleedTravel>): string {
  return `${travel.medianMm.toFixed(2)} mm, ${travel.class}, ${Math.round(100 * travel.visibleProbability)} %`;
}

function at<T extends { readonly value: number }>(row: T, value: number): T {
  return { ...row, value };
}

function scaledWood(factor: number): BleedJob['wood'] {
  const prior = woods.cherry.bleedPriorMm;
  return { ...woods.cherry, bleedPriorMm: prior && { ...prior, value: prior.value * factor } };
}
