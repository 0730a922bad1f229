import { chosen, language, languages, speak, type Language } from '../format/language';
import { chooseUnits, chosenUnits } from '../format/units';
import type { UnitSystem } from '../contract';
import { words } from '../words';

const systems: UnitSystem[] = ['metric', 'us', 'imperial'];

/** Language and units of whoever holds this device. */
export function Habits() {
  const w = words.pageNames.habits;
  return (
    <section class="sheet card habits"><h2>{w.title}</h2>
      <label class="field"><span>{w.language}</span>
        <select value={chosen ?? ''} data-testid="language" onChange={e => speak(e.currentTarget.value as Language || null)}>
          <option value="">{w.asBrowser(languages[language].name)}</option>
          {Object.entries(languages).map(([code, l]) => <option key={code} value={code} lang={code}>{l.name}</option>)}
        </select></label>
      <label class="field"><span>{w.units}</span>
        <select value={chosenUnits.value ?? ''} data-testid="units" onChange={e => chooseUnits(e.currentTarget.value as UnitSystem || null)}>
          <option value="">{w.asSite}</option>
          {systems.map(s => <option key={s} value={s}>{w[s]}</option>)}
        </select></label>
      <p class="hint">{w.hint}</p>
    </section>
  );
}
