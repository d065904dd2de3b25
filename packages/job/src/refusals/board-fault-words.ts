import type { FaultWords, WordsFor } from './fault-words.ts';

const BOARD =
  'as in "stripes 300x180x20mm maple:60mm walnut:20mm" or "checkerboard 320x320x20mm maple walnut square:40mm"';

const read = (what: string, remedy: string): FaultWords => ({ what, remedy });

/** Words for boards and what lies on them. */
export const boardFaultWords: WordsFor<
  | 'not-a-place'
  | 'not-a-reading'
  | 'not-an-obstacle'
  | 'not-a-block'
  | 'block-dive'
  | 'board-pattern'
  | 'board-size'
  | 'board-length'
  | 'board-part'
  | 'board-without-wood'
  | 'board-blocks'
  | 'board-stripe-width'
  | 'board-stripe-room'
  | 'board-needs-length'
  | 'board-stray-length'
  | 'board-stray-wood'
  | 'board-and-key'
  | 'needs-board'
  | 'needs-block'
  | 'block-without-polygons'
  | 'deeper-than-board'
> = {
  'not-a-place': ({ shown }, key) =>
    read(
      `${key}: "${shown}" is not a place.`,
      'Type two lengths, each with its unit, such as 20mm,30.5mm: a comma parts them, decimals have a point.',
    ),
  'not-a-reading': ({ shown }, key) =>
    read(`${key} "${shown}" is not a place and a height.`, 'Type it as in "20mm,30mm 19.8mm".'),
  'not-an-obstacle': ({ shown }, key) =>
    read(
      `${key} "${shown}" cannot be read.`,
      'Type "hole 20mm,30mm 8mm" (place, diameter), "groove 0mm,160mm 300mm,160mm 6mm" (from, to, width), "clamp 20mm,90mm 40x25mm" (middle, size) or "hold-down 20mm,90mm 30mm" (middle, diameter).',
    ),
  'not-a-block': ({ shown }, key) =>
    read(
      `${key} "${shown}" needs a wood and at least three corners.`,
      'Type it as in "walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm".',
    ),
  'block-dive': ({ shown }, key) =>
    read(`${key} "${shown}": dive lies between 0deg and 90deg.`, 'Type it as in dive:10deg.'),
  'board-pattern': ({ pattern, known }, key) =>
    read(`${key}: pattern "${pattern}" is unknown.`, `Known: ${known.join(', ')}; ${BOARD}.`),
  'board-size': ({ shown }, key) =>
    read(`${key}: "${shown}" is not width x height x thickness.`, `Type them ${BOARD}.`),
  'board-length': ({ name, shown }, key) =>
    read(`${key}: ${name} is ${shown}; it must be above 0.`, 'Check it.'),
  'board-part': ({ word, wood }, key) =>
    read(`${key}: "${word}" is neither heart nor sap.`, `Type ${wood}/heart or ${wood}/sap.`),
  'board-without-wood': ({ shown }, key) =>
    read(`${key}: "${shown}" names no wood.`, `Type the woods after the size, ${BOARD}.`),
  'board-blocks': ({ count, max }, key) =>
    read(`${key}: it would have ${count} blocks, more than ${max}.`, 'Check the units.'),
  'board-stripe-width': ({ wood }, key) =>
    read(`${key}: the stripe of ${wood} has no width.`, `Type it as in ${wood}:40mm.`),
  'board-stripe-room': ({ wood }, key) =>
    read(
      `${key}: no stripe of ${wood} finds room, for those before it fill the board from its upper edge down.`,
      `Make the board higher (its second size), or leave ${wood} out.`,
    ),
  'board-needs-length': ({ name, example }, key) =>
    read(`${key}: this pattern needs ${name}.`, `Add it as in ${example}.`),
  'board-stray-length': ({ name, pattern }, key) =>
    read(`${key}: ${name} means nothing for the pattern ${pattern}.`, 'Take it out.'),
  'board-stray-wood': ({ wood }, key) =>
    read(`${key}: the pattern does not use ${wood}.`, 'Take it out, or give each block its wood.'),
  'board-and-key': ({ isThickness }, key, name) =>
    read(
      `${name('board')} and ${key} are both given, and they may disagree.`,
      isThickness
        ? `The third size of the board is its thickness: leave ${key} out.`
        : `The board names woods and fibres: leave ${key} out. To turn the artwork against them, give ${name('turn')}.`,
    ),
  'needs-board': (_, key, name) =>
    read(`${key} needs a board.`, `Add it as in ${name('board')} "plain 300x180x20mm maple".`),
  'needs-block': (_, __, name) =>
    read(
      'the pattern polygons needs at least one block.',
      `Add it as in ${name('block')} "walnut 0mm,0mm 80mm,0mm 80mm,60mm".`,
    ),
  'block-without-polygons': (_, __, name) =>
    read(
      `${name('block')} goes with the pattern polygons only.`,
      `Write it as in ${name('board')} "polygons 300x180x20mm".`,
    ),
  'deeper-than-board': ({ depth, thickness }, _, name) =>
    read(
      `${name('depth')} is ${depth}, but the board is only ${thickness} thick.`,
      'Carve less deep, or take a thicker board.',
    ),
};
