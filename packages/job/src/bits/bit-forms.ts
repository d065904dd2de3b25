/** How each kind of bit is typed, for help texts and error messages. */
export const BIT_FORMS: readonly string[] = [
  'flat:1/8in',
  'ball:1/16in',
  'bull:1/4in:corner 1mm',
  'vee:60deg:1/2in',
  'vee:60deg:1/2in:tip 0.1mm',
  'vee:60deg:1/2in:tip radius 0.2mm',
  'taper:0.5mm:5deg:1/4in',
  'profile:1mm@0mm,3mm@2mm,3mm@10mm',
  'flat:1/8in:length 12mm',
];
