import type {Complex} from '../parts/element.ts';

export const zero: Complex = {re: 0, im: 0};

/** RMS phasor of the given volts (or amps) and phase. */
export function phasor(magnitude: number, degrees: number): Complex {
  const radians = (degrees * Math.PI) / 180;
  return {re: magnitude * Math.cos(radians), im: magnitude * Math.sin(radians)};
}

export function add(p: Complex, q: Complex): Complex {
  return {re: p.re + q.re, im: p.im + q.im};
}

export function subtract(p: Complex, q: Complex): Complex {
  return {re: p.re - q.re, im: p.im - q.im};
}

export function multiply(p: Complex, q: Complex): Complex {
  return {re: p.re * q.re - p.im * q.im, im: p.re * q.im + p.im * q.re};
}

export function divide(p: Complex, q: Complex): Complex {
  const square = q.re * q.re + q.im * q.im;
  return {
    re: (p.re * q.re + p.im * q.im) / square,
    im: (p.im * q.re - p.re * q.im) / square,
  };
}

export function conjugate(p: Complex): Complex {
  return {re: p.re, im: -p.im};
}

export function scale(p: Complex, factor: number): Complex {
  return {re: p.re * factor, im: p.im * factor};
}

/** Multiplies by j: a quarter turn ahead. */
export function quarterTurn(p: Complex): Complex {
  return {re: -p.im, im: p.re};
}

export function magnitude(p: Complex): number {
  return Math.hypot(p.re, p.im);
}

export function degrees(p: Complex): number {
  return (Math.atan2(p.im, p.re) * 180) / Math.PI;
}
