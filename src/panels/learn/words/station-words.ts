/** The words of the station's pages other than lessons. `{name}` stands for a figure or a text. */
export const STATION_WORDS = {
  language: 'Language of Learn',
  atTheBench: 'At the bench',
  forTeachers: 'For whoever teaches',
  pages: {
    ten: 'One pin, ten times',
    practice: 'A practice cylinder',
    record: 'Your page',
    teach: 'Put a set together',
    seal: 'Seal a practice cylinder',
  },
  kept: {
    heading: 'What is kept',
    lead: 'What you predicted, your name, your readings and the language are kept in this browser, nowhere else.',
    save: 'Save it as a file',
    forget: 'Forget it all',
    forgotten: 'Nothing is kept any more.',
  },
  files: {
    saved: 'Saved as {name}.',
    failed: 'The file could not be written. Choose another place or name.',
  },
  lengths: {
    wrong:
      '“{typed}” is no length that is taken here. Write one between {from} and {to}, for example {example}.',
    meant: '“{typed}” can be meant in several ways. Which one is it?',
    missing: 'Still empty: {what}.',
  },
} as const;
