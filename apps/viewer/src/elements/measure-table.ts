import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { shared } from '../look/shared.ts';

type Row = readonly [name: string, value: string, remark: string];

/** What was measured, as a table. */
export class MeasureTable extends LitElement {
  static override properties = { report: { attribute: false }, unit: {} };
  static override styles: CSSResultGroup = [
    shared,
    css`
      table {
        width: 100%;
        border-collapse: collapse;
        font-size: 0.93rem;
      }
      th,
      td {
        padding: 0.25rem 0;
        border-bottom: 1px solid var(--rule);
        text-align: left;
        vertical-align: baseline;
        font-weight: 400;
      }
      td {
        text-align: right;
        font-variant-numeric: tabular-nums;
      }
      td span {
        display: block;
      }
    `,
  ];

  declare report: Report | null;
  declare unit: LengthUnit;

  constructor() {
    super();
    this.report = null;
    this.unit = 'mm';
  }

  protected override render(): TemplateResult | typeof nothing {
    return this.report === null
      ? nothing
      : html`<table>
          <tbody>
            ${measureRows(this.report, this.unit).map(
              ([name, value, remark]) => html`<tr>
                <th scope="row">${name}</th>
                <td>${value}${remark === '' ? nothing : html` <span class="soft">${remark}</span>`}</td>
              </tr>`,
            )}
          </tbody>
        </table>`;
  }
}

function measureRows(
  { artwork, cut, strokes, endGrain, bleed, pour }: Report,
  unit: LengthUnit,
): readonly Row[] {
  const [left, top, right, bottom] = artwork.boundsMm;
  const { narrowestMm, narrowestToBit } = strokes;
  const travel = bleed.blocks[0]?.travelMm;
  const share = artwork.areaMm2 > 0 ? (100 * cut.leftStandingMm2) / artwork.areaMm2 : 0;
  return [
    [
      'Size',
      `${formatLength(right - left, unit)} × ${formatLength(bottom - top, unit)}`,
      artwork.scaleSource,
    ],
    ['Artwork', formatArea(artwork.areaMm2, unit), ''],
    ['Cut', formatArea(cut.areaMm2, unit), ''],
    ['Stays wood', formatArea(cut.leftStandingMm2, unit), `${share.toFixed(1)} % of the artwork`],
    [
      'Narrowest stroke',
      narrowestMm === null ? 'none' : formatLength(narrowestMm, unit),
      narrowestToBit === null ? '' : `${narrowestToBit.toFixed(2)} × the smallest bit`,
    ],
    ['End grain in the walls', `${(100 * endGrain.wallFraction).toFixed(0)} %`, ''],
    ...(travel === undefined
      ? []
      : [
          [
            'Colour travel along fibres',
            `about ${formatLength(travel.median, unit)}`,
            `${formatLength(travel.low, unit)} to ${formatLength(travel.high, unit)}; ${bleed.basis === 'prior' ? 'a prior, no coupon yet' : `calibrated with ${bleed.coupons} coupons`}`,
          ] as const,
        ]),
    ...pour.colours.map(
      ({ name, massG, partAG, partBG, uncertaintyPct }): Row => [
        name === 'all' ? 'Resin to mix' : `Resin to mix, ${name}`,
        `${massG} g`,
        `A ${partAG} g + B ${partBG} g; ± ${uncertaintyPct.toFixed(0)} %`,
      ],
    ),
  ];
}

customElements.define('measure-table', MeasureTable);
