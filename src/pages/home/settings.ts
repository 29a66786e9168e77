/** Name of the setting that says the first reading was done (`yes`) or left (`left`). */
export const firstReadingDone = 'first-reading-done';
