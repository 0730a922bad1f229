import type { PoolInfo, PoolView } from '../contract';
import { usePolled } from '../parts/usePolled';
import type { BalanceView } from '../contract.balance';
import { poolViews } from '../live/store';
import { link } from '../router';
import { words } from '../words';
import { BalanceVerdict } from './BalanceVerdict';
import { CirculationCard } from './CirculationCard';
import { ChlorineSheet } from './ChlorineSheet';
import { CombinedSheet } from './CombinedSheet';
import { IndexTable } from './IndexTable';
import { InputTable } from './InputTable';
import { WaterFrame } from './WaterFrame';

/** The balance as it travels with the pool; asked for by itself while no view has come yet. */
function Balance({ pool, view }: { pool: PoolInfo; view: PoolView | undefined }) {
  const asked = usePolled<BalanceView>(view ? null : `/pools/${encodeURIComponent(pool.id)}/balance`, 10_000);
  const balance = view?.balance ?? asked.data;
  if (!balance) return <p class="empty">{asked.failed ? words.error.unreachable : words.overview.waiting}</p>;
  return (
    <div class="balance-page" data-testid="balance-page">
      <div class="stack">
        <BalanceVerdict balance={balance} />
        <InputTable pool={pool} balance={balance} />
        {balance.chlorine && <ChlorineSheet chlorine={balance.chlorine} balance={balance} />}
        {view?.combined && <CombinedSheet combined={view.combined} />}
      </div>
      <div class="stack">
        <IndexTable balance={balance} />
        <CirculationCard poolId={pool.id} />
        <p class="water-more"><a class="button" href={link('check', pool.id)}>{words.water.enter}</a><a class="button" href={link('what-if', pool.id)}>{words.water.tryIt}</a></p>
      </div>
    </div>
  );
}

export function BalancePage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="balance">{pool => <Balance key={pool.id} pool={pool} view={poolViews.value.get(pool.id)} />}</WaterFrame>;
}
