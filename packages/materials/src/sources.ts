import type { Status } from './cited.ts';

/** Id of a source; every row of every table names at least one. */
export type SourceId =
  | 'hard-maple-trade-page'
  | 'flooring-booklet'
  | 'iawa-1989'
  | 'alden-charcoal-id'
  | 'panshin-dezeeuw'
  | 'hoadley-1990'
  | 'forestry-course'
  | 'tyloses-trade-page'
  | 'thomas-hickory'
  | 'mahogany-table'
  | 'teak-trade-page'
  | 'siau-1984'
  | 'birch-conductivity'
  | 'zimmermann-jeje'
  | 'mendoza-2010'
  | 'lucas-1918'
  | 'washburn-1921'
  | 'cheng-1994'
  | 'castro-macosko'
  | 'dearlove-1978'
  | 'jankowska-2018'
  | 'resin-kit-manual'
  | 'resin-temperature-page'
  | 'resin-chemistry-page'
  | 'resin-data-sheets'
  | 'pour-depth-pages'
  | 'recoat-pages'
  | 'minty-2018'
  | 'sharma-2005'
  | 'wood-difference-scale'
  | 'texture-and-lightness'
  | 'wood-descriptions'
  | 'inlay-technique'
  | 'bit-trade-pages'
  | 'planer-trade-pages'
  | 'grit-trade-pages'
  | 'oil-and-epoxy-page'
  | 'osha-wood-dust'
  | 'hse-rr79'
  | 'oshwiki-epoxy'
  | 'flash-point-tables'
  | 'cfr-21-175-300'
  | 'common-practice'
  | 'from-memory'
  | 'own-inference'
  | 'own-prior'
  | 'computed-here'
  | 'maker-entry'
  | 'own-coupons';

/** One source of numbers or of a formula. */
export interface Source {
  /** What it is, so that a reader can find it. */
  readonly title: string;
  readonly year?: number;
  /** Page, table, volume or public address. */
  readonly place?: string;
  /** `seen` where it was read (a note says if only the abstract was), else how it is known. */
  readonly status: Status;
  readonly note?: string;
}

