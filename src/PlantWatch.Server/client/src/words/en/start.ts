// The first steps of an empty plant.
export const start = {
  title: 'First steps', lead: 'Five short steps to the first value. Each is written to the plant file as you go: leave whenever you want, and go on where you left.',
  step: (n: number, all: number) => `Step ${n} of ${all}`, done: 'done', now: 'now', later: 'still to do', next: 'Go on', save: 'Save and go on', saving: 'Saving', change: 'Change it in the settings', optional: 'may be left out',
  steps: { site: 'Name the plant', pool: 'Add a pool', probe: 'Pick what is heard', pack: 'Choose a limit pack', value: 'See the first value' },
  readOnly: 'The plant file cannot be written from here: it or its folder is read-only. Make it writable, or write it by hand; the settings page has the text to copy.',
  broken: 'The plant file has problems. Put them right on the page of the settings first.', toSettings: 'To the settings',
  why: { site: 'First steps: the plant', pool: 'First steps: a pool', probe: 'First steps: a probe', pack: 'First steps: the limit pack' },
  fileHead: '# The plant as it is built. It can be edited here and on the page alike; docs/plant-file.md goes through it key by key.',
  site: {
    name: 'Name of the plant', zone: 'Time zone', zoneHint: 'Decides what a day is and when 07:30 is. Offered is that of this browser.', units: 'Units that people measure out in',
    unitNames: { metric: 'metric', us: 'US', imperial: 'imperial' }, needName: 'Give the plant a name.', needZone: 'Choose a time zone.', long: 'At most 100 characters.',
  },
  pool: {
    name: 'Name of the pool', kind: 'What it is for', setting: 'Where', disinfectant: 'Disinfectant', volume: 'Volume of water', volumeHint: 'An estimate will do to begin with: no dose is worked out before somebody has confirmed it. Length \u00d7 width \u00d7 mean depth, in metres, gives m\u00b3.',
    turnover: 'Turnover', turnoverHint: 'Time in which the pools\u2019 water goes round once, as designed. Without it the flow is held against nothing.',
    circuit: 'Water treatment', own: 'Its own filters, dosing and balance tank', shares: (name: string) => `Shares those of ${name}`, circuitName: (pool: string) => `Water of ${pool}`,
    choose: 'Choose', needName: 'Give the pool a name.', needKind: 'Say what it is for.', needSetting: 'Say where it is.', needDisinfectant: 'Say what it is disinfected with.', needVolume: 'A number above 0, in m\u00b3.', needTurnover: 'A number above 0, in hours, or nothing.',
    stabilised: 'Stabilised: cyanuric acid is in the water, from dichlor, trichlor or by itself.', another: 'Add another pool', notKnown: 'Not asked here, and not known then: balance tank, filters, second treatment, dosing pumps. Each is added in the settings when it is known.',
    kinds: { swimming: 'Swimming', teaching: 'Teaching', leisure: 'Leisure', therapy: 'Hydrotherapy', spa: 'Spa', plunge: 'Plunge', paddling: 'Paddling' }, settings: { indoor: 'Indoors', outdoor: 'In the open' },
    disinfectants: { chlorine: 'Chlorine, not stabilised', stabilised_chlorine: 'Chlorine, stabilised', salt_electrolysis: 'Chlorine from salt by electrolysis', bromine: 'Bromine' },
  },
  probe: {
    listening: 'Listening', broker: 'Broker', address: 'Devices publish to', nothing: 'Nothing has been heard yet. Topics appear here within a second of their next message.',
    how: 'Point a device or a gateway at this address, at QoS 1 and without the retain flag. To try it without a plant, simulators/README.md says how to run a feed.',
    heard: (n: number) => n === 1 ? '1 topic heard' : `${n} topics heard`, forgotten: (n: number) => `${n} older topics gave way to newer ones.`, every: (s: string) => `every ${s} s`, once: 'once so far', retained: 'kept by the broker, not a new sample',
    takenBy: (name: string) => `read by ${name}`, take: 'Take it', takeNamed: (what: string) => `Take ${what}`, asNumber: 'plain number', asSenml: 'SenML JSON', asCbor: 'SenML CBOR', filter: 'Show topics with', noneLeft: 'No topic has these letters.', more: (n: number) => `${n} more; type some letters of the topic to find one.`,
    measurand: 'What it measures', name: 'Name', pool: 'Pool', mixed: 'The mixed return of', origin: 'Whose number it is', raw: 'The probe\u2019s own signal', rawMeans: 'PlantWatch may correct it.', panel: 'What the plant\u2019s controller shows and doses by', panelMeans: 'It is put right on the panel only.',
    electrode: 'Reference electrode', electrodeHint: 'Millivolts mean nothing without it. It stands on the probe or in its papers.', unit: 'Unit it is sent in', low: 'Lowest the instrument can show', high: 'Highest the instrument can show', rangeHint: 'A number outside is refused and kept.', every_: 'A reading is expected every', seconds: 's',
    needMeasurand: 'Say what it measures.', needName: 'Give it a name.', needOrigin: 'Say whose number it is, so that nothing is corrected twice.', needElectrode: 'Name the electrode, such as Ag/AgCl 3 M.', needRange: 'Two numbers, the lower one first.', needEvery: 'A number above 0, at most 86400.',
    save: 'Add this probe', cancel: 'Not this one', added: (name: string) => `${name} is added.`, goOn: 'Go on with what is picked', without: 'Go on without a probe',
  },
  pack: {
    lead: 'A pack is a copy of what an authority asks for. Each of its rows waits until a person has held it against the document; until then it limits nothing. The local code comes first.',
    rows: (n: number) => `${n} rows`, memory: (n: number) => `${n} from memory`, choose: 'Limit pack', needPack: 'Choose one, or go on without.', take: 'Take this pack', without: 'Go on without', older: 'Editions that a newer one has replaced',
  },
  value: {
    waiting: 'Waiting for the first value.', noProbe: 'No probe is picked: values come by hand, from the page Check.', there: 'The first value is there.', toOverview: 'To the overview', toCheck: 'Enter a first test',
    remains: 'What remains, when there is time', volume: 'Confirm the volume of each pool; no dose is worked out before', limits: 'Confirm the rows of the limit pack', own: 'Pick a limit pack, or give each pool limits of its own', people: 'Name the people and what they may sign', checks: 'Say which tests are due when', pumps: 'Add dosing pumps, products and tanks', telling: 'Say who is told of alarms',
  },
};
