// The plant file on a page: its forms, its text, what a change does.
export const plantFile = {
  title: 'Settings of the plant',
  lead: 'Everything here stands in one file, and is written back to it with its comments. Nothing changes until you save.',
  asForm: 'As a form', asText: 'As text', view: 'How it is shown',
  none: 'There is no plant file yet.', begin: 'Begin with the first steps',
  notInForce: 'The file as it lies there is not in force: the version before it is.', readOnly: 'This file cannot be written from here: it or its folder is read-only. Change what you want, then copy the text and put it there yourself.',
  copy: 'Copy the text', copied: 'Copied', notCopied: 'The browser does not let the page copy: mark the text and copy it.',
  meanwhile: 'Somebody saved another version since you began.', meanwhileMeans: 'Below stands how yours differs from theirs.',
  takeTheirs: 'Give mine up and take theirs', mineOver: 'Go on with mine over theirs',
  unsaved: 'Not saved yet', unsavedMeans: 'What you changed is kept on this device.', giveUp: 'Give up the changes', sure: 'Really give them up', keep: 'Keep them',
  text: 'Text of the plant file', problems: (n: number) => n === 1 ? '1 problem' : `${n} problems`, noProblems: 'No problems', line: (n: number) => `Line ${n}`,
  save: 'Save', saving: 'Saving', why: 'Why', whyHint: 'Goes into the record beside your name. May be left out.', by: 'Who changes it',
  changes: 'What changes in the file', noChange: 'Nothing is changed.', effects: 'What happens when it is saved', noEffect: 'Nothing that the plant goes by.', removed: 'goes', added: 'comes',
  optional: 'may be left out', unsaid: 'not stated', yesNo: { true: 'yes', false: 'no' }, ends: ['from', 'to'], add: (what: string) => `Add: ${what}`, addGroup: (what: string) => `Say more: ${what}`,
  remove: (what: string) => `Take out ${what}`, removeSure: 'Really take it out',
  mustFix: 'Put the problems right before it can be saved.', saved: 'Saved and in force.', savedNotTaken: 'Saved; it comes into force in a moment.', unreachable: 'The server cannot be reached. What you typed is kept on this device.',
};
