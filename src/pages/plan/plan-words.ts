import type {Difficulty} from '../../faults/difficulty.ts';

export const levelTitles: Readonly<Record<Difficulty, string>> = {
  easy: 'Easy',
  medium: 'Medium',
  hard: 'Hard',
};

export const valueOf = (event: Event): string =>
  (event.target as HTMLInputElement | HTMLSelectElement).value;

export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
