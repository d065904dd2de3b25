import { defaultMaterials } from '@pourproof/materials';
import type { Finding, Fix } from '@pourproof/proof';
import { type FindingEntry, findingEntries } from '@pourproof/wording';

/** The way out of a kind that a finding offers, if it does. */
export function fixOf<Do extends Fix['do']>(
  finding: Finding | undefined,
  what: Do,
): Extract<Fix, { readonly do: Do }> | undefined {
  return finding?.fix.options.find((fix): fix is Extract<Fix, { readonly do: Do }> => fix.do === what);
}

/** A finding in words. */
export function wordsOf(finding: Finding, units: 'mm' | 'in'): FindingEntry {
  const [entry] = findingEntries({ findings: [finding] }, { units, materials: defaultMaterials });
  if (entry === undefined) {
    throw new Error('a finding has an entry');
  }
  return entry;
}

/** The ways out of a finding in words. */
export function waysOut(finding: Finding | undefined, units: 'mm' | 'in'): readonly string[] {
  return finding === undefined ? [] : wordsOf(finding, units).fixes.map(({ text }) => text);
}
