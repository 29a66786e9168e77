import {z} from 'zod';

/** Internal overload of a motor: heats with current squared, opens and closes by its own temperature. */
export const motorOverload = z
  .strictObject({
    ratedAmps: z.number().positive(),
    riseDegFAtRated: z.number().positive(),
    tripDegF: z.number().positive(),
    resetDegF: z.number().positive(),
    timeConstantMinutes: z.number().positive(),
    /** Cooling is slower than heating: the shell must cool too. */
    coolingTimeConstantMinutes: z.number().positive(),
  })
  .refine((overload) => overload.resetDegF < overload.tripDegF, {
    error: 'resetDegF is not below tripDegF — an overload closes again when it has cooled',
    path: ['resetDegF'],
  });
export type MotorOverload = z.infer<typeof motorOverload>;

/** What a motor drives: decides what is seen or heard of it and what the plant feels. */
export const motorDrives = z.enum(['compressor', 'fan', 'blower', 'inducer']);
export type MotorDrives = z.infer<typeof motorDrives>;
