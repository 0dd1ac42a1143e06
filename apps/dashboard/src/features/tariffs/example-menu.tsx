// The examples to start from, each a link to a new tariff that opens with it.
import { Link } from 'wouter';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { STARTS } from './starts.ts';

export function ExampleMenu({ onFollow }: { onFollow?: () => void }) {
  return (
    <div className="tariff-starts">
      <ul>
        {STARTS.map((start) => (
          <li key={start}>
            <Link href={`/tariffs/new?example=${start}`} onClick={onFollow}>
              {say(`start_${start}`)}
            </Link>
          </li>
        ))}
      </ul>
      <p className="aside">{say('fromExampleHint')}</p>
    </div>
  );
}
