import { bitSize } from '@pourproof/job';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import { GRADE_WORDS, gradeSize } from '@pourproof/wording';
import {
  type CSSResultGroup,
  css,
  html,
  LitElement,
  nothing,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import type { ArtName } from '../draw/art-shapes.ts';
import type { Layer } from '../draw/layer.ts';
import { woodTints } from '../draw/wood-tint.ts';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import type { SheetPicture } from '../model/sheet-picture.ts';
import { sheetLook } from './sheet-look.ts';

/** What the inks and patterns of the picture mean; only those that are on the sheet, all where it is blank. */
export class SheetLegend extends LitElement {
  static override properties = { picture: { attribute: false }, layer: {}, unit: {} };
  static override styles: CSSResultGroup = [
    shared,
    sheetLook,
    css`
      ul {
        display: flex;
        flex-wrap: wrap;
        gap: 0.25rem 1.2rem;
        margin: 0;
        padding: 0;
        list-style: none;
        font-size: 0.87rem;
      }
      li {
        display: flex;
        align-items: center;
        gap: 0.45rem;
      }
      :host([stacked]) ul {
        flex-direction: column;
        gap: 0.6rem;
        font-size: 1rem;
        text-align: left;
      }
      svg {
        flex: none;
        width: 30px;
        height: 16px;
      }
    `,
  ];

  declare picture: SheetPicture | null;
  declare layer: Layer;
  declare unit: LengthUnit;

  constructor() {
    super();
    this.picture = null;
    this.layer = 'cut';
    this.unit = 'mm';
  }

  protected override render(): TemplateResult {
    const { picture } = this;
    if (this.layer === 'levelling' && picture !== null) {
      return this.#levelling(picture);
    }
    // a blank sheet explains all that may come
    const has = (name: ArtName): boolean =>
      picture === null || picture.art.layers.cut.some((shape) => shape.name === name);
    return html`<ul aria-label="Legend">
      ${item(svg`<rect class="cut" x="1" y="1" width="28" height="14" />`, 'cut and filled')}
      ${
        picture !== null && picture.depthStepMm !== null
          ? item(
              svg`<rect class="cut" x="1" y="1" width="28" height="14" /><rect class="depth" x="5" y="4" width="20" height="8" />`,
              `lines of equal depth, ${bitSize(picture.depthStepMm, this.unit)} apart`,
            )
          : nothing
      }
      ${has('standing') ? item(HATCHED, 'stays wood: no bit of the job fits') : nothing}
      ${
        has('narrow')
          ? item(svg`<path class="narrow" d="M2 8h27" />`, 'stroke narrower than the smallest bit')
          : nothing
      }
      ${has('bleed-wall') ? item(svg`<path class="bleed-wall" d="M1 8h28" />`, 'wall at high risk of bleeding') : nothing}
      ${
        has('bleed-high')
          ? item(
              BAND,
              'face that colour may reach: to the line on every second board, to the dots on one in forty',
            )
          : nothing
      }
      ${
        picture === null || picture.blocks.some(({ outline }) => outline !== null)
          ? item(svg`<path class="block" d="M2 8h27" fill="none" />`, 'edge of a block')
          : nothing
      }
      ${picture === null ? nothing : obstacleItems(picture)} ${picture === null ? nothing : woodItems(picture)}
    </ul>`;
  }

  /** Strokes and areas by what the planned levelling leaves of them; only the grades that there are. */
  #levelling({ levelling }: SheetPicture): TemplateResult {
    return html`<ul aria-label="Legend">
      ${levelling.grades.map((each) =>
        item(
          svg`<path class=${each.grade === 'lost' || each.grade === 'spoilt' ? 'level-ground' : ''} d="M1 8h28" /><path class="level-${each.grade}" d="M1 8h28" />`,
          `${GRADE_WORDS[each.grade]}: ${gradeSize(each.lengthMm, each.areaCount, this.unit)}`,
        ),
      )}
      <li>under ${formatLength(levelling.planMm, this.unit)} off the face</li>
    </ul>`;
  }
}

const HATCHED: SVGTemplateResult = svg`
  <rect x="1" y="1" width="28" height="14" fill="#fff" />
  <path class="hatch-line" d="M1 9l8 -8M3 15l14 -14M11 15l14 -14M19 15l10 -10" />
  <rect class="standing" x="1" y="1" width="28" height="14" fill="none" />`;

const BAND: SVGTemplateResult = svg`
  <rect class="bleed-high" x="1" y="1" width="28" height="14" />
  <rect class="bleed-median" x="6" y="4" width="18" height="8" />`;

/** What the cut and the bit stay off, by how it is drawn. */
function obstacleItems({ obstacles }: SheetPicture): readonly TemplateResult[] {
  const forms = [
    ['held', 'clamp or hold-down', ({ kind }) => kind === 'clamp' || kind === 'hold-down'],
    [
      'through',
      'hole or groove through the board',
      ({ kind, isInBack }) => !isInBack && (kind === 'hole' || kind === 'groove'),
    ],
    ['in-back', 'hole or groove in the back', ({ isInBack }) => isInBack],
  ] as const satisfies readonly (readonly [
    string,
    string,
    (obstacle: SheetPicture['obstacles'][number]) => boolean,
  ])[];
  return forms
    .filter(([, , isForm]) => obstacles.some(isForm))
    .map(([form, words]) =>
      item(svg`<rect class="obstacle ${form}" x="2" y="2" width="26" height="12" />`, words),
    );
}

/** The woods of a glue-up by their tint and letter. */
function woodItems({ blocks }: SheetPicture): readonly TemplateResult[] {
  return woodTints(blocks).map(({ name, letter, colour }) =>
    item(
      svg`<path class="block" fill=${colour} d="M1 1h28v14h-28z" /><text class="letter" x="15" y="12.500" text-anchor="middle">${letter}</text>`,
      colour === 'none' ? `${name}, whose colour is not known` : name,
    ),
  );
}

function item(swatch: SVGTemplateResult, words: string): TemplateResult {
  return html`<li><svg class="wood" viewBox="0 0 30 16" aria-hidden="true">${swatch}</svg><span>${isolated(words)}</span></li>`;
}

customElements.define('sheet-legend', SheetLegend);
