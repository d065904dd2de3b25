import { BIT_FORMS, bitSize } from '@pourproof/job';
import {
  cutterSizes,
  resins,
  sealers,
  spreadBetweenBoards,
  spreadWithinBoard,
  surprise,
  varianceShares,
  woods,
} from '@pourproof/materials';
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
  priors: priorRows(),
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

/** What is believed of colour travel before any coupon. */
function priorRows(): readonly ListRow[] {
  const { share, factor } = surprise.value;
  const { wood, treatment, board } = varianceShares.value;
  const third = (part: number): string => `${Math.round(100 * part)} %`;
  return [
    [
      'board-spread',
      `${spreadBetweenBoards.value}, or what --board-spread says: standard deviation of the natural logarithm of colour travel between boards of one wood`,
    ],
    ['slot-spread', `${spreadWithinBoard.value} until slots of a coupon tell: the same within one board`],
    [
      'surprise',
      `${100 * share} % of boards, where streaks are measured: their board-spread is ${factor} times as wide`,
    ],
    [
      'shares',
      `of the variance between boards ${third(wood)} is the wood's, ${third(treatment)} that of seal and resin, ${third(board)} the board's`,
    ],
    ['origin', 'all four are our own choice: no measured streak lengths were found (own-prior)'],
  ];
}
