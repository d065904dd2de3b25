/** A fibre direction in words, angles in degrees: `30° on the face, slope of grain 5°`. */
export function fibreText(grainDeg: number, diveDeg: number): string {
  const onFace = `${angle(grainDeg)} on the face`;
  return diveDeg === 0 ? onFace : `${onFace}, slope of grain ${angle(diveDeg)}`;
}

/** An angle in degrees with at most two digits. */
export function angle(deg: number): string {
  return `${Number(deg.toFixed(2))}°`;
}
