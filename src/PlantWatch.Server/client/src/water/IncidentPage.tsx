import { words } from '../words';
import { WaterFrame } from './WaterFrame';

export function IncidentPage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="incident">{() => <p class="empty">{words.water.notYet}</p>}</WaterFrame>;
}
