import { type CSSResult, css } from 'lit';

/** Look of the job ticket. */
export const jobFormLook: CSSResult = css`
  form {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.8rem;
  }
  .group summary {
    cursor: pointer;
    padding: 0.3rem 0;
  }
  .group {
    border-top: 1px solid #b9b39b;
  }
  .group:last-of-type {
    border-bottom: 1px solid #b9b39b;
  }
  .fields {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.8rem;
    padding: 0.3rem 0 0.9rem;
  }
  label,
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.15rem;
  }
  fieldset {
    display: grid;
    gap: 0.35rem;
    margin: 0;
    padding: 0;
    border: 0;
    min-width: 0;
  }
  legend {
    padding: 0;
    margin-bottom: 0.15rem;
  }
  .bit {
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 0.35rem;
  }
  .bit .problem {
    grid-column: 1 / -1;
  }
  .pair > .row {
    grid-column: 1 / -1;
  }
  .pair {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(5.5rem, 100%), 1fr));
    gap: 0.6rem;
  }
  .grain {
    display: grid;
    grid-template-columns: minmax(2rem, 1fr) minmax(0, 4.6rem) auto;
    gap: 0.5rem;
    align-items: center;
  }
  .grain input[type='range'] {
    min-width: 0;
    width: 100%;
  }
  .units {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1rem;
  }
  .units legend {
    width: 100%;
  }
  label,
  .soft,
  .problem {
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .fields > *,
  .pair > * {
    min-width: 0;
  }
  .tick,
  .units label {
    display: flex;
    gap: 0.35rem;
    align-items: center;
  }
  .problem {
    font-size: 0.87rem;
    font-weight: 600;
    color: var(--orange);
  }
  .pair:not(:has(job-field)) {
    display: none;
  }
  .problem:empty {
    display: none;
  }
`;
