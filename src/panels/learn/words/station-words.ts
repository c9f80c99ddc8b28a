/** The words of the station's pages other than lessons. `{name}` stands for a figure or a text. */
export const STATION_WORDS = {
  language: 'Language of Learn',
  atTheBench: 'At the bench',
  forTeachers: 'For whoever teaches',
  pages: {
    ten: 'One pin, ten times',
    practice: 'A practice cylinder',
    record: 'Your sheet',
    teach: 'Put a set together',
    seal: 'Seal a practice cylinder',
  },
  kept: {
    heading: 'What is kept',
    lead: 'What you predicted, your name, your readings and the language are kept in this browser, nowhere else.',
    save: 'Save it as a file',
    forget: 'Forget it all',
    forgotten: 'Nothing is kept any more.',
    read: 'Read a saved file back',
    replaceTitle: 'Replace what is kept?',
    replaces: {
      one: 'What is kept here, {count} round with it, would be gone.',
      other: 'What is kept here, {count} rounds with it, would be gone.',
    },
    inFile: { one: 'The file holds {count} round.', other: 'The file holds {count} rounds.' },
    yes: 'Replace it by the file',
    no: 'Leave it as it is',
    stays: 'Nothing was changed.',
    back: { one: 'Read back: {count} round.', other: 'Read back: {count} rounds.' },
    lost: {
      one: '{count} round in the file could not be read and is left out.',
      other: '{count} rounds in the file could not be read and are left out.',
    },
    faults: {
      'not one': 'This is no file of a learner. Choose the one that “Save it as a file” wrote here.',
      damaged: 'This file is damaged: its end or its rounds are missing. Nothing was changed.',
      newer: 'This file was made by a newer version of this program. Load the page anew, then read it again.',
    },
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
