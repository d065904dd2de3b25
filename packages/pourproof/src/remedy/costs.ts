import { type Job, shopBit } from '@pourproof/job';
import type { Report } from '@pourproof/proof';
import type { RemedyCosts } from './remedies.ts';

/** What a proved job costs, with the bits that its shop would have to buy. */
export function costsOf({ cut, pour, seal }: Report, job: Job): RemedyCosts {
  const level = pour.schedule.findLast(({ step }) => step === 'level');
  const sealPrice = job.shop?.seals.find((each) => each.seal === job.seal)?.pricePerG ?? null;
  const toBuy = job.bits.flatMap((bit) => {
    const row = shopBit(job.shop, bit);
    return row?.isToBuy === true && row.price !== null ? [row.price] : [];
  });
  const prices = [
    ...(pour.price === undefined ? [] : [pour.price]),
    ...(sealPrice === null || job.seal === 'none' ? [] : [sealPrice * seal.massG * job.boards]),
    ...toBuy,
  ];
  return {
    minutes: cut.time.minutes + (cut.time.changeMinutes ?? 0),
    massG: pour.colours.reduce((sum, { massG }) => sum + massG, 0),
    price: prices.length === 0 ? null : prices.reduce((sum, each) => sum + each, 0),
    hours: level?.earliestHours ?? 0,
  };
}
