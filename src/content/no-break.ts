/**
 * A text of a unit file with its quantities kept on one line: `80 000 Btu/h`, `240 V`, `3 ton`. The spaces between
 * groups of digits, and between a number and its unit, become no-break spaces (ISO 80000-1, 7.3.1 and 7.1.4: digits
 * in groups of three, and a space between value and unit; from memory).
 */
export function keepQuantities(text: string): string {
  return text.replace(
    /(?<=\d) (?=\d{3}(?!\d)|(?:[A-Za-z]{1,5}|[°%Ωµ][A-Za-z]*)(?:\/[a-z]+)?(?![A-Za-z]))/g,
    '\u00a0',
  );
}
