import { AxisEdge } from '@pourproof/geometry';
import { vi } from 'vitest';

/** Asks while every place on the axis is off by 0.02 mm, which the self-check of a proof has to notice. */
export async function whileSkewed<T>(ask: () => Promise<T>): Promise<T> {
  const atShare = AxisEdge.prototype.atShare;
  const skew = vi.spyOn(AxisEdge.prototype, 'atShare').mockImplementation(function (
    this: AxisEdge,
    share: number,
  ) {
    atShare.call(this, share);
    this.x += 0.02;
  });
  try {
    return await ask();
  } finally {
    skew.mockRestore();
  }
}
