import type { Picture, PicturedObstacle } from '@pourproof/proof';
import { escapeXml } from './escape-xml.ts';
import { keySample } from './key-sample.ts';
import { ringsPath } from './path-data.ts';

type Form = 'held' | 'through' | 'in-back';

/** How each form is drawn in the key, and what it stands for. */
const KEY: Readonly<Record<Form, string>> = {
  held: 'clamp or hold-down',
  through: 'hole or groove through the board',
  'in-back': 'hole or groove in the back',
};

/** What an obstacle is called. */
export function obstacleName({ kind, isInBack }: PicturedObstacle): string {
  return isInBack ? `${kind} in the back` : kind;
}

function formOf({ kind, isInBack }: PicturedObstacle): Form {
  return isInBack ? 'in-back' : kind === 'hole' || kind === 'groove' ? 'through' : 'held';
}

/** Holes, grooves and clamps by their outlines, each with its name as title; empty where there are none. */
export function obstacleShapes({ obstacles }: Picture): string {
  return obstacles
    .map(
      (each) =>
        `<path class="obstacle ${formOf(each)}" fill-rule="evenodd" d="${ringsPath(each.outline)}"><title>${escapeXml(obstacleName(each))}</title></path>`,
    )
    .join('');
}

/** The key to those that there are. */
export function obstacleKey({ obstacles }: Picture): readonly string[] {
  const forms = new Set(obstacles.map(formOf));
  return (Object.keys(KEY) as readonly Form[])
    .filter((form) => forms.has(form))
    .map((form) =>
      keySample(`<rect x="3" y="2" width="28" height="15" class="obstacle ${form}"/>`, KEY[form]),
    );
}
