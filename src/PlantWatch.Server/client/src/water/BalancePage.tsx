import { words } from '../words';
import { WaterFrame } from './WaterFrame';

export function BalancePage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="balance">{() => <p class="empty">{words.water.notYet}</p>}</WaterFrame>;
}
