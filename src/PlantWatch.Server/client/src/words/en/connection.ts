// The connection to the broker.
export const connection = {
  since: (at: string) => `since ${at}`, past: (at: string) => `last at ${at}`, more: (n: number) => `and ${n} more`,
  silent: (n: number) => (n === 1 ? '1 topic has never spoken' : `${n} topics have never spoken`),
  title: 'Connection to the broker',
  encrypted: 'Encrypted (TLS); chain, time and name of the certificate are checked.',
  plain: 'Not encrypted: whoever is on this network can read along, and write.',
  silentTodo: 'Compare each topic letter by letter with what the device publishes, capitals too, and look whether the device is connected. A broker with an access list may take a subscription and hand nothing over: see that PlantWatch may read there.',
};
