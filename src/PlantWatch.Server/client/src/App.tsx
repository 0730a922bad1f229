import { useEffect } from 'preact/hooks';
import { AlarmsPage } from './alarms/AlarmsPage';
import { CalibratePage } from './calibrate/CalibratePage';
import { SheetPage } from './calibrate/SheetPage';
import { CheckPage } from './check/CheckPage';
import { site } from './live/store';
import { Overview } from './overview/Overview';
import { Shell } from './parts/Shell';
import { PoolPage } from './pool/PoolPage';
import { ProbePage } from './probe/ProbePage';
import { PumpsPage } from './pumps/PumpsPage';
import { RecordPage } from './record/RecordPage';
import { route } from './router';
import { BalancePage } from './water/BalancePage';
import { DosePage } from './water/DosePage';
import { IncidentPage } from './water/IncidentPage';
import { PlanPage } from './water/PlanPage';
import { WhatIfPage } from './water/WhatIfPage';
import { words } from './words';

function Page() {
  const [page, id] = route.value;
  switch (page) {
    case undefined: return <Overview />;
    case 'check': return <CheckPage poolId={id ?? null} />;
    case 'pool': return <PoolPage id={id ?? ''} />;
    case 'balance': return <BalancePage id={id ?? ''} />;
    case 'what-if': return <WhatIfPage id={id ?? ''} />;
    case 'dose': return <DosePage id={id ?? ''} />;
    case 'plan': return <PlanPage id={id ?? ''} />;
    case 'incident': return <IncidentPage id={id ?? ''} />;
    case 'probe': return <ProbePage id={id ?? ''} />;
    case 'calibrate': return <CalibratePage id={id ?? ''} />;
    case 'sheet': return <SheetPage id={id ?? ''} />;
    case 'alarms': return <AlarmsPage />;
    case 'pumps': return <PumpsPage asset={id ?? null} />;
    case 'record': return <RecordPage />;
    default: return <p class="empty">{words.pageMissing} <a href="#/">{words.back}</a></p>;
  }
}

export function App() {
  const name = site.value?.name;
  useEffect(() => { document.title = name ? `${name} \u00b7 ${words.product}` : words.product; }, [name]);
  return <Shell><Page /></Shell>;
}
