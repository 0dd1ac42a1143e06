// What the three examples come to, in one line.
import { toDecimal } from '@colla/money';
import type { Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Figure } from '../../ui/index.ts';
import { type Examples, SHAPES } from './example.ts';
import type { PlacedReader } from './example-facts.ts';
import { priceExample } from './example-priced.ts';

interface ExamplesBarProps {
  examples: Examples;
  now: Tariff | undefined;
  reader: PlacedReader;
}

export function ExamplesBar({ examples, now, reader }: ExamplesBarProps) {
  return SHAPES.map((shape) => {
    const total = now && priceExample(examples[shape], now, reader).statement?.total;
    return (
      <span key={shape} className="tariff-bar-sum">
        <span className="aside">{say(`short_${shape}`)}</span>{' '}
        {total === undefined ? (
          say('notPriced')
        ) : (
          <Figure amount={toDecimal(total, reader.currency)} currency={reader.currency} bare />
        )}
      </span>
    );
  });
}
