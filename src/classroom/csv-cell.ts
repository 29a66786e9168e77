/**
 * A cell that a spreadsheet takes for text and never for a formula (OWASP, "CSV Injection"): a leading = + - @, tab,
 * carriage return or line feed gets an apostrophe before it; so do their full-width forms. Numbers stay numbers.
 */
export function csvCell(value: string | number | null | undefined): string | number {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? value : '';
  return /^[=+\-@\t\r\n＝＋－＠]/.test(value) ? `'${value}` : value;
}