/** All sources by id. Rows that cite a trade page cite it as a witness of practice, not as an authority. */
export const sources: Readonly<Record<SourceId, Source>> = {
  'hard-maple-trade-page': { title: 'Public trade pages on hard maple', status: 'seen' },
  'flooring-booklet': {
    title: 'A flooring association booklet on imported species',
    status: 'seen',
    note: 'For padauk it prints 1725 lbf in one place and 2219 lbf in another.',
  },
  'iawa-1989': {
    title: 'IAWA list of microscopic features for hardwood identification',
    year: 1989,
    place: 'features 3 to 5 and 40 to 43',
    status: 'seen',
  },
  'alden-charcoal-id': {
    title: 'H. Alden, Wood & Charcoal Identification: lists by porosity and species pages',
    place: 'apps.jefpat.maryland.gov/woodandcharcoalid',
    status: 'seen',
  },
  'panshin-dezeeuw': { title: 'Panshin & de Zeeuw, Textbook of Wood Technology', status: 'memory' },
  'hoadley-1990': { title: 'R. B. Hoadley, Identifying Wood', year: 1990, status: 'memory' },
  'forestry-course': { title: 'A public forestry course page on wood identification', status: 'seen' },
  'tyloses-trade-page': { title: 'A public trade page on tyloses in white oak', status: 'seen' },
  'thomas-hickory': {
    title: 'Thomas, on vessels, tyloses and pits of hickory, Wood and Fiber Science',
    place: 'wfs.swst.org, article 1859',
    status: 'seen',
    note: 'Abstract only.',
  },
  'mahogany-table': {
    title: 'A public handbook table of mahogany pores: medium-large, some gum',
    place: 'table 2.1',
    status: 'seen',
  },
  'teak-trade-page': { title: 'A public trade page on teak', status: 'seen' },
  'siau-1984': {
    title: 'J. F. Siau, Transport Processes in Wood, Springer',
    year: 1984,
    place: 'chapter 2, doi 10.1007/978-3-642-69213-0_2',
    status: 'seen',
    note: 'Abstract only; heartwood is nearly always much less permeable than sapwood.',
  },
  'birch-conductivity': {
    title: 'A study of the axial conductivity of birch: a fifth of the vessels end within 20 mm',
    place: 'scilit.net/publications/3a6e94a1e1180b9eaabae59a4ae5ffb5',
    status: 'seen',
    note: 'Abstract only; the authors are not shown there.',
  },
  'zimmermann-jeje': {
    title: 'M. H. Zimmermann & A. A. Jeje, Vessel-length distribution in stems of some American woody plants',
    year: 1981,
    place: 'Canadian Journal of Botany 59, p. 1882',
    status: 'seen',
    note: 'Abstract only: in red oak and white ash the longest vessels are often as long as the stem; in diffuse-porous trees about 1 m, most far shorter.',
  },
  'mendoza-2010': {
    title: 'Mendoza et al., penetration of a hardening adhesive in hardwood',
    year: 2010,
    place: 'arXiv 1007.0761',
    status: 'seen',
    note: 'Abstract only; one vessel with a hardening fluid and one free network parameter.',
  },
  'lucas-1918': { title: 'R. Lucas, Kolloid-Zeitschrift 23', year: 1918, place: 'p. 15', status: 'memory' },
  'washburn-1921': {
    title: 'E. W. Washburn, The dynamics of capillary flow, Physical Review 17',
    year: 1921,
    place: 'p. 273',
    status: 'seen',
    note: 'The formula was read on a public page.',
  },
  'cheng-1994': {
    title: 'Cheng et al., viscosity of amine-cured epoxy (dual Arrhenius), J. Materials Science 29',
    year: 1994,
    place: 'p. 721',
    status: 'seen',
    note: 'Abstract only.',
  },
  'castro-macosko': {
    title: 'Castro & Macosko, viscosity up to the gel point as a power law',
    year: 1980,
    status: 'memory',
  },
  'dearlove-1978': {
    title: 'T. J. Dearlove, surface tension of amine-catalysed epoxy, J. Applied Polymer Science 22',
    year: 1978,
    place: 'p. 2509, doi 10.1002/app.1978.070220910',
    status: 'seen',
    note: 'Abstract only.',
  },
  'jankowska-2018': {
    title: 'Jankowska, on sanding and wetting of wood',
    year: 2018,
    status: 'seen',
    note: 'Abstract only.',
  },
  'resin-kit-manual': {
    title: 'An aircraft kit manual on epoxy: viscosity about halves per 5 °C',
    place: 'p. 22',
    status: 'seen',
  },
  'resin-temperature-page': {
    title: 'Public pages on temperature and epoxy: cure time halves per 10 °C (18 °F)',
    status: 'seen',
  },
  'resin-chemistry-page': { title: 'A public page on pot life, mass and heat of epoxy', status: 'seen' },
  'resin-data-sheets': {
    title: 'Ranges over data sheets of epoxy resins by class',
    status: 'memory',
    note: 'No maker is named; the label of the resin at hand comes first.',
  },
  'pour-depth-pages': {
    title: 'Public pages on epoxy depth per pour: coating 1/8 to 1/4 in, casting 1/2 to 2 in',
    status: 'seen',
  },
  'recoat-pages': {
    title: 'Public pages on recoating epoxy: blush after about a day; 24 h and 120 to 220 grit',
    status: 'seen',
  },
  'minty-2018': {
    title: 'Minty et al., measuring the cure shrinkage of epoxy',
    year: 2018,
    status: 'seen',
    note: 'Abstract only: methods, not the values used here.',
  },
  'sharma-2005': {
    title:
      'G. Sharma, W. Wu & E. N. Dalal, The CIEDE2000 color-difference formula, Color Research & Application 30',
    year: 2005,
    place: 'p. 21, table 1',
    status: 'seen',
    note: 'The 34 pairs were read in full in a public test-data file.',
  },
  'wood-difference-scale': {
    title:
      'A scale of colour differences of wood: below 3 small, below 6 medium, below 12 large, beyond it another colour',
    place: 'Journal of the Korean Wood Science and Technology 50(4), p. 283',
    status: 'seen',
  },
  'texture-and-lightness': {
    title: 'Montag & Berns, lightness tolerances of textured samples: almost twice those of plain ones',
    status: 'seen',
    note: 'Abstract only.',
  },
  'wood-descriptions': {
    title: 'H. G. Richter & M. J. Dallwitz, Commercial timbers: vessel diameters and numbers by genus',
    place: 'delta-intkey.com/wood/en/www',
    status: 'seen',
    note: 'By genus or pair of species: a board may differ by 30 % in diameter and by half in number.',
  },
  'inlay-technique': {
    title: 'A woodworking magazine technique on adding an epoxy inlay',
    status: 'seen',
  },
  'bit-trade-pages': { title: 'Public trade pages on router bits for lettering', status: 'seen' },
  'planer-trade-pages': { title: 'Public trade pages on how much wood a planer takes off', status: 'seen' },
  'grit-trade-pages': { title: 'Public trade pages on grit sequences', status: 'seen' },
  'oil-and-epoxy-page': { title: 'A public trade page on epoxy over mineral oil', status: 'seen' },
  'osha-wood-dust': {
    title: 'Occupational Safety and Health Administration, wood dust: evaluation',
    place: 'osha.gov/SLTC/wooddust/evaluation.html',
    status: 'seen',
  },
  'hse-rr79': {
    title: 'Health and Safety Executive, research report 79 (epoxy and skin)',
    place: 'RR79',
    status: 'seen',
  },
  'oshwiki-epoxy': {
    title: 'European Agency for Safety and Health at Work, OSHwiki article on epoxy',
    place: 'oshwiki.osha.europa.eu',
    status: 'seen',
  },
  'flash-point-tables': { title: 'Public safety tables of flash points', status: 'seen' },
  'cfr-21-175-300': {
    title: 'Code of Federal Regulations, 21 CFR 175.300, resinous and polymeric coatings',
    place: '21 CFR 175.300',
    status: 'seen',
  },
  'common-practice': {
    title: 'Common practice of the workshop',
    status: 'practice',
    note: 'No published source.',
  },
  'from-memory': { title: 'From memory', status: 'memory', note: 'Not checked against a source.' },
  'own-inference': { title: 'Our own reasoning', status: 'inference', note: 'No source.' },
  'own-prior': {
    title: 'Our own starting guess, set to reproduce common practice',
    status: 'prior',
    note: 'Not measured; coupons on the board at hand replace it.',
  },
  'computed-here': {
    title: 'Computed from other rows',
    status: 'computed',
    note: 'A test repeats the computation.',
  },
  'maker-entry': { title: 'Entered by the maker', status: 'entered', note: 'Label, measurement or choice.' },
  'own-coupons': {
    title: 'The maker’s own coupons',
    status: 'entered',
    note: 'Streaks read on test slots; they move the prior of the board.',
  },
};
