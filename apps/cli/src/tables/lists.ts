import { BIT_FORMS, bitSize } from '@pourproof/job';
import { cutterSizes, resins, sealers, woods } from '@pourproof/materials';
import { FINDING_CODES } from '@pourproof/proof';
import { findingTitle } from '@pourproof/wording';

/** A name and what it means. */
export type ListRow = readonly [first: string, second: string];

/** What can be listed without the manual, by name: the words that flags take, and the codes of findings. */
export const LISTS: Readonly<Record<string, readonly ListRow[]>> = {
  woods: Object.entries(woods).map(([id, wood]): ListRow => [id, `${wood.name}, ${wood.botanical}`]),
  seals: Object.entries(sealers).map(([id, sealer]): ListRow => [id, sealer.name]),
  resins: Object.entries(resins).map(([id, resin]): ListRow => [id, resin.name]),
  bits: bitRows(),
  findings: FINDING_CODES.map((code): ListRow => [code, findingTitle(code)]),
};

/** The codes of all findings. */
export const CODES: readonly string[] = FINDING_CODES;

function bitRows(): readonly ListRow[] {
  const flat = cutterSizes.value.filter((size) => size.shape === 'flat');
  return [
    ...flat.map(
      (size): ListRow => [`flat:${size.label}`, `${bitSize(size.diameterMm, 'mm')}, a common size`],
    ),
    ...BIT_FORMS.filter((form) => !form.startsWith('flat')).map(
      (form): ListRow => [form, 'how such a bit is written'],
    ),
  ];
}
