// An invented plant for looking at the pages while developing. Its numbers mean nothing.

const lim = (measurand, low, high) => ({ measurand, low, high, source: 'invented, for looking at pages' });
const duties = [{ what: ['free_chlorine', 'total_chlorine', 'ph'], at: ['07:30:00', '12:00:00', '17:00:00'] }];

const probe = (id, name, poolId, measurand, unit, decimals, low, high, more = {}) => ({
  id, name, poolId, measurand, unit, decimals, origin: 'raw', rangeLow: low, rangeHigh: high, everySeconds: 10,
  referenceElectrode: measurand === 'orp' ? 'Ag/AgCl 3 M' : null, ...more,
});

export const site = {
  name: 'Quarry Lane Baths', timeZone: 'Europe/London', units: 'metric',
  products: [{ id: 'hypo', name: 'Sodium hypochlorite 12 %', kind: 'sodium_hypochlorite', strength: 12 }, { id: 'acid', name: 'Sulfuric acid 15 %', kind: 'sulfuric_acid', strength: 15 }],
  circuits: [
    {
      id: 'hall', name: 'Main hall', balanceTankM3: 30, turnoverHours: 4,
      pools: [
        { id: 'main', name: 'Main pool', kind: 'swimming', setting: 'indoor', disinfectant: 'chlorine', secondary: ['uv'], volumeM3: 450, duties,
          limits: [lim('ph', 7.2, 7.6), lim('free_chlorine', 0.8, 2), lim('combined_chlorine', null, 0.5), lim('temperature', 26, 29), lim('orp', 700, 820)] },
        { id: 'learner', name: 'Learner pool', kind: 'teaching', setting: 'indoor', disinfectant: 'chlorine', secondary: [], volumeM3: 60, duties,
          limits: [lim('ph', 7.2, 7.6), lim('free_chlorine', 0.8, 2), lim('combined_chlorine', null, 0.5), lim('temperature', 29, 32)] },
      ],
      probes: [
        probe('main-ph', 'Main pool pH', 'main', 'ph', 'pH', 2, 0, 14, { origin: 'panel_scaled' }),
        probe('main-orp', 'Main pool ORP', 'main', 'orp', 'mV', 0, -1000, 1200),
        probe('main-temp', 'Main pool temperature', 'main', 'temperature', 'degC', 1, 0, 60),
        probe('main-cl', 'Main pool free chlorine', 'main', 'free_chlorine', 'mg/L', 2, 0, 20),
        probe('learner-ph', 'Learner pool pH', 'learner', 'ph', 'pH', 2, 0, 14),
        probe('learner-orp', 'Learner pool ORP', 'learner', 'orp', 'mV', 0, -1000, 1200),
        probe('learner-temp', 'Learner pool temperature', 'learner', 'temperature', 'degC', 1, 0, 60),
        probe('hall-flow', 'Sample cell flow', null, 'sample_flow', '', 0, 0, 1),
      ],
      pumps: [
        { id: 'hypo-pump', name: 'Hypochlorite pump', poolId: null, productId: 'hypo', productName: 'Sodium hypochlorite 12 %', tankLitres: 200, stateSeries: 'hypo-pump/state', tankSeries: 'hypo-pump/tank' },
        { id: 'acid-pump', name: 'Acid pump', poolId: 'main', productId: 'acid', productName: 'Sulfuric acid 15 %', tankLitres: 60, stateSeries: 'acid-pump/state', tankSeries: 'acid-pump/tank' },
      ],
    },
    {
      id: 'spa', name: 'Spa', balanceTankM3: 1.2, turnoverHours: 0.25,
      pools: [
        { id: 'spa', name: 'Spa pool', kind: 'spa', setting: 'indoor', disinfectant: 'chlorine', secondary: [], volumeM3: 4, duties,
          limits: [lim('ph', 7.2, 7.6), lim('free_chlorine', 3, 5), lim('temperature', null, 40)] },
      ],
      probes: [
        probe('spa-ph', 'Spa pH', 'spa', 'ph', 'pH', 2, 0, 14),
        probe('spa-orp', 'Spa ORP', 'spa', 'orp', 'mV', 0, -1000, 1200),
        probe('spa-cond', 'Spa conductivity', 'spa', 'conductivity', 'uS/cm', 0, 0, 20000),
      ],
      pumps: [{ id: 'spa-pump', name: 'Spa hypochlorite pump', poolId: 'spa', productId: 'hypo', productName: 'Sodium hypochlorite 12 %', tankLitres: null, stateSeries: 'spa-pump/state', tankSeries: null }],
    },
  ],
};

const centre = { ph: 7.42, orp: 755, temperature: 28.1, free_chlorine: 1.35, conductivity: 1480, sample_flow: 1 };
const swing = { ph: 0.09, orp: 25, temperature: 0.5, free_chlorine: 0.3, conductivity: 40, sample_flow: 0 };
const shift = { 'main-ph': 0.21, 'learner-temp': 2.6, 'spa-orp': -160, 'spa-ph': -0.02 };

export const probes = site.circuits.flatMap(c => c.probes);
export const probeById = new Map(probes.map(p => [p.id, p]));
const hash = text => [...text].reduce((h, c) => (h * 31 + c.charCodeAt(0)) % 9973, 7);

/** The invented value of a series at a moment. */
export function valueAt(id, t) {
  const p = probeById.get(id);
  const m = p?.measurand ?? 'ph';
  const h = t / 3_600_000 + hash(id) / 100;
  const wave = 0.6 * Math.sin(h / 3.8) + 0.3 * Math.sin(h * 1.7) + 0.1 * Math.sin(h * 97);
  const noise = (hash(id + Math.floor(t / 10_000)) / 9973 - 0.5) * 0.25;
  return (centre[m] ?? 1) + (shift[id] ?? 0) + (swing[m] ?? 0) * (wave + noise);
}

// --case one | eight | fine : the same plant smaller, larger, or with nothing wrong. Looking at the first page is what it is for.
export const chosen = process.argv.includes('--case') ? process.argv[process.argv.indexOf('--case') + 1] : '';
if (chosen === 'one') { site.circuits.splice(1); site.circuits[0].pools.splice(1); }
if (chosen === 'eight') {
  const twin = (of, n) => JSON.parse(JSON.stringify(of).replaceAll(/"(main|learner|spa|hall)(-[a-z]+)?"/g, (_, a, b) => `"${a}${n}${b ?? ''}"`).replaceAll(/"(Main|Learner|Spa) pool/g, `"$1 pool ${n}`));
  site.circuits.push(...[2, 3].flatMap(n => n === 2 ? [twin(site.circuits[0], n), twin(site.circuits[1], n)] : [twin(site.circuits[0], n)]));
  for (const p of site.circuits.slice(2).flatMap(c => c.probes)) probes.push(p), probeById.set(p.id, p);
}
