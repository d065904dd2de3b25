/** A wood by its name, with its part where the board says: `hard maple (sap)`. */
export function woodText({
  species,
  part,
}: {
  readonly species: string;
  readonly part: 'heart' | 'sap' | null;
}): string {
  return part === null ? species : `${species} (${part})`;
}
