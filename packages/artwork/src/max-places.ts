/** Most places listed with one notice; its text gives the full count. */
export const MAX_PLACES = 50;
