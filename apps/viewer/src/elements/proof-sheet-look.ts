import { type CSSResult, css } from 'lit';

/** Look of the sheet and of the controls on it. */
export const proofSheetLook: CSSResult = css`
  :host {
    position: relative;
    min-height: 0;
  }
  .sheet {
    position: absolute;
    inset: 0;
    overflow: hidden;
    background: var(--paper);
    cursor: grab;
    touch-action: pan-y;
  }
  .sheet.close {
    touch-action: none;
  }
  .sheet:active {
    cursor: grabbing;
  }
  .sheet:focus-visible {
    outline-offset: -3px;
  }
  svg {
    display: block;
    width: 100%;
    height: 100%;
    user-select: none;
    -webkit-user-select: none;
  }
  .zoom,
  .layers {
    position: absolute;
    top: 0.6rem;
    display: flex;
  }
  .zoom {
    right: 0.6rem;
  }
  .layers {
    left: 0.6rem;
  }
  .layers button {
    padding: 0.2rem 0.6rem;
    margin-right: -1px;
  }
  .layers button[aria-pressed='true'] {
    background: var(--ink);
    color: #fff;
  }
  .zoom button {
    min-width: 2.3rem;
    padding: 0.2rem 0.5rem;
    margin-left: -1px;
  }
  @media (max-width: 759px) {
    /* the controls would cover too much of a small sheet */
    .sheet {
      top: 2.9rem;
      border-top: 1px solid var(--rule);
    }
    .zoom,
    .layers {
      top: 0.4rem;
    }
  }
  @media print {
    .sheet {
      position: static;
    }
    svg {
      height: auto;
      max-height: 120mm;
    }
    .everywhere {
      display: none;
    }
  }
`;
