import { words } from '../words';
import { WaterFrame } from './WaterFrame';

export function PlanPage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="plan">{() => <p class="empty">{words.water.notYet}</p>}</WaterFrame>;
}
