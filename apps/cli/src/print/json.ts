import { type Report, reportSchema } from '@pourproof/proof';

/**
 * The reports as JSON text: one report alone for one artwork, an array in the order asked for several.
 *
 * @throws {z.ZodError} when a report breaks its own contract, which is a fault of pourproof
 */
export function reportJson(reports: readonly Report[], isSeveral: boolean): string {
  for (const report of reports) {
    reportSchema.parse(report);
  }
  return `${JSON.stringify(isSeveral ? reports : reports[0], null, 2)}\n`;
}
