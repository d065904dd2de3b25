import { type CSSResult, css } from 'lit';

/** Look of the list of findings. */
export const findingListLook: CSSResult = css`
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
    border-top: 1px solid var(--ink);
  }
  li {
    border-bottom: 1px solid var(--ink);
  }
  .head {
    display: grid;
    grid-template-columns: 2rem minmax(0, 1fr) auto;
    gap: 0.1rem 0.5rem;
    align-items: baseline;
    width: 100%;
    padding: 0.65rem 0.4rem;
    border: 0;
    border-radius: 0;
    background: none;
    text-align: left;
  }
  .head[aria-expanded='true'] {
    background: var(--paper-shade);
  }
  .head[aria-expanded='true'] .number {
    background: var(--ink);
    color: #fff;
  }
  .number {
    border: 1px solid var(--ink);
    border-radius: 2px;
    background: #fff;
    font-weight: 600;
    text-align: center;
  }
  .title {
    font: 1.05rem/1.3 var(--serif);
  }
  .title,
  .body,
  .sizes {
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .told:not(:empty) {
    margin-bottom: 0.6rem;
    padding: 0.35rem 0.7rem;
    border-left: 4px solid var(--blue);
    background: var(--paper-shade);
  }
  .sizes {
    grid-column: 2 / -1;
    color: var(--ink-soft);
    font-size: 0.87rem;
  }
  .body {
    padding: 0.3rem 0.5rem 0.9rem 0.5rem;
    background: var(--paper-shade);
  }
  .body > * + * {
    margin-top: 0.6rem;
  }
  .steps {
    display: flex;
    align-items: center;
    gap: 0.5rem;
  }
  .steps span {
    flex: 1;
    text-align: center;
    font-variant-numeric: tabular-nums;
  }
  ul {
    margin: 0.3rem 0 0;
    padding: 0;
    list-style: none;
  }
  ul li {
    display: flex;
    gap: 0.6rem;
    align-items: center;
    justify-content: space-between;
    padding: 0.3rem 0;
    border-bottom: 1px solid var(--rule);
  }
  ul li:last-child {
    border: 0;
  }
  ul button {
    flex: none;
  }
  h3 {
    margin: 0.6rem 0 0;
    font: 600 0.9rem var(--sans);
  }
  summary {
    cursor: pointer;
  }
  .none {
    padding: 0.7rem 0;
  }
  /* very large text on a phone */
  @container (max-width: 18rem) {
    .head {
      grid-template-columns: 2rem minmax(0, 1fr);
    }
    .steps {
      display: grid;
      grid-template-columns: auto auto;
      justify-content: space-between;
    }
    .steps span {
      grid-row: 1;
      grid-column: 1 / -1;
      text-align: left;
    }
    .head .tag,
    .sizes {
      grid-column: 1 / -1;
      justify-self: start;
    }
    ul li {
      flex-direction: column;
      align-items: start;
    }
    ul button {
      flex: initial;
    }
  }
  @media print {
    .body[hidden] {
      display: block !important;
    }
    .head {
      display: grid !important;
    }
    .body,
    .head[aria-expanded='true'] {
      background: none;
    }
    .head[aria-expanded='true'] .number {
      background: #fff;
      color: var(--ink);
    }
    .head {
      break-after: avoid;
    }
  }
`;
