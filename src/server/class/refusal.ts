/** What somebody asked for cannot be done; the sentence says why and how to mend it. */
export class Refusal extends Error {
  readonly status: number;

  constructor(status: number, sentence: string) {
    super(sentence);
    this.status = status;
  }
}
