import { formatArea, formatLength, formatVolume, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { html, type TemplateResult } from 'lit';
import { LightElement } from './light-element.ts';

/** The measures of a report in words, and what the reader had to say. */
export class MeasuresTable extends LightElement {
  static override properties = { report: { attribute: false }, unit: { type: String } };

  declare report: Report;
  declare unit: LengthUnit;

  protected override render(): TemplateResult {
    return html`
      <section class="slip" aria-label="Measures">
        <h2>Measures</h2>
        <table>
          <tbody>
            ${this.#rows().map(([what, value]) => html`<tr><th scope="row">${what}</th><td>${value}</td></tr>`)}
          </tbody>
        </table>
        ${this.#notices()}
        <p class="row">
          <button type="button" @click=${() => this.tell('save-report', null)}>Save the report (JSON)</button>
          <button type="button" @click=${() => print()}>Print the proof</button>
        </p>
      </section>
    `;
  }

  #rows(): readonly (readonly [string, string])[] {
    const { artwork, cut, strokes, endGrain, bleed, pour } = this.report;
    const { unit } = this;
    const [block] = bleed.blocks;
    const [colour] = pour.colours;
    const [minX, minY, maxX, maxY] = artwork.boundsMm;
    return [
      [
        'Artwork',
        `${formatLength(maxX - minX, unit)} × ${formatLength(maxY - minY, unit)}, ${formatArea(artwork.areaMm2, unit)}`,
      ],
      ['Size taken from', artwork.scaleSource],
      ['Will be cut', `${formatArea(cut.areaMm2, unit)}, ${formatVolume(cut.volumeMm3, unit)}`],
      ['Stays wood', formatArea(cut.leftStandingMm2, unit)],
      ['Wall', `${formatLength(cut.wallLengthMm, unit)} long, ${formatArea(cut.wallAreaMm2, unit)}`],
      [
        'Narrowest stroke',
        strokes.narrowestMm === null
          ? 'none'
          : `${formatLength(strokes.narrowestMm, unit)}, ${(strokes.narrowestToBit ?? 0).toFixed(2)} × the smallest bit`,
      ],
      [
        'Stroke narrower than that bit',
        `${formatLength(strokes.lengthNarrowerThanBitMm, unit)} of ${formatLength(strokes.lengthMm, unit)}`,
      ],
      ['End grain in the walls', `${Math.round(endGrain.wallFraction * 100)} %`],
      [
        'Colour travel along the fibres',
        block === undefined
          ? 'not known'
          : `${formatLength(block.travelMm.median, unit)} (${formatLength(block.travelMm.low, unit)} to ${formatLength(block.travelMm.high, unit)}; ${bleed.basis})`,
      ],
      [
        'Resin to mix',
        colour === undefined
          ? 'none'
          : `${colour.massG.toFixed(1)} g: ${colour.partAG.toFixed(1)} g A and ${colour.partBG.toFixed(1)} g B`,
      ],
    ];
  }

  #notices(): TemplateResult | string {
    const { notices } = this.report.artwork;
    if (notices.length === 0) {
      return '';
    }
    return html`
      <h3>What the reader says</h3>
      <ul class="notices">
        ${notices.map((notice) => html`<li>${notice.text}</li>`)}
      </ul>
    `;
  }
}
