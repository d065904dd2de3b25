import { defaultMaterials } from '@pourproof/materials';
import type { JobFile } from '@pourproof/proof';

/** The job in one line, sizes as typed, for the head of the sheet. */
export function jobLine({ bit, depth, wood, grain, seal, coats, sealHours }: Partial<JobFile>): string {
  const { woods, sealers } = defaultMaterials;
  const sealName = sealers[seal ?? 'none']?.name ?? '';
  const count = coats ?? 1;
  return [
    `${(bit ?? []).map((each) => each.replace(':', ' ')).join(', then ')} bit`,
    depth === undefined ? '' : `${depth} deep`,
    woods[wood ?? 'maple']?.name ?? '',
    `fibres ${(grain ?? '0deg').replace(/\s*deg$/u, '°')}`,
    (seal ?? 'none') === 'none'
      ? sealName
      : `${count === 1 ? '1 coat' : `${count} coats`} of ${sealName}, left ${sealHours ?? '24h'}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
