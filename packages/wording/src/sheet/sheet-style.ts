/**
 * The look of the sheet: ink on paper with wide margins. Everything that matters is told by pattern, weight
 * and words; colour only helps. Widths are in mm on paper and give way on a phone.
 */
export const SHEET_STYLE = `
:root { color-scheme: light; --ink: #14213d; --soft: #5b6472; --rule: #aab0ba; --warm: #b3400a; --paper: #fffefb; --bench: #d9d0c1; }
* { box-sizing: border-box; }
html { background: var(--bench); }
body { margin: 0; color: var(--ink); font: 10pt/1.42 Charter, "Bitstream Charter", "Iowan Old Style", "Palatino Linotype", Palatino, Georgia, "DejaVu Serif", serif; }
.sheet { background: var(--paper); max-width: 210mm; margin: 8mm auto; padding: 14mm 14mm 12mm; box-shadow: 0 1px 2px #0003, 0 6px 24px #0002; }
header { display: grid; grid-template-columns: 1fr auto; gap: 4mm 8mm; align-items: start; border-bottom: 0.7mm solid var(--ink); padding-bottom: 4mm; }
.kind { margin: 0; font-size: 8.5pt; letter-spacing: 0.14em; text-transform: uppercase; color: var(--soft); }
h1 { margin: 0.5mm 0 0; font-size: 22pt; line-height: 1.12; font-weight: 600; overflow-wrap: anywhere; }
.stamp { border: 0.9mm solid var(--ink); padding: 1.6mm 5mm 1.8mm; text-align: center; font-weight: 700; font-size: 17pt; line-height: 1.1; letter-spacing: 0.08em; text-transform: uppercase; margin: 0; }
.stamp small { display: block; font-size: 8pt; font-weight: 400; letter-spacing: 0.02em; text-transform: none; }
.stamp.stop { background: var(--ink); color: var(--paper); }
.stamp.caution { border-style: double; border-width: 1.4mm; }
.lead { grid-column: 1 / -1; margin: 0; font-size: 11pt; }
.not-drawn { border: 0.5mm solid var(--ink); border-left-width: 2mm; margin-top: 4mm; padding: 1.5mm 4mm 2mm; break-inside: avoid; }
.not-drawn h2 { margin: 0; border: 0; padding: 0; font-size: 11pt; }
.not-drawn ul { margin: 0.5mm 0 0; padding-left: 4.5mm; }
h2 { margin: 7mm 0 2mm; font-size: 12.5pt; font-weight: 600; border-bottom: 0.25mm solid var(--rule); padding-bottom: 0.8mm; break-after: avoid; }
figure { margin: 5mm 0 0; break-inside: avoid; }
figure svg.picture { display: block; max-width: 100%; height: auto; margin: 0 auto; }
figcaption { margin-top: 2.5mm; font-size: 8.5pt; color: var(--soft); }
.key { display: flex; flex-wrap: wrap; gap: 1.2mm 6mm; list-style: none; margin: 3mm 0 0; padding: 0; font-size: 8.5pt; color: var(--ink); }
.key li { display: flex; align-items: center; gap: 1.8mm; }
.key svg { flex: none; }
table { width: 100%; border-collapse: collapse; font-variant-numeric: tabular-nums lining-nums; }
th, td { text-align: left; vertical-align: top; padding: 1.1mm 3mm 1.1mm 0; border-bottom: 0.2mm solid var(--rule); }
th { font-weight: 600; font-size: 8.5pt; color: var(--soft); }
tbody th { color: var(--ink); font-size: inherit; font-weight: 400; white-space: nowrap; }
.columns .facts th { white-space: normal; width: 36%; overflow-wrap: anywhere; }
.amount { font-weight: 600; }
.remark { color: var(--soft); font-size: 8.8pt; }
.sub { padding-left: 4mm; }
.columns { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 0 9mm; align-items: start; }
tr { break-inside: avoid; }
.number { display: inline-block; min-width: 6mm; height: 6mm; line-height: 5.5mm; padding: 0 1mm; border: 0.3mm solid var(--ink); border-radius: 3mm; text-align: center; font: 600 8.5pt/5.4mm "Helvetica Neue", Arial, "Liberation Sans", sans-serif; background: var(--paper); }
.finding { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 6mm; padding: 3.5mm 0; border-bottom: 0.2mm solid var(--rule); break-inside: avoid; }
.finding h3 { margin: 0; font-size: 11pt; font-weight: 600; }
.finding p { margin: 1mm 0 0; }
.finding ul { margin: 1.2mm 0 0; padding-left: 0; list-style: none; }
.finding li { padding-left: 5mm; text-indent: -5mm; }
.finding li::before { content: "\\2192"; display: inline-block; width: 5mm; text-indent: 0; }
.grade { font: 700 7.5pt/1 "Helvetica Neue", Arial, "Liberation Sans", sans-serif; letter-spacing: 0.08em; text-transform: uppercase; border: 0.3mm solid var(--ink); padding: 0.5mm 1.4mm; vertical-align: 0.5mm; }
.grade.stop { background: var(--ink); color: var(--paper); }
.why, .basis, .places { color: var(--soft); font-size: 9pt; }
.loupes { display: flex; gap: 3mm; align-items: start; }
.loupe { margin: 0; text-align: center; font-size: 8pt; color: var(--soft); }
.loupe svg { display: block; width: 25mm; height: 25mm; border: 0.5mm solid var(--ink); border-radius: 50%; margin-bottom: 0.8mm; }
.care { margin: 0; padding-left: 5mm; font-size: 9pt; }
.care li { margin: 0.8mm 0; }
.care cite { color: var(--soft); }
.signing { display: grid; grid-template-columns: 2fr 1fr 1fr; gap: 6mm; margin-top: 9mm; font-size: 8.5pt; color: var(--soft); break-inside: avoid; }
.signing span { border-top: 0.25mm solid var(--ink); padding-top: 1mm; margin-top: 7mm; }
footer { margin-top: 5mm; font-size: 8pt; color: var(--soft); }
.outline { fill: none; stroke: var(--ink); stroke-width: 0.8px; vector-effect: non-scaling-stroke; }
.depth { fill: none; stroke: #3d5a80; stroke-width: 0.35px; vector-effect: non-scaling-stroke; }
.cut-edge { fill: none; stroke: #3d5a80; stroke-width: 0.6px; vector-effect: non-scaling-stroke; }
.obstacle { stroke: var(--ink); stroke-width: 1.2px; vector-effect: non-scaling-stroke; }
.obstacle.held { fill: var(--ink); fill-opacity: 0.28; }
.obstacle.through { fill: var(--paper); stroke-width: 2px; }
.obstacle.in-back { fill: none; stroke-dasharray: 4 2.5; }
.standing { fill: var(--ink); }
.narrow { fill: none; stroke: var(--paper); stroke-width: 1.5px; stroke-linecap: round; stroke-dasharray: 0.1 3.4; vector-effect: non-scaling-stroke; }
.narrow-ground { fill: none; stroke: var(--ink); stroke-width: 2.8px; stroke-linecap: round; stroke-linejoin: round; vector-effect: non-scaling-stroke; }
.bleed { fill: none; stroke: var(--warm); stroke-width: 4.4px; stroke-dasharray: 0.9 2; vector-effect: non-scaling-stroke; }
.pale { fill: #eceef2; stroke: var(--rule); stroke-width: 0.6px; vector-effect: non-scaling-stroke; }
.level-ground, .level-lost, .level-spoilt, .level-close, .level-holds, .level-uncut { fill: none; stroke: var(--ink); stroke-width: 4.4px; stroke-linejoin: round; vector-effect: non-scaling-stroke; }
.level-lost { stroke: var(--paper); stroke-width: 2.4px; stroke-dasharray: 2 2.4; }
.level-spoilt { stroke: var(--paper); stroke-width: 2.4px; }
.level-close { stroke-width: 1.8px; stroke-dasharray: 5 3; }
.level-holds { stroke-width: 0.8px; }
.level-uncut { stroke-width: 1.6px; stroke-dasharray: 0.4 3.2; stroke-linecap: round; }
.level-flag { fill: var(--ink); stroke: var(--ink); stroke-width: 1px; stroke-linejoin: round; vector-effect: non-scaling-stroke; }
.fibres { stroke: #cdbfa6; }
.mark text, .bar text { font-family: "Helvetica Neue", Arial, "Liberation Sans", sans-serif; fill: var(--ink); }
.mark .disc { transform-box: fill-box; transform-origin: center; }
@media (max-width: 640px) {
  body { font-size: 12pt; }
  .sheet { margin: 0; padding: 5mm 4mm; box-shadow: none; }
  header { grid-template-columns: 1fr; }
  .stamp { justify-self: start; }
  .finding { grid-template-columns: 1fr; }
  .loupes { margin-top: 3mm; }
  .mark .disc { transform: scale(1.7); }
  .bar text { transform-box: fill-box; transform-origin: left bottom; transform: scale(1.7); }
  .columns { grid-template-columns: 1fr; }
  .facts th { white-space: normal; width: 36%; }
  .overview thead { display: none; }
  .overview tr { display: grid; grid-template-columns: 10mm 1fr auto; border-bottom: 0.2mm solid var(--rule); padding: 1.5mm 0; }
  .overview td { border: 0; padding: 0; }
  .overview td:nth-child(4) { grid-column: 2 / 4; }
  .overview td:nth-child(4)::after { content: attr(data-limit); font-weight: 400; color: var(--soft); }
  .overview td:nth-child(n + 5) { display: none; }
  .signing { grid-template-columns: 1fr; gap: 2mm; }
  .bench .steps th { white-space: normal; }
  .bench .watch { columns: 1; }
  .bench .mix { display: block; overflow-x: auto; font-size: 8pt; }
  .bench .steps .remark { display: none; }
  .bench .steps .amount { white-space: normal; }
}
.bench { font-size: 9.2pt; line-height: 1.32; }
.bench h3 { margin: 3mm 0 0.6mm; font-size: 10pt; font-weight: 600; }
.bench .columns .facts th { width: 44%; }
.bench .watch { columns: 2; column-gap: 9mm; list-style: none; margin: 0; padding: 0; font-size: 8.5pt; }
.bench .watch li { break-inside: avoid; padding: 0.4mm 0; }
.bench .brief { font-size: 8pt; line-height: 1.2; }
.bench .brief li { padding: 0.2mm 0; }
.bench .remark { font-size: 8pt; line-height: 1.25; }
.bench td, .bench th { padding: 0.6mm 2mm 0.6mm 0; }
.bench .steps th { white-space: nowrap; }
.bench .steps .amount { white-space: nowrap; }
.bench .tick { display: inline-block; width: 2.6mm; height: 2.6mm; border: 0.3mm solid var(--ink); margin-right: 1.5mm; }
.bench .care { font-size: 8pt; line-height: 1.25; }
.bench .signing { margin-top: 1mm; }
.bench .signing span { margin-top: 5.5mm; }
@page { margin: 12mm 13mm; }
@media print {
  .bench { break-before: page; break-inside: avoid; break-after: page; }
  .bench h2 { margin-top: 0; }
  :root { --paper: #fff; }
  html { background: none; }
  body { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
  .sheet { margin: 0; padding: 0; max-width: none; box-shadow: none; break-after: page; }
  .sheet:last-of-type { break-after: auto; }
}
`;
