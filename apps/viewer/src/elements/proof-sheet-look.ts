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
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    user-select: none;
    -webkit-user-select: none;
  }
  .art-canvas {
    position: absolute;
    inset: 0 auto auto 0;
    max-width: none;
    transform-origin: 0 0;
    will-change: transform;
  }
  .controls {
    position: absolute;
    inset: 0.6rem 0.6rem auto;
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0.3rem;
    pointer-events: none;
  }
  .zoom,
  .layers {
    display: flex;
    pointer-events: auto;
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
  @container (max-width: 49rem) {
    /* the controls would cover too much of a small sheet */
    .frame {
      display: flex;
      flex-direction: column;
      height: 100%;
    }
    .controls {
      position: static;
      order: -1;
      padding: 0.4rem 0.6rem;
      border-bottom: 1px solid var(--rule);
    }
    .sheet {
      position: relative;
      inset: auto;
      flex: 1 1 8rem;
      min-height: 0;
    }
    svg {
      position: absolute;
      inset: 0;
    }
  }
  @media print {
    .frame {
      display: block;
      height: auto;
    }
    .sheet {
      position: static;
    }
    svg {
      position: static;
      height: auto;
      max-height: 120mm;
    }
    .everywhere {
      display: none;
    }
  }
`;
