import { type CSSResult, css } from 'lit';

/** Look of the wide field for a name; the fonts are named in the style of the page, in the order of the page's fonts. */
export const nameFieldLook: CSSResult = css`
  form {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    align-items: baseline;
    gap: 0.2rem 1rem;
  }
  label[for='name'] {
    font: 1.12rem/1.25 var(--serif);
  }
  textarea {
    resize: none;
    overflow: hidden;
    padding: 0.1rem 0.2rem;
    border: 0;
    border-bottom: 2px solid var(--ink);
    border-radius: 0;
    background: transparent;
    font-size: 1.7rem;
    line-height: 1.35;
  }
  textarea::placeholder {
    color: var(--ink-soft);
    font: italic 1.05rem var(--serif);
    opacity: 1;
  }
  fieldset {
    grid-column: 2;
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 1.1rem;
    margin: 0;
    padding: 0;
    border: 0;
    min-width: 0;
  }
  .font {
    display: flex;
    align-items: center;
    gap: 0.4rem;
    min-height: 2.1rem;
    font-size: 1.08rem;
    cursor: pointer;
    overflow-wrap: anywhere;
  }
  .letters-0 {
    font-family: var(--serif);
  }
  .letters-1 {
    font-family: 'Sheet light', var(--sans);
  }
  .letters-2 {
    font-family: 'Sheet slab', var(--serif);
  }
  .letters-3 {
    font-family: 'Sheet script', cursive;
  }
  .letters-4 {
    font-family: 'Sheet variable', var(--sans);
  }
  @container (max-width: 40rem) {
    form {
      grid-template-columns: minmax(0, 1fr);
    }
    fieldset {
      grid-column: 1;
    }
  }
  @media (pointer: coarse) {
    .font {
      min-height: 44px;
    }
  }
`;
