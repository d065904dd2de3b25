import type { SvgElement } from './svg-element.ts';

/** The language that drawings with several versions are read for. */
const LANGUAGE = 'en';

/**
 * Whether an element's conditions hold (SVG 2 §5.9): no extensions beyond SVG are known, `requiredFeatures`
 * was dropped in SVG 2 and holds, `systemLanguage` is compared with English.
 */
export function passesConditions(element: SvgElement): boolean {
  const extensions = element.attributes.get('requiredExtensions');
  if (extensions !== undefined) {
    return false;
  }
  const languages = element.attributes.get('systemLanguage');
  return (
    languages === undefined ||
    languages.split(',').some((tag) => {
      const language = tag.trim().toLowerCase();
      return language === LANGUAGE || language.startsWith(`${LANGUAGE}-`);
    })
  );
}
