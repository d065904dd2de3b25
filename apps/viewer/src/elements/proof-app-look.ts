import { type CSSResult, css } from 'lit';

/** Look of the page: a bench, a job ticket, and one large sheet of paper with picture and remarks. */
export const proofAppLook: CSSResult = css`
  /* widths are asked of the page in its own letters, so that large text gets the layout of a small screen */
  :host {
    container-type: inline-size;
    /* what is left of the screen below the head, the name and the steps */
    --in-sight: max(32rem, calc(100vh - 14.2rem));
    min-height: 100vh;
    display: flex;
    flex-direction: column;
    gap: 0.9rem;
    padding: clamp(0.4rem, 1.2vw, 0.9rem);
  }
  nav {
    position: absolute;
  }
  .to-findings:focus {
    position: absolute;
    z-index: 2;
    padding: 0.5rem 0.9rem;
    background: var(--ink);
    color: #fff;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.2rem 1rem;
  }
  h1 {
    margin: 0;
    font: 400 1.75rem/1.1 var(--serif);
    letter-spacing: -0.01em;
  }
  header p {
    flex: 1 1 18rem;
  }
  .purpose.first {
    flex-basis: 30rem;
    max-width: 62rem;
  }
  main > name-field {
    grid-column: 1 / -1;
    padding: 0.1rem 0.2rem;
  }
  main > step-strip {
    grid-column: 1 / -1;
    min-width: 0;
  }
  .demo {
    margin: 0 1.2rem 0.5rem;
    padding-left: 0.7rem;
    border-left: 4px solid var(--blue);
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
  }
  .tools button {
    background: transparent;
  }
  .tools button:hover:not(:disabled) {
    background: var(--paper);
  }
  .tools button:disabled {
    border-color: var(--bench-edge);
  }
  main {
    flex: 1;
    display: grid;
    grid-template-columns: 18rem minmax(0, 1fr);
    gap: 0.9rem;
    min-height: 0;
  }
  .ticket {
    align-self: start;
    max-height: var(--in-sight);
    overflow-y: auto;
    padding: 1rem;
    background: #e9e4d2;
    border-top: 5px solid var(--ink);
  }
  .ticket > h2 {
    margin-bottom: 0.5rem;
  }
  summary h2 {
    /* beside the marker also where it needs two lines */
    display: inline;
  }
  lettering-form,
  kept-jobs {
    margin-top: 0.7rem;
  }
  .job {
    margin-top: 0.9rem;
    padding-top: 0.8rem;
    border-top: 1px solid var(--ink);
  }
  .job > summary {
    cursor: pointer;
  }
  .paper {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 23rem;
    min-height: min(44rem, var(--in-sight));
    max-height: var(--in-sight);
    background: var(--paper);
    box-shadow:
      0 0 0 1px rgb(26 34 44 / 12%),
      0 10px 26px -12px rgb(26 34 44 / 45%);
  }
  .paper:has(> .remarks[hidden]) {
    grid-template-columns: minmax(0, 1fr);
  }
  .picture {
    display: flex;
    flex-direction: column;
    min-width: 0;
    min-height: 0;
  }
  .title {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: baseline;
    gap: 0.2rem 1rem;
    min-height: 3.4rem;
    padding: 1rem 1.2rem 0.6rem;
  }
  .verdict {
    font: 1.35rem/1.3 var(--serif);
  }
  .verdict .tag {
    font-size: 1rem;
    margin-right: 0.3rem;
    vertical-align: 0.1em;
  }
  .not-drawn {
    margin: 0.4rem 0;
    padding-left: 0.7rem;
    border-left: 4px solid var(--ink);
    overflow-wrap: anywhere;
  }
  .not-drawn ul {
    margin: 0.2rem 0 0;
    padding-left: 1.1rem;
  }
  .busy,
  .trying {
    color: var(--ink-soft);
  }
  .before {
    flex-basis: 100%;
    padding: 0.35rem 0.7rem;
    border: 1.5px dashed var(--orange);
    background: var(--orange-wash);
  }
  .before .tag {
    margin-right: 0.2rem;
  }
  .paper.old {
    outline: 2px dashed var(--orange);
    outline-offset: -1px;
  }
  .paper:focus {
    outline: none;
  }
  .file b {
    margin-right: 0.5rem;
    color: var(--ink);
    font-weight: 600;
  }
  .file {
    flex-basis: 100%;
    font-size: 0.87rem;
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  proof-sheet {
    flex: 1;
    margin: 0 1.2rem;
    border: 1px solid var(--rule);
    min-height: 20rem;
  }
  sheet-legend {
    padding: 0.7rem 1.2rem 1rem;
    min-height: 2.6rem;
  }
  .blank {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    justify-items: center;
    gap: 1.1rem;
    margin: auto;
    padding: 1rem 1.5rem 3rem;
    max-width: 32rem;
    text-align: center;
  }
  .blank h2 {
    font-size: 1.9rem;
  }
  .blank sheet-legend {
    max-width: 100%;
    padding: 1rem clamp(0.5rem, 5%, 1.4rem);
    border: 1px solid var(--rule);
  }
  .remarks {
    padding: 1.05rem 1.2rem 1.2rem 0.4rem;
    overflow-y: auto;
  }
  .remarks:focus {
    outline: none;
  }
  .remarks > h2 {
    margin-bottom: 0.4rem;
  }
  notice-list,
  .remarks h3 {
    margin-top: 1.4rem;
  }
  .lead,
  .calendar {
    margin: 0.4rem 0;
  }
  footer {
    color: #333d47;
    font-size: 0.85rem;
    display: grid;
    gap: 0.3rem;
    max-width: 75rem;
  }
  .offline:empty {
    display: none;
  }
  .offline button {
    min-height: 1.8rem;
    padding: 0 0.5rem;
  }
  footer ul {
    margin: 0.3rem 0;
    padding-left: 1.1rem;
  }
  summary {
    cursor: pointer;
  }
  @container (max-width: 77rem) {
    .paper {
      grid-template-columns: minmax(0, 1fr);
      max-height: none;
    }
    proof-sheet {
      flex: none;
      height: min(60vh, 34rem);
    }
    .remarks {
      padding: 0.4rem 1.2rem 1.2rem;
      overflow: visible;
    }
  }
  @container (max-width: 49rem) {
    main {
      grid-template-columns: minmax(0, 1fr);
    }
    .ticket {
      max-height: none;
    }
    .title {
      padding: 0.8rem 0.8rem 0.5rem;
    }
    /* the picture stays in sight while its findings are read */
    .paper:not(:has(> .remarks[hidden])) .picture {
      display: contents;
    }
    proof-sheet {
      position: sticky;
      top: 0;
      z-index: 1;
      margin: 0;
      border-width: 1px 0;
      height: calc(62vw + 2.9rem);
      background: var(--paper);
      min-height: 15rem;
      max-height: 60vh;
    }
    sheet-legend,
    .remarks {
      padding-left: 0.8rem;
      padding-right: 0.8rem;
    }
    .tools {
      display: grid;
      grid-template-columns: repeat(auto-fit, minmax(min(4.7rem, 100%), 1fr));
      width: 100%;
    }
  }
  @media print {
    proof-sheet {
      position: static !important;
    }
    :host {
      padding: 0;
      display: block;
    }
    main,
    .paper {
      display: block;
      box-shadow: none;
      max-height: none;
      background: none;
    }
    .remarks {
      overflow: visible;
      padding: 0;
    }
    .remarks h2,
    .remarks h3 {
      break-after: avoid;
    }
    .title,
    sheet-legend {
      padding-left: 0;
      padding-right: 0;
    }
    proof-sheet {
      margin: 0;
      height: auto;
      min-height: 0;
      max-height: none;
      break-inside: avoid;
    }
    footer {
      margin-top: 1rem;
    }
  }
`;
