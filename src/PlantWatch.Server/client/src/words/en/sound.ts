/** Words of the sound in the browser. */
export const sound = {
  title: 'Sound in this browser', off: 'Sound off', turnOn: 'turn on', silence: 'Silence',
  state: {
    off: 'Sound off, turn on', waiting: 'Sound off, turn on: this page is silent until it is pressed once', on: 'Sound is on: turn off',
    elsewhere: 'Sound is on in another tab of this browser: turn off',
  },
  now: {
    off: 'Sound is off.', waiting: 'Sound is on, but the browser keeps this page silent until it is pressed once.', on: 'Sound is on.', elsewhere: 'Sound is on; another tab of this browser sounds.',
  },
  lead: 'The setting stays with this browser. Of several tabs one sounds. What is shelved, suppressed, out of service or under its cause is quiet. Whatever sounds is also shown on the bar, and silencing acknowledges nothing. A browser may fall silent when the device sleeps: sound is no substitute for looking.',
  doTurnOn: 'Turn sound on', doTurnOff: 'Turn sound off', test: 'Test the sound',
  calls: { critical: 'Critical', high: 'High', medium: 'Medium', low: 'Low', lost: 'Server not heard' },
  played: (what: string) => `Played: ${what}. Nothing heard? Look at the loudness of this device.`, notAllowed: 'The browser does not let this page sound.',
};
