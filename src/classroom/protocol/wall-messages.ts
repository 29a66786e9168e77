import {z} from 'zod';
import type {Poll} from './poll.ts';

/** First message on `/api/socket/wall`: the wall's own token, so that a projector needs no sign-in. */
export const wallRequest = z.discriminatedUnion('is', [
  z.strictObject({is: z.literal('join'), token: z.string().min(20).max(100)}),
  z.strictObject({is: z.literal('ping')}),
]);
export type WallRequest = z.infer<typeof wallRequest>;

export interface WallProgress {
  /** Absent while the wall shows no names. */
  readonly name?: string;
  readonly stage: 'away' | 'waiting' | 'working' | 'finished';
  readonly readings: number;
}

/** Where the class has put its leads, by unit; counts are of readings by all students together. */
export interface HeatMap {
  readonly unit: string;
  readonly title: string;
  readonly terminals: Readonly<Record<string, number>>;
  readonly wires: Readonly<Record<string, number>>;
}

export interface Wall {
  readonly className: string;
  /** Class code to type in. */
  readonly code: string;
  /** Address to open on a phone; a QR code is made of it. */
  readonly joinUrl: string;
  readonly names: boolean;
  readonly progress: readonly WallProgress[];
  readonly heat: readonly HeatMap[];
  readonly poll?: Poll;
}

/** Sent on joining, and again when something changes, at most once a second. */
export type WallAnswer =
  | {readonly is: 'wall'; readonly wall: Wall}
  | {readonly is: 'pong'}
  | {readonly is: 'closing'; readonly sentence: string};
