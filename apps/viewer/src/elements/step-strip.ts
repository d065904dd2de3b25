import {
  type CSSResultGroup,
  css,
  html,
  LitElement,
  nothing,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import { emit } from './emit.ts';

/** All that was done on this job, in its order: each step can be gone to, those after the one that is shown are still there. */
export class StepStrip extends LitElement {
  static override properties = {
    steps: { attribute: false },
    at: { type: Number },
    isCut: { attribute: false },
  };
  static override styles: CSSResultGroup = [
    shared,
    css`
      nav {
        display: flex;
        align-items: center;
        gap: 0.5rem;
        min-width: 0;
      }
      ol {
        flex: 1;
        display: flex;
        align-items: center;
        gap: 0;
        min-width: 0;
        margin: 0;
        /* room for the ring of the focus */
        padding: 0.3rem 0.25rem;
        overflow-x: auto;
        scrollbar-width: thin;
        list-style: none;
      }
      li {
        flex: none;
        display: flex;
        align-items: center;
      }
      li + li::before {
        content: '';
        width: 0.9rem;
        border-top: 1.5px solid var(--ink-soft);
      }
      li button {
        background: transparent;
        border-color: var(--ink-soft);
        white-space: nowrap;
      }
      li button[aria-current] {
        background: var(--paper);
        border: 2px solid var(--ink);
        font-weight: 600;
      }
      .undone button:not(:hover) {
        border-style: dashed;
        color: #333d47;
      }
      button[aria-disabled='true'] {
        color: var(--ink-soft);
        border-color: var(--bench-edge);
        background: transparent;
        cursor: default;
      }
      nav > button {
        background: transparent;
      }
    `,
  ];

  /** What was done, in words. */
  declare steps: readonly string[];
  /** The step that is shown. */
  declare at: number;
  /** Whether older steps are no longer there. */
  declare isCut: boolean;

  constructor() {
    super();
    this.steps = [];
    this.at = 0;
    this.isCut = false;
  }

  protected override render(): TemplateResult {
    return html`<nav aria-label="What was done">
      ${this.#button('Undo', 'undo', this.at > 0)} ${this.#button('Redo', 'redo', this.at < this.steps.length - 1)}
      <ol class="runs" tabindex="-1">
        ${this.isCut ? html`<li class="soft">older steps are gone</li>` : nothing}
        ${this.steps.map(
          (told, step) => html`<li class=${step > this.at ? 'undone' : ''}>
            <button
              type="button"
              aria-current=${step === this.at ? 'step' : nothing}
              @click=${() => emit(this, 'step-chosen', { do: 'go-to', step })}
            >
              ${isolated(told)}
            </button>
          </li>`,
        )}
      </ol>
    </nav>`;
  }

  // without the page moving along
  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('at') || changed.has('steps')) {
      const list = this.renderRoot.querySelector('ol');
      const shown = list?.querySelector<HTMLElement>('[aria-current]')?.parentElement;
      if (list && shown) {
        list.scrollLeft = shown.offsetLeft - list.offsetLeft - (list.clientWidth - shown.offsetWidth) / 2;
      }
    }
  }

  /** A button that has nothing to do keeps the focus, so that keys can go on from it. */
  #button(name: string, act: 'undo' | 'redo', isOn: boolean): TemplateResult {
    return html`<button
      type="button"
      aria-disabled=${!isOn}
      @click=${() => isOn && emit(this, 'step-chosen', { do: act })}
    >
      ${name}
    </button>`;
  }
}

customElements.define('step-strip', StepStrip);
