import { type CSSResult, css } from 'lit';

/** Look that all elements share: controls, focus, words for a reader of the screen only. */
export const shared: CSSResult = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: block;
  }
  [hidden] {
    display: none !important;
  }
  h2,
  h3 {
    margin: 0;
    font: 400 1.12rem/1.25 var(--serif);
  }
  p {
    margin: 0;
  }
  a {
    color: var(--blue);
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
  }
  button {
    cursor: pointer;
    border: 1px solid var(--ink);
    border-radius: 2px;
    background: var(--paper);
    padding: 0.3rem 0.7rem;
    min-height: 2.1rem;
  }
  button:hover:not(:disabled) {
    background: var(--blue-wash);
  }
  button:disabled {
    cursor: default;
    color: var(--ink-soft);
    border-color: var(--rule);
  }
  button.main {
    background: var(--blue);
    border-color: var(--blue);
    color: #fff;
  }
  button.main:hover:not(:disabled) {
    background: var(--ink);
  }
  input:is([type='checkbox'], [type='radio']) {
    flex: none;
    inline-size: 1.05em;
    block-size: 1.05em;
  }
  input:not([type='range'], [type='checkbox'], [type='radio']),
  select,
  textarea {
    width: 100%;
    min-width: 0;
    min-height: 2.1rem;
    padding: 0.25rem 0.45rem;
    border: 1px solid #7b858e;
    border-radius: 2px;
    background: #fff;
  }
  input[aria-invalid='true'] {
    border: 2px solid var(--orange);
    background: var(--orange-wash);
  }
  input[type='range'],
  input[type='checkbox'],
  input[type='radio'] {
    accent-color: var(--blue);
  }
  :focus-visible {
    outline: 3px solid var(--blue);
    outline-offset: 2px;
  }
  .unseen:not(:focus, :focus-within) {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .soft {
    color: var(--ink-soft);
    font-size: 0.87rem;
  }
  .print-only {
    display: none;
  }
  @media print {
    .print-only {
      display: block;
    }
    button,
    .no-print {
      display: none !important;
    }
  }
`;
