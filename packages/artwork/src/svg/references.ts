import type { Scene } from './scene.ts';

import { placeOf, type SvgElement } from './svg-element.ts';

/** The address in `url(…)`, without quotes; `undefined` for other values. */
export function urlAddress(value: string): string | undefined {
  return /^url\(\s*(?:"([^"]*)"|'([^']*)'|([^)]*?))\s*\)/i
    .exec(value)
    ?.slice(1)
    .find((part) => part !== undefined);
}

/**
 * The element that an address of this file points to. Addresses of other files are never read, and addresses
 * of nothing are said in a notice.
 */
export function findReferenced(scene: Scene, address: string, from: SvgElement): SvgElement | undefined {
  if (!address.startsWith('#')) {
    if (address !== '') {
      scene.notices.add('external-reference', placeOf(from), address.slice(0, 60));
    }
    return undefined;
  }
  const id = address.slice(1);
  const found = scene.ids.get(id) ?? scene.ids.get(decoded(id));
  if (found === undefined) {
    scene.notices.add('broken-reference', placeOf(from), address.slice(0, 60));
  }
  return found;
}

/** The `href` of an element, with the older `xlink:href` where the newer is missing. */
export function hrefOf(element: SvgElement): string | undefined {
  return (element.attributes.get('href') ?? element.attributes.get('xlink:href'))?.trim();
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}
