import { useEffect, useState } from 'preact/hooks';
import { OutboxList } from '../check/OutboxList';
import { useStops } from '../limits/stops';
import { now, serverNow } from '../live/clock';
import { zone } from '../live/store';
import { OfflineHelp } from '../offline/OfflineHelp';
import type { PlantRoundView } from '../contract.plantRound';
import { usePolled } from '../parts/usePolled';
import { heardAt, wordNow } from '../plantRound/heard';
import { known, tookRounds } from '../plantRound/store';
import { useReagents } from '../reagents/store';
import { words } from '../words';
import { AnswerScreen } from './AnswerScreen';
import { AroundScreen } from './AroundScreen';
import { Begin, Unfinished } from './Begin';
import { LookScreen } from './LookScreen';
import { OldSample } from './OldSample';
import type { Round } from './round';
import { SampleScreen } from './SampleScreen';
import { round } from './store';
import { TestScreen } from './TestScreen';

const w = words.round;

function ScreenOf({ round }: { round: Round }) {
  switch (round.screen) {
    case 'sample': return <SampleScreen round={round} />;
    case 'around': return <AroundScreen round={round} />;
    case 'look': return <LookScreen round={round} />;
    case 'answer': return <AnswerScreen round={round} />;
    default: return <TestScreen key={round.screen} round={round} m={round.screen} />;
  }
}

/** The way to the plant room, and whether its round is still to be walked. */
function ToPlantRound() {
  const { data, failed } = usePolled<PlantRoundView[]>('/plant-rounds', 60_000);
  useEffect(() => { if (data) tookRounds(data, serverNow()); }, [data]);
  const answered = data !== null && !failed, heard = known.value;
  const stand = heard.views.map(v => wordNow(v, heard, answered, now.value, zone.value)), due = stand.find(x => x === 'overdue') ?? stand.find(x => x === 'due');
  return <li><a href="#/plant-round" data-testid="to-plant-round">{w.toPlant}{due && `, ${words.plantRound.words[due]}`}{due && !answered && ` (${words.plantRound.asHeard}, ${heardAt(heard.at, now.value, zone.value)})`}</a></li>;
}

/** The manual round: begun, walked one screen at a time, and gone on with after whatever came between. */
export function RoundPage() {
  useReagents();
  useStops();
  const r = round.value;
  // Somebody who opens the page to a round under way is asked first: it may be another person's.
  const [walking, walk] = useState<string | null>(null);
  const [mine] = useState(() => r?.id ?? null);
  const running = r !== null && (walking === r.id || mine !== r.id);
  // A newer set of pages must not take the place of a round under way.
  if (r !== null && running) return <div class="narrow" data-busy=""><OldSample round={r} /><ScreenOf round={r} /></div>;
  return (
    <div class="narrow">
      <h1>{w.title}</h1>
      <p class="hint">{w.lead}</p>
      <OutboxList except={null} />
      {r === null ? <Begin /> : <Unfinished onGo={() => walk(r.id)} />}
      <nav class="sheet card" aria-label={w.also}><h2>{w.also}</h2><ul class="also">
        <ToPlantRound /><li><a href="#/instruments">{w.toInstruments}</a></li><li><a href="#/chemicals">{w.toChemicals}</a></li><li><a href="#/reagents">{w.toReagents}</a></li>
      </ul></nav>
      <OfflineHelp />
    </div>
  );
}
