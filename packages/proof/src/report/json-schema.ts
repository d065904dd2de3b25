import { couponsFileSchema, jobFileSchema, materialsFileSchema, shopFileSchema } from '@pourproof/job';
import * as z from 'zod';
import { reportSchema } from './report.ts';

/**
 * The published JSON Schemas, by file name in docs/schema/.
 *
 * @public
 */
export function jsonSchemas(): Readonly<
  Record<'report@2.json' | 'job@1.json' | 'materials@1.json' | 'coupons@1.json' | 'shop@1.json', unknown>
> {
  return {
    'report@2.json': z.toJSONSchema(reportSchema, { target: 'draft-2020-12' }),
    'job@1.json': z.toJSONSchema(jobFileSchema, { target: 'draft-2020-12', io: 'input' }),
    'materials@1.json': z.toJSONSchema(materialsFileSchema, { target: 'draft-2020-12', io: 'input' }),
    'shop@1.json': z.toJSONSchema(shopFileSchema, { target: 'draft-2020-12', io: 'input' }),
    'coupons@1.json': z.toJSONSchema(couponsFileSchema, { target: 'draft-2020-12', io: 'input' }),
  };
}
