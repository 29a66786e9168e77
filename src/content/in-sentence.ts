/** A title inside a sentence: "Outdoor unit" → "outdoor unit"; an abbreviation or a figure keeps its case ("120 V wiring"). */
export function inSentence(title: string): string {
  const [first = '', second = ''] = title;
  return /[a-z]/.test(second) ? first.toLowerCase() + title.slice(1) : title;
}
