import { type CSSResult, css, unsafeCSS } from 'lit';
import { artStyle } from '../draw/art-look.ts';

/** Look of the picture on the sheet; patterns and shapes tell things apart in black and white too. */
export const sheetLook: CSSResult = css`
  ${unsafeCSS(artStyle())}
  .grain-line {
    fill: none;
    stroke: #e6dcc6;
    stroke-width: 1;
  }
  .wood .block {
    stroke: #8a7f66;
    stroke-width: 1.4;
    stroke-dasharray: 7 3;
    vector-effect: non-scaling-stroke;
  }
  .art path {
    vector-effect: non-scaling-stroke;
    stroke-linejoin: round;
  }
  .obstacle {
    stroke: var(--ink);
    stroke-width: 1.2;
  }
  .obstacle.held {
    fill: var(--ink);
    fill-opacity: 0.28;
  }
  .obstacle.through {
    fill: var(--paper);
    stroke-width: 2;
  }
  .obstacle.in-back {
    fill: none;
    stroke-dasharray: 5 3;
  }
  .hatch-ground {
    fill: #fff;
  }
  .hatch-line {
    stroke: var(--orange);
    stroke-width: 2.4;
  }
  .halo {
    fill: none;
    stroke: #fff;
    stroke-width: 8;
    opacity: 0.9;
  }
  .chosen-outline {
    fill: none;
    stroke: var(--ink);
    stroke-width: 3.2;
  }
  .flag {
    cursor: pointer;
  }
  .flag line {
    stroke: var(--ink);
    stroke-width: 1.2;
  }
  .flag circle {
    fill: var(--ink);
    stroke: #fff;
    stroke-width: 1;
  }
  .flag rect {
    fill: #fff;
    stroke: var(--ink);
    stroke-width: 1.2;
  }
  .flag text {
    font: 600 0.833rem var(--sans);
    fill: var(--ink);
  }
  .flag.open rect {
    stroke-width: 2.4;
  }
  .flag.chosen rect {
    fill: var(--ink);
  }
  .flag.chosen text {
    fill: #fff;
  }
  .letters text,
  .letter {
    font: 600 0.867rem var(--sans);
    fill: var(--ink);
    paint-order: stroke;
    stroke: #fff;
    stroke-width: 3px;
  }
  .margin path {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.3;
  }
  .margin .fibres {
    stroke-width: 0.7;
  }
  .margin text {
    font: 0.8rem var(--sans);
    fill: var(--ink);
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 3px;
  }
`;
