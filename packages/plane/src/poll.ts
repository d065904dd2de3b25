/** Asked by loops that take long, every few milliseconds: what it throws ends the work, and nothing is left half done outside it. */
export type Poll = () => void;

/** Nobody asks to stop. */
export const goOn: Poll = () => undefined;
