import {z} from 'zod';
import type {Coil, Complex} from './element.ts';
import type {FaultMode} from './part-kind.ts';

/** Catalogue data of an alternating-current magnet coil. */
export const magnetCoilData = z
  .strictObject({
    ratedVolts: z.number().positive().max(600),
    /** Volt-amperes with the armature sealed, at rated volts. */
    sealedVa: z.number().positive().max(500),
    /** Volt-amperes with the armature open, at rated volts. */
    inrushVa: z.number().positive().max(2000),
    /** What an ohmmeter reads across the coil. */
    coilOhms: z.number().positive().max(1e6),
    /** Share of rated volts at which an open armature pulls in. UL 508 asks for 85 % at most. */
    pullInFraction: z.number().min(0.3).max(0.95).default(0.75),
    /** Share of rated volts below which a sealed armature lets go. */
    dropOutFraction: z.number().min(0.1).max(0.8).default(0.45),
  })
  .refine((coil) => coil.sealedVa < coil.inrushVa, {
    error: 'sealedVa is not below inrushVa — an open armature draws more than a sealed one',
    path: ['sealedVa'],
  })
  .refine((coil) => coil.dropOutFraction < coil.pullInFraction, {
    error:
      'dropOutFraction is not below pullInFraction — an armature lets go lower than it pulls in',
    path: ['dropOutFraction'],
  });
export type MagnetCoilData = z.infer<typeof magnetCoilData>;

/**
 * |Z| = V²/VA; the resistive share is the copper plus core loss. Power factors: open armature
 * about 0.65, sealed about 0.4 (common practice, no source), never below the copper itself.
 */
export function magnetCoil(id: string, a: string, b: string, data: MagnetCoilData): Coil {
  return {
    is: 'coil',
    id,
    a,
    b,
    sealedOhms: impedance(data.ratedVolts ** 2 / data.sealedVa, 0.4, data.coilOhms),
    inrushOhms: impedance(data.ratedVolts ** 2 / data.inrushVa, 0.65, data.coilOhms),
    dcOhms: data.coilOhms,
  };
}

function impedance(ohms: number, powerFactor: number, copperOhms: number): Complex {
  const re = Math.min(Math.max(ohms * powerFactor, copperOhms), ohms * 0.99);
  return {re, im: Math.sqrt(ohms ** 2 - re ** 2)};
}

/** Ways a magnet coil fails. Shorted turns leave about a tenth of the resistance. */
export function coilModes(element: string, data: MagnetCoilData, name: string): FaultMode[] {
  return [
    {id: `${element}-open`, name: `${name} open`, changes: [{element, open: true}], weight: 2},
    {
      id: `${element}-shorted`,
      name: `${name} shorted`,
      changes: [{element, besideOhms: Math.max(0.2, data.coilOhms * 0.03)}],
      weight: 1,
    },
  ];
}
