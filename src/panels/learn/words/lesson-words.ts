/**
 * The words of a lesson, apart from its code, so that another language is another set of these modules. `{name}` stands for
 * a figure of the round: a length with its unit, a count, a chamber's number.
 */
export type StepWords = {
  readonly ask: string;
  /** For a choice: what each option says. */
  readonly options?: Readonly<Record<string, string>>;
  /** Why it is so: read after it was seen. */
  readonly why: string;
};

export type LessonWords = {
  readonly title: string;
  /** The wrong idea that many begin with, as somebody would say it. */
  readonly idea: string;
  readonly steps: Readonly<Record<string, StepWords>>;
  /** What to do with real parts. */
  readonly bench: string;
};
