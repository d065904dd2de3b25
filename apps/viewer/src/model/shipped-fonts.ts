import arvoLicence from '../../../../fixtures/fonts/arvo.OFL.txt?url';
import arvo from '../../../../fixtures/fonts/arvo-400.ttf?url';
import dancingLicence from '../../../../fixtures/fonts/dancing-script.OFL.txt?url';
import dancing from '../../../../fixtures/fonts/dancing-script-400.ttf?url';
import josefinLicence from '../../../../fixtures/fonts/josefin-sans.OFL.txt?url';
import josefin from '../../../../fixtures/fonts/josefin-sans-400.ttf?url';
import josefinVariable from '../../../../fixtures/fonts/josefin-sans-latin-variable.woff2?url';
import loraLicence from '../../../../fixtures/fonts/lora.OFL.txt?url';
import lora from '../../../../fixtures/fonts/lora-400.ttf?url';
import type { NamedBytes } from './artwork-source.ts';
import { fetchBytes } from './fetch-bytes.ts';

/** A font that comes with the page, under the SIL Open Font License. */
export interface ShippedFont {
  readonly name: string;
  /** As it is called in a job file. */
  readonly file: string;
  readonly url: string;
  readonly licenceUrl: string;
}

/** Fonts for lettering that come with the page. */
export const shippedFonts: readonly ShippedFont[] = [
  { name: 'Lora', file: 'lora-400.ttf', url: lora, licenceUrl: loraLicence },
  { name: 'Josefin Sans', file: 'josefin-sans-400.ttf', url: josefin, licenceUrl: josefinLicence },
  { name: 'Arvo', file: 'arvo-400.ttf', url: arvo, licenceUrl: arvoLicence },
  { name: 'Dancing Script', file: 'dancing-script-400.ttf', url: dancing, licenceUrl: dancingLicence },
  {
    name: 'Josefin Sans, variable',
    file: 'josefin-sans-latin-variable.woff2',
    url: josefinVariable,
    licenceUrl: josefinLicence,
  },
];

/** Loads one of them. */
export async function shippedFontFile({ file, url }: ShippedFont): Promise<NamedBytes> {
  return { name: file, bytes: await fetchBytes(url) };
}
