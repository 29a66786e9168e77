/**
 * How hard a fault is to find. Which fault is how hard follows from what a planner needs who knows the customer's words
 * and nothing else (src/diagnosis/fault-difficulty.ts).
 */
export const difficulties = ['easy', 'medium', 'hard'] as const;
export type Difficulty = (typeof difficulties)[number];
